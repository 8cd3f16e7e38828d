"""The water and foam pages, each of which opens on an answer that was baked; and the page that lists them."""
import flask

from site_src.content import data, reckoners
from site_src.routes import answering_page, json_page

routes = flask.Blueprint("water", __name__)


@routes.context_processor
def words():
    system = data.opening_system()
    unit = data.words("units")["unit"][system]
    return {"t": data.words("water"), "system": system, "u": {f"u_{kind}": name for kind, name in unit.items()}}


@routes.get("/water/")
def index():
    return flask.render_template("reckon/index.html", pages=reckoners.PAGES, more=reckoners.ALL_TABLES)


@routes.get("/water/page.json")
def index_data():
    return json_page(reckoners.index_data(_pool()))


@routes.get("/water/<source>/")
def page(source):
    return _page(source)


@routes.get("/water/<source>/page.json")
def page_data(source):
    return _page_data(source)


@routes.get("/foam/")
def foam():
    return _page("foam")


@routes.get("/foam/page.json")
def foam_data():
    return _page_data("foam")


def _page_data(name):
    return answering_page({**reckoners.page_data(name, _pool()), "baked": reckoners.opening_answer(name, _pool())})


def _page(name):
    return flask.render_template("reckon/page.html", page=name, answer=reckoners.opening_answer(name, _pool()), more=reckoners.TABLES[name])


def _pool():
    return flask.current_app.config["POOL"]
