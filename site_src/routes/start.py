"""The start page, all pages, the danger orders, the web manifest, and the page for an unknown address."""
import flask

from calc.base import entry
from calc.layout import answer as layout_answer
from site_src import bundle, compiled, styles
from site_src.content import catalogue, data, layouts, units
from site_src.routes import answering_page, json_page, version

routes = flask.Blueprint("start", __name__)
shared = flask.Blueprint("shared", __name__)  # the same for every language

EXAMPLES = ("one", "wye", "blitz", "master")  # of the ready-made layouts, where there is no rig
# All pages by group: endpoint, its values, and where its name lies in the words.
PAGES = {
    "now": [
        ("start.danger", {}, "start.all.danger"), ("diagnose.water", {}, "diagnose.water.title"), ("pressure.page", {}, "site.nav.pressure"),
        *(("shift.run", {"card": card}, f"shift.card.{card}.title") for card in ("scene", "bay", "road")), ("shift.index", {}, "start.all.shift"),
        ("water.index", {}, "site.nav.water"), ("water.foam", {}, "site.nav.foam"), ("diagnose.page", {}, "site.nav.diagnose"),
    ],
    "prepare": [
        ("rig.page", {}, "rig.rig.title"), ("rig.card", {}, "rig.card.title"), ("recovery.page", {}, "diagnose.recovery.title"),
        ("rigs.index", {}, "rig.fleet.title"), ("service.index", {}, "service.test.title"), ("service.part", {"part": "years"}, "service.years.title"),
        ("checks.index", {}, "bay.bay.title"), ("checks.conditions", {}, "bay.conditions.title"), ("log.page", {}, "log.title"), ("tables.index", {}, "tables.tables.title"),
    ],
    "learn": [
        ("help.index", {}, "help.help.title"), ("why.page", {}, "why.why.title"), ("why.practice", {}, "practice.practice.title"), ("drill.page", {}, "drill.drill.title"), ("drill.call", {}, "drill.call.title"), ("log.checkoff", {}, "checkoff.checkoff.title"),
        ("why.drives", {}, "why.drives.title"), ("why.speeds", {}, "why.speeds.title"), ("why.heat", {}, "why.heat.title"),
        *((f"diagnose.{part}", {}, f"diagnose.{part}.title") for part in ("collar", "lights", "leak")),
    ],
    "about": [
        ("about.cautions", {}, "cautions.cautions.title"), ("about.sources", {}, "sources.sources.title"), ("about.proof", {}, "evidence.title"), ("about.phone", {}, "phone.phone.title"),
    ],
}


@routes.get("/")
def home():
    return flask.render_template("start.html", version=version(_content()))


@routes.get("/page.json")
def page_data():
    return answering_page(_content())


def _content():
    words = data.shared_words()
    shelf = catalogue.shelf()
    return {
        "shelf": shelf,
        "systems": units.for_page(),
        "examples": {system: _examples(shelf, system) for system in units.baked()},
        "proof": _proof(),
        "words": {key: words[key] for key in ("start", "unit", "engine")},
    }


def _proof():
    """The layout whose pump pressure is known, see proof.toml."""
    proof = data.load("proof")["proof"]
    return {"layout": layouts.ready("customary")[proof["layout"]], "pressure": proof["pressure"]}


def _examples(shelf, system):
    """Usual layouts with what to set, as rows of the start page."""
    names, ready = data.words("pressure")["ready"], layouts.ready(units.family(system))
    return [{"name": names[name], "link": f"ready={name}", **_example(shelf, ready[name], units.shown_in(system))} for name in EXAMPLES]


def _example(shelf, layout, shown):
    solved = layout_answer.answer(layout, shelf, shown)
    [line] = layout["lines"]
    return {
        "code": "layout", "hose": shelf["hoses"][line["hose"]]["label"], "length": entry.shown(shown, "length", line["length"]),
        "flow": solved["flow"], "pressure": solved["pressure"], "is_over": False,
    }


@routes.get("/all/")
def all_pages():
    groups = {
        group: [(endpoint, values, data.said(place.split("."))) for endpoint, values, place in pages]
        for group, pages in PAGES.items()
    }
    return flask.render_template("all.html", groups=groups, systems=units.baked())


@routes.get("/danger/")
def danger():
    return flask.render_template("danger.html")


@shared.get("/404.html")
def not_found():
    return flask.render_template("404.html", site_path=flask.current_app.config["SITE_PATH"])


@shared.get("/calc.bin")
def calc_modules():
    """calc, compiled: what the tests saw is what the phone computes. This is what the first pages ask."""
    return flask.Response(compiled.packed(is_first=True), mimetype="application/octet-stream")


@shared.get("/calc-rest.bin")
def calc_rest():
    """The rest of it."""
    return flask.Response(compiled.packed(is_first=False), mimetype="application/octet-stream")


@shared.get("/static/js/<path:name>")
def script(name):
    """A file of the bundled scripts, at the place that such files have among the sources."""
    return flask.Response(bundle.bundled()[0][name], mimetype="text/javascript")


@shared.get("/static/css/site.css")
def style():
    return flask.Response(styles.sheet(is_first=True), mimetype="text/css")


@shared.get("/static/css/further.css")
def further_style():
    return flask.Response(styles.sheet(is_first=False), mimetype="text/css")


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
        "background_color": "#ffffff",
        "theme_color": "#ffffff",
        "icons": [
            {"src": root + "static/icons/192.png", "sizes": "192x192", "type": "image/png"},
            {"src": root + "static/icons/512.png", "sizes": "512x512", "type": "image/png"},
            {"src": root + "static/icons/512.png", "sizes": "512x512", "type": "image/png", "purpose": "maskable"},
        ],
        "shortcuts": [
            {"name": words["nav"]["pressure"], "url": "./pressure/"},
            {"name": words["start"]["into_pump_scene"], "url": "./shift/scene/"},
            {"name": words["all"]["danger"], "url": "./danger/"},
        ],
        "screenshots": [
            {"src": f"{root}static/screens/{name}.png", "sizes": "720x1480", "type": "image/png", "form_factor": "narrow", "label": label}
            for name, label in (("start", words["start"]["set"]), ("pressure", words["nav"]["pressure"]), ("card", words["start"]["into_pump_scene"]))
        ],
    })
    response.mimetype = "application/manifest+json"
    return response
