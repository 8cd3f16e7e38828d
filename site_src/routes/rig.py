"""The Rig page: a truck's profile, its panel card on the phone, and the profile's published form."""
import flask

from calc.rig import check_fields, fields as rig_fields
from site_src.content import catalogue, data, layouts, units
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
    words = data.shared_words()
    told = data.words("rig")
    layout = data.load("rig")
    return json_page({
        "schema": rig_fields.SCHEMA,
        "fields": _fields(rig_fields.FIELDS),
        "hose_fields": _fields(rig_fields.HOSE_FIELDS),
        "bed_fields": {**_fields(rig_fields.BED_FIELDS), **{name: spec for end in rig_fields.END_FIELDS.values() for name, spec in _fields(end).items()}},
        "supply_fields": _fields(rig_fields.SUPPLY_FIELDS),
        "check_fields": _fields(check_fields.CHECK_FIELDS),
        "bounds": {"rows": rig_fields.MOST_ROWS, "tips": rig_fields.MOST_TIPS, "text": rig_fields.MOST_TEXT, "readings": rig_fields.MOST_READINGS},
        "sections": layout["section"],
        "new": layout["new"],
        "section_length": layout["section_length"],
        "guns": {family: layouts.ready(family)["master"]["lines"][0]["end"] for family in layouts.SYSTEMS},
        "supplies": {family: [hose for hose in catalogue.hose_choices("supply") if hose["family"] == family] for family in layouts.SYSTEMS},
        "openings": {family: layouts.ready(family)["one"] for family in layouts.SYSTEMS},
        "shelf": catalogue.shelf(flask.current_app.config["POOL"]),
        "hoses": catalogue.hose_choices(),
        "tips": catalogue.tip_choices(),
        "usual": catalogue.usual_pressures(),
        "systems": units.for_page(),
        "words": {**{key: words[key] for key in ("pressure", "refusal", "caution", "unit", "engine")}, **told},
    })


@routes.get("/rig/profile.schema.json")
def schema():
    """The form of a profile as a JSON Schema, made from calc.rig.fields."""
    return json_page(profile_schema())


def profile_schema():
    """JSON Schema of a profile. Bounds of numbers in text are calc.rig.check's to find."""
    entry = {"type": "string", "maxLength": rig_fields.MOST_TEXT}

    forms = {
        "note": {"type": "string", "maxLength": check_fields.MOST_NOTE},
        "codes": {"type": "array", "maxItems": check_fields.MOST_CODES, "items": entry, "uniqueItems": True},
    }

    def properties(fields):
        return {
            name: {"type": "string", "enum": ["", *detail[0]]} if kind == "choice" else forms.get(kind, entry)
            for name, kind, *detail in fields
        }

    def rows(fields, needed, more=None, most=rig_fields.MOST_ROWS):
        return {
            "type": "array",
            "maxItems": most,
            "items": {
                "type": "object",
                "properties": {**properties(fields), **(more or {})},
                "required": list(needed),
                "additionalProperties": False,
            },
        }

    end = {
        "type": "object",
        "properties": {"kind": {"enum": sorted(rig_fields.END_FIELDS)}, **{name: entry for name in rig_fields.END_ENTRIES}},
        "required": ["kind", "pressure"],
        "additionalProperties": False,
    }
    beds = rows(rig_fields.BED_FIELDS, ("name", "end"), {"end": end, "tips": {"type": "array", "maxItems": rig_fields.MOST_TIPS, "items": entry}})
    device = {"properties": {"device": {"enum": ["master", "aerial"]}}, "required": ["device"]}
    beds["items"]["anyOf"] = [{"required": ["hose", "length"]}, device]  # a master stream may be piped
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Rig profile",
        "type": "object",
        "properties": {
            "schema": {"const": rig_fields.SCHEMA},
            "id": {**entry, "minLength": 1},
            **properties(rig_fields.FIELDS + rig_fields.GONE),
            "hoses": rows(rig_fields.HOSE_FIELDS, ("hose",)),
            "beds": beds,
            "supply": rows(rig_fields.SUPPLY_FIELDS, ("hose", "length")),
            "checks": rows(check_fields.CHECK_FIELDS, ("item", "act"), most=check_fields.MOST_CHECKS),
        },
        "required": ["schema", "id", "name", "units"],
        "additionalProperties": False,
    }
