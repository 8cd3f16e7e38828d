"""The Pressure page, which opens on an answer that was baked."""
import flask

from calc.base import entry
from calc.layout import answer, scale
from site_src.content import catalogue, data, layouts, units
from site_src.routes import answering_page, version

routes = flask.Blueprint("pressure", __name__)


@routes.get("/pressure/")
def page():
    system = data.opening_system()
    [line] = _opening_lay()["lines"]
    shown = units.shown_in(system)
    return flask.render_template(
        "pressure.html",
        version=version(_content()),
        answer=_opening_answer(),
        hose=data.by_id(data.named("hoses"))[line["hose"]]["label"],
        length=entry.shown(shown, "length", line["length"]),
    )


@routes.get("/pressure/page.json")
def page_data():
    return answering_page(_content())


def _content():
    return {**catalogue.page(_pool()), "baked": _opening_answer(), "baked_scale": _opening_scale()}


def _pool():
    return flask.current_app.config["POOL"]


def _opening_lay():
    return layouts.ready(units.family(data.opening_system()))["one"]


def _opening_answer():
    """The answer of the layout that a phone opens on where nothing was entered."""
    return answer.answer(_opening_lay(), catalogue.shelf(_pool()), units.shown_in(data.opening_system()))


def _opening_scale():
    """The scale that stands over that answer."""
    shown = units.shown_in(data.opening_system())
    return scale.read(answer.solved(_opening_lay(), catalogue.shelf(_pool()), shown), _opening_lay(), shown, None)
