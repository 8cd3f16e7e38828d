"""The bay: a rig's checks, its defects and status, release, what is due, and its log."""
import flask

from site_src.content import checks, data, units
from site_src.routes import json_page

routes = flask.Blueprint("checks", __name__)
# a tap of the tray where a figure has a unit of its own: common practice, as such gauges are read
STEPS = {"V": 0.1, "tread": 1, "years": 1, "lights": 1, "degrees": 1, "percent": 5, "inh2o": 1, "seconds": 1, "drops": 1, "hertz": 1}
PARTS = ("round", "defect", "release", "tag", "due", "log", "board", "record")


@routes.context_processor
def words():
    return {"t": data.words("bay")}


@routes.get("/checks/")
def index():
    return page("bay", "pages/checks.js", "page.json")


@routes.get("/checks/conditions/")
def conditions():
    return flask.render_template("checks/conditions.html", t=data.words("bay")["conditions"], no_script=data.words("bay")["bay"]["no_script"])


@routes.get("/checks/<work>/")
def work(work):
    return page(work, f"pages/checks_{work}.js", "../page.json")


def page(name, script, data_file):
    """One of the bay's pages: each is drawn by its own script, and a round of checks is a task no update may break into."""
    title = data.words("bay")[name]["title"]
    return flask.render_template("checks/page.html", title=title, script=script, data=data_file, holds_task=name == "round")


@routes.get("/checks/page.json")
def page_data():
    site = data.shared_words()
    return json_page({
        "lists": [row["id"] for row in checks.lists()],
        "rows": checks.rows(),
        "text": checks.text(),
        "sources": checks.sources(),
        "proofs": checks.proofs(),
        "due": checks.due(),
        "conditions": checks.conditions(),
        "differing": checks.differing(),
        "silent": checks.silent(),
        "steps": STEPS,
        "systems": units.for_page(is_fine=True),
        "words": {**{key: site[key] for key in ("refusal", "units", "unit", "engine", "basis", "rig_status")}, **data.words("bay"), "undecided": site["start"]["undecided"], "run_log": data.words("log")["title"]},
    })
