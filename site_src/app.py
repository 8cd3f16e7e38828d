"""The Flask app whose frozen pages are the site."""
import flask
import jinja2

from calc.base import entry
from site_src import bundle, styles
from site_src.content import data, fleet, fleet_hose, languages
from site_src.routes import about, checks, diagnose, drill, help, log, pressure, recovery, rig, rigs, service, shift, start, tables, water, why


def filled(sentence, *facts):
    """A sentence with its {names} filled in from several dicts."""
    return sentence.format(**{name: value for each in facts for name, value in each.items()})


def parent(app, path, language):
    """The page that a page lies under, as its endpoint and values: the nearest one above it, at last the start."""
    adapter = app.url_map.bind("")
    steps = path.strip("/").split("/")
    above = ["/" + "/".join(steps[:count]) + "/" for count in range(len(steps) - 1, 0, -1)]
    return adapter.match(next((address for address in above if adapter.test(address)), (languages.prefix(language) or "") + "/"))


def create_app(site_path="/", rigs_folder=fleet.DEMO, language="en"):
    """The app with all its routes.

    site_path: path of the site on its host, for the one page that is served at any depth (404)
    rigs_folder: folder of the department's rigs
    language: of its words, one of data.languages(); all but English lie in a folder of that name

    Raises FleetError for a rig that cannot be used.
    """
    app = flask.Flask(__name__)
    app.jinja_env.undefined = jinja2.StrictUndefined
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    app.jinja_env.filters["filled"] = filled
    app.jinja_env.globals["asked_at_once"] = bundle.asked_at_once
    app.jinja_env.globals["first_styles"] = styles.FIRST
    app.jinja_env.globals["colon"] = data.colon(language)
    app.config["SITE_PATH"] = site_path
    app.config["RIGS"] = fleet.load(rigs_folder)
    app.config["IS_DEMO"] = rigs_folder == fleet.DEMO
    app.config["POOL"] = {} if app.config["IS_DEMO"] else fleet_hose.pool(app.config["RIGS"], rigs_folder)  # made-up hose is nobody's
    app.register_blueprint(start.shared)
    for topic in (start, pressure, water, shift, log, diagnose, rig, recovery, rigs, tables, why, drill, service, checks, about, help):
        app.register_blueprint(topic.routes, url_prefix=languages.prefix(language))

    @app.before_request
    def speak():
        flask.g.spoken_before = data.LANGUAGE.set(language)

    @app.teardown_request
    def fall_silent(_error):
        before = flask.g.pop("spoken_before", None)  # the freezer also opens requests that ask for no page
        if before is not None:
            data.LANGUAGE.reset(before)

    @app.context_processor
    def words():
        return {
            "w": {**data.shared_words(), "log": data.words("log")},
            "r": data.words("rig"),
            "o": data.words("orders")["order"],
            "orders": data.orders(),
            "language": language,
            "parent": parent(app, flask.request.path, language),
            "system": data.opening_system(),
            "decimal": data.decimal(),
            "longest": entry.LONGEST_TEXT,
            "languages": data.by_id(data.load("languages")["language"]),
            "alternates": languages.alternates(flask.request.path, language),
        }

    return app
