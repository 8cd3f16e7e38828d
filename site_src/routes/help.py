"""Help: plain questions of each topic, answered short, each with the way to the page that does it."""
import re

import flask

from site_src.content import data, findable, reckoners, touched
from site_src.routes import json_page
from site_src.routes.start import PAGES

routes = flask.Blueprint("help", __name__)
# topic: where its name stands in the words, and whose pages lead to it: modules of routes, or one page
TOPICS = {
    "words": (("help", "topic", "words"), []),
    "pressure": (("site", "nav", "pressure"), ["pressure"]),
    "water": (("help", "topic", "water"), ["water"]),
    "shift": (("shift", "shift", "title"), ["shift"]),
    "diagnose": (("diagnose", "diagnose", "title"), ["diagnose", "recovery"]),
    "test": (("service", "test", "title"), ["service"]),
    "rig": (("help", "topic", "rig"), ["rig", "rigs"]),
    "tables": (("tables", "tables", "title"), ["tables"]),
    "log": (("help", "topic", "log"), ["log", "log.checkoff", "why.practice", "drill"]),
    "why": (("site", "nav", "why"), ["why"]),
    "panel": (("help", "topic", "panel"), []),
    "phone": (("help", "topic", "phone"), []),
}
NAMED = {row["way"] for topic in TOPICS for row in data.load(f"help/{topic}")["question"]}  # by some answer
# where an answer may lead: the page, what stands open in its address, and where its name stands in the words
WAYS = {
    "start": ("start.all_pages", {}, ("start", "all", "title")),
    "pressure": ("pressure.page", {}, ("site", "nav", "pressure")),
    **{source: ("water.page", {"source": source}, ("water", "page", source, "title")) for source in reckoners.WATER if source in NAMED},
    "foam": ("water.foam", {}, ("site", "nav", "foam")),
    "shift": ("shift.index", {}, ("shift", "shift", "title")),
    **{f"card_{card}": ("shift.run", {"card": card}, ("shift", "card", card, "title"))
       for card in ("scene", "road", "hydrant", "draft", "control", "stages", "moving", "freeze", "override")},
    "diagnose": ("diagnose.page", {}, ("diagnose", "diagnose", "title")),
    "faults": ("diagnose.read", {}, ("diagnose", "read", "title")),
    **{part: (f"diagnose.{part}", {}, ("diagnose", part, "title")) for part in ("collar", "lights", "leak")},
    "water_loss": ("diagnose.water", {}, ("diagnose", "water", "title")),
    "test": ("service.index", {}, ("service", "test", "title")),
    "years": ("service.part", {"part": "years"}, ("service", "test", "years")),
    "rig": ("rig.page", {}, ("rig", "rig", "title")),
    "panel_card": ("rig.card", {}, ("rig", "rig", "card")),
    "tables": ("tables.index", {}, ("tables", "tables", "title")),
    **{page: ("tables.table", {"page": page}, ("tables", "tables", page)) for page in ("friction", "tips", "reaction", "elevation")},
    "log": ("log.page", {}, ("log", "title")),
    "checks": ("checks.index", {}, ("bay", "bay", "title")),
    "numbers": ("drill.page", {}, ("drill", "drill", "title")),
    "call": ("drill.call", {}, ("drill", "call", "title")),
    "practice": ("why.practice", {}, ("practice", "practice", "title")),
    "why": ("why.page", {}, ("why", "why", "title")),
    "speeds": ("why.speeds", {}, ("why", "speeds", "title")),
    "heat": ("why.heat", {}, ("why", "heat", "title")),
    "sources": ("about.sources", {}, ("sources", "sources", "title")),
    "cautions": ("about.cautions", {}, ("cautions", "cautions", "title")),
}
# the question that a page is about, as topic and id, by its address below the language's home; units of a table do not count
ABOUT = {
    "water/hydrant/": ("water", "another_line"), "water/tank/": ("water", "tank_time"), "water/draft/": ("water", "lift"), "water/relay/": ("water", "relay"),
    "water/connection/": ("words", "standpipe"), "foam/": ("water", "foam_percent"), "why/heat/": ("why", "shut_in"), "why/speeds/": ("why", "speedometer"),
    "why/drives/": ("why", "pto"), "diagnose/leak/": ("diagnose", "no_prime"), "diagnose/water/": ("diagnose", "where_to_start"),
    "diagnose/lights/": ("shift", "ok_light"), "diagnose/collar/": ("shift", "without_light"), "checks/": ("panel", "morning"), "checks/round/": ("panel", "morning"),
    "checks/log/": ("log", "old_checks"), "practice/numbers/": ("panel", "train_numbers"), "practice/": ("log", "break_practice"), "log/checkoff/": ("log", "a_record"),
    "rig/card/": ("rig", "panel_card"), "test/years/": ("test", "more_rpm"), "tables/friction/": ("tables", "what_is_c"), "tables/tips/": ("pressure", "smooth_bore"),
    "tables/reaction/": ("pressure", "reaction"), "tables/elevation/": ("pressure", "height"), "shift/road/read/": ("shift", "stuck_in"),
    "shift/hydrant/read/": ("panel", "change_to_hydrant"), "shift/draft/read/": ("water", "prime_there"), "shift/stages/read/": ("why", "two_stage"),
    "shift/freeze/read/": ("shift", "frost"), "shift/override/read/": ("shift", "override"),
}
OF_CHECKS = ("log", "due", "board", "defect")  # pages of the checks that open by themselves


