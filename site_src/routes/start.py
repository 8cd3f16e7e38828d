"""The start page, the web manifest, and the page for an unknown address."""
import flask

from site_src import compiled
from site_src.content import data
from site_src.routes import json_page

routes = flask.Blueprint("start", __name__)
shared = flask.Blueprint("shared", __name__)  # the same for every language


@routes.get("/")
def home():
    return flask.render_template("start.html", tour=data.words("help")["tour"])


@shared.get("/404.html")
def not_found():
    return flask.render_template("404.html", site_path=flask.current_app.config["SITE_PATH"])


@shared.get("/calc.bin")
def calc_modules():
    """calc, compiled: what the tests saw is what the phone computes."""
    return flask.Response(compiled.packed(), mimetype="application/octet-stream")


@routes.get("/manifest.webmanifest")
def manifest():
    words = data.shared_words()
    root = "./" if data.LANGUAGE.get() == data.languages()[0] else "../"  # of the site, that holds all languages
    response = json_page({
        "name": words["site"]["name"],
        "short_name": words["site"]["name"],
        "description": words["site"]["description"],
        "lang": data.LANGUAGE.get(),
        "id": "./",
        "start_url": "./",
        "scope": root,
        "display": "standalone",
        "background_color": "#f6f3ea",
        "theme_color": "#14171a",
        "icons": [
            {"src": root + "static/icons/192.png", "sizes": "192x192", "type": "image/png"},
            {"src": root + "static/icons/512.png", "sizes": "512x512", "type": "image/png"},
            {"src": root + "static/icons/512.png", "sizes": "512x512", "type": "image/png", "purpose": "maskable"},
        ],
    })
    response.mimetype = "application/manifest+json"
    return response
