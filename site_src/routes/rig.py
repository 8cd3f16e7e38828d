"""The Rig page: a truck's profile, its panel card on the phone, and the profile's published form."""
import flask

from calc import rig
from site_src import catalogue, data, lays
from site_src.routes import json_page

routes = flask.Blueprint("rig", __name__)


@routes.get("/rig/")
def page():
    return flask.render_template("rig/page.html")


@routes.get("/rig/card/")
def card():
    return flask.render_template("rig/card.html")


def _fields(rows):
    names = {"choice": ("options",), "number": ("least", "most"), "quantity": ("quantity", "least", "most")}
    return {
        name: {"kind": kind, **dict(zip(names.get(kind, ()), detail, strict=True))} for name, kind, *detail in rows
    }


@routes.get("/rig/page.json")
def page_data():
    words = data.words("site")
    told = data.words("rig")
    layout = data.load("rig")
    return json_page({
        "schema": rig.SCHEMA,
        "fields": _fields(rig.FIELDS),
        "hose_fields": _fields(rig.HOSE_FIELDS),
        "sections": layout["section"],
        "new": layout["new"],
        "section_length": layout["section_length"],
        "openings": {family: lays.ready(family)["one"] for family in lays.SYSTEMS},
        "shelf": catalogue.shelf(),
        "hoses": catalogue.hose_choices(),
        "tips": catalogue.tip_choices(),
        "usual": catalogue.usual_pressures(),
        "systems": catalogue.unit_systems(),
        "words": {**{key: words[key] for key in ("pressure", "refusal", "caution", "unit", "units", "engine")}, **told},
    })


@routes.get("/rig/profile.schema.json")
def schema():
    """The form of a profile as a JSON Schema, made from calc.rig."""
    return json_page(profile_schema())


def profile_schema():
    """JSON Schema of a profile. Bounds of numbers in text are calc.rig's to check."""
    entry = {"type": "string", "maxLength": rig.MOST_TEXT}

    def properties(fields):
        return {
            name: {"type": "string", "enum": ["", *detail[0]]} if kind == "choice" else entry
            for name, kind, *detail in fields
        }

    def rows(fields, needed, more=None):
        return {
            "type": "array",
            "maxItems": rig.MOST_ROWS,
            "items": {
                "type": "object",
                "properties": {**properties(fields), **(more or {})},
                "required": list(needed),
                "additionalProperties": False,
            },
        }

    end = {
        "type": "object",
        "properties": {"kind": {"enum": sorted(rig.END_FIELDS)}, **{name: entry for name in rig.KEPT_ENTRIES}},
        "required": ["kind", "pressure"],
        "additionalProperties": False,
    }
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Rig profile",
        "type": "object",
        "properties": {
            "schema": {"const": rig.SCHEMA},
            "id": {**entry, "minLength": 1},
            **properties(rig.FIELDS),
            "hoses": rows(rig.HOSE_FIELDS, ("hose", "coefficient")),
            "beds": rows(rig.BED_FIELDS, ("name", "hose", "length", "end"), {"end": end}),
        },
        "required": ["schema", "id", "name", "units"],
        "additionalProperties": False,
    }