@routes.app_context_processor
def lead():
    """Where the page being made leads for help: the topic, or None for the list of them; the question there that it is about, or None; and the words."""
    about = ABOUT.get(re.sub("^tables/[^/]+/", "tables/", flask.request.path.removeprefix(flask.url_for("start.home"))))
    page = (flask.request.endpoint, flask.request.blueprint)
    found = [topic for name in page for topic, (_, pages) in TOPICS.items() if name in pages]
    topic, question = about or (found[0] if found else None, None)
    return {"help_topic": topic, "help_question": question, "h": data.words("help")["help"], "term_words": data.words("terms")["terms"]}


@routes.app_template_filter("touched")
def mark_terms(text, address):
    """A sentence with its terms to touch; address: of the page of terms, from the page being made."""
    return touched.marked(text, data.words("terms")["term"], address)


def _way(name):
    endpoint, parts, place = WAYS[name]
    open_parts = {"system": data.opening_system()} if endpoint == "tables.table" else {}
    return {"endpoint": endpoint, "parts": {**parts, **open_parts}, "name": data.said(place)}


@routes.get("/help/")
def index():
    told = {topic: {"name": data.said(place), "asked": data.words(f"help/{topic}")} for topic, (place, _) in TOPICS.items()}
    return flask.render_template("help/index.html", topics=told, terms=data.words("terms")["terms"])


@routes.get("/help/page.json")
def page_data():
    also = data.words("find")
    questions = [
        {**told, "topic": data.said(TOPICS[topic][0]), "also": also["also"][topic].get(name, ""), "address": f"help/{topic}/#{name}"}
        for topic in TOPICS for name, told in data.words(f"help/{topic}").items()
    ]
    return json_page({**findable.index(questions, _pages(), _terms(), _faults()), "silent": sorted(findable.silent_words()), "phrases": dict(line.split(" = ") for line in also["phrases"].strip().split("\n"))})


def _terms():
    """The terms that pages use, as rows of the search."""
    told, also = data.words("terms"), data.words("find")["term"]
    return [{"name": term["name"], "also": f"{term['forms']} {also.get(name, '')}", "of": told["terms"]["title"], "address": f"help/terms/#{name}"}
            for name, term in told["term"].items()]


def _faults():
    """The causes of faults, each at its place in the list of them."""
    names = data.words("faults")["name"]
    title = data.words("diagnose")["read"]["title"]
    also = data.words("find")["fault"]
    return [{"name": names[cause["id"]], "also": also.get(cause["id"], ""), "of": title, "address": f"diagnose/read/#{cause['id']}"} for cause in data.load("faults")["cause"]]


@routes.get("/help/terms/")
def terms():
    told = data.words("terms")
    return flask.render_template("help/terms.html", t=told["terms"], terms=sorted(told["term"].items(), key=lambda row: findable.folded(row[1]["name"])))


def _pages():
    """Every page by its name, once, as its address below the language's home."""
    listed = [{"endpoint": endpoint, "parts": parts, "name": data.said(place.split("."))} for pages in PAGES.values() for endpoint, parts, place in pages]
    bay = data.words("bay")
    more = [{"endpoint": "water.page", "parts": {"source": source}, "name": data.said(("water", "page", source, "title"))} for source in reckoners.WATER]
    more += [{"endpoint": "checks.work", "parts": {"work": work}, "name": bay[work]["title"], "of": bay["bay"]["title"]} for work in OF_CHECKS]
    home, also = flask.url_for("start.home"), data.words("find")["page"]
    return list({
        address: {"name": page["name"], "address": address, "also": also.get(address.replace(f"tables/{data.opening_system()}/", "tables/"), ""), "of": page.get("of", "")}
        for page in [*map(_way, WAYS), *listed, *more]
        for address in [flask.url_for(page["endpoint"], **page["parts"]).removeprefix(home)] if page["endpoint"] != "help.index"
    }.values())


@routes.get("/help/<topic>/")
def topic(topic):
    told = data.words(f"help/{topic}")
    questions = [{**row, **told[row["id"]], "way": _way(row["way"])} for row in data.load(f"help/{topic}")["question"]]
    return flask.render_template("help/topic.html", name=data.said(TOPICS[topic][0]), questions=questions)
