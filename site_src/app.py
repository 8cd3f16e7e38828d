"""The Flask app whose frozen pages are the site."""
import flask
import jinja2

from site_src import data, fleet, scripts
from site_src.routes import about, diagnose, log, pressure, recovery, rig, rigs, shift, start, tables, test, water, why


def filled(sentence, *facts):
    """A sentence with its {names} filled in from several dicts."""
    return sentence.format(**{name: value for each in facts for name, value in each.items()})


def create_app(site_path="/", rigs_folder=fleet.DEMO):
    """The app with all its routes.

    site_path: path of the site on its host, for the one page that is served at any depth (404)
    rigs_folder: folder of the department's rigs

    Raises FleetError for a rig that cannot be used.
    """
    app = flask.Flask(__name__)
    app.jinja_env.undefined = jinja2.StrictUndefined
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    app.jinja_env.filters["filled"] = filled
    app.jinja_env.globals["modules"] = scripts.modules
    app.config["SITE_PATH"] = site_path
    app.config["RIGS"] = fleet.load(rigs_folder)
    app.config["IS_DEMO"] = rigs_folder == fleet.DEMO
    for topic in (start, pressure, water, shift, log, diagnose, rig, recovery, rigs, tables, why, test, about):
        app.register_blueprint(topic.routes)

    @app.context_processor
    def words():
        return {"w": {**data.load("words/en/site"), "log": data.load("words/en/log")}, "r": data.load("words/en/rig"), "language": "en"}

    return app
