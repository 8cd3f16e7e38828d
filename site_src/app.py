"""The Flask app whose frozen pages are the site."""
import flask
import jinja2

from site_src import data, scripts
from site_src.routes import about, pressure, shift, start, tables


def create_app(site_path="/"):
    """The app with all its routes.

    site_path: path of the site on its host, for the one page that is served at any depth (404)
    """
    app = flask.Flask(__name__)
    app.jinja_env.undefined = jinja2.StrictUndefined
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    app.jinja_env.globals["modules"] = scripts.modules
    app.config["SITE_PATH"] = site_path
    for module in (start, pressure, shift, tables, about):
        app.register_blueprint(module.routes)

    @app.context_processor
    def words():
        return {"w": data.load("words/en/site"), "language": "en"}

    return app
