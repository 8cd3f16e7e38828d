"""What crosses between the parts: the shape of each door's arguments and answer, of page data, and of what is kept.

The tables beside this file are JSON Schema (draft 2020-12) written short, a file a room of calc; `schema()` writes them out.
A table is a closed object: every name it has and no other, `?` after a name that may be absent, "*" for any other name. A list of strings
is a choice of them. "name" is another table or one of PRIMITIVES, "[name]" a list, "[name]2" one of two, "{name}" an
object with any names, "a|b" either.
"""
import functools
import json
import pathlib
import tomllib

import jsonschema_rs

from calc import phone
from calc.rig import fields
from site_src.routes.rig import profile_schema

FOLDER = pathlib.Path(__file__).parent
DIALECT = "https://json-schema.org/draft/2020-12/schema"
PRIMITIVES = {
    **{kind: {"type": kind} for kind in ("number", "integer", "boolean", "null")},
    "any": True,
    "text": {"type": "string"},
    "entry": {"type": "string", "description": "as typed, with its system of units: 200@US; empty where nothing is"},
    "figure": {"type": "string", "pattern": "^[-\u2212]?[0-9]+([.,][0-9]+)?$|^\u2013$", "description": "ready to be read, with its places"},
    "change": {"type": "string", "pattern": "^0$|^[+\u2212][0-9]+([.,][0-9]+)?$", "description": "with its sign, but for none"},
    "code": {"type": "string", "pattern": "^[a-z0-9][a-z0-9_]*$", "description": "what the words are found by"},
}


def alternatives(short):
    """The parts of "a|[b|c]|null" between bars that stand in no bracket."""
    parts, depth = [""], 0
    for letter in short:
        depth += (letter in "[{") - (letter in "]}")
        if letter == "|" and depth == 0:
            parts.append("")
        else:
            parts[-1] += letter
    return parts


def expanded(short):
    """JSON Schema of one shape that is written short."""
    if isinstance(short, list):
        return {"enum": short}
    if isinstance(short, dict):
        return {
            "type": "object",
            "properties": {name.removesuffix("?"): expanded(shape) for name, shape in short.items() if name != "*"},
            "required": [name for name in short if name != "*" and not name.endswith("?")],
            "additionalProperties": expanded(short["*"]) if "*" in short else False,
        }
    either = alternatives(short)
    if len(either) > 1:
        return {"anyOf": [expanded(one) for one in either]}
    if short.startswith("["):
        inner, count = short[1:].rsplit("]", 1)
        return {"type": "array", "items": expanded(inner), **({"minItems": int(count), "maxItems": int(count)} if count else {})}
    if short.startswith("{"):
        return {"type": "object", "additionalProperties": expanded(short[1:-1])}
    return {"$ref": f"#/$defs/{short}"}


@functools.cache
def tables():
    """Every shape by its name, from all files."""
    shapes = {}
    for path in sorted(FOLDER.glob("*.toml")):
        for name, shape in tomllib.loads(path.read_text(encoding="utf-8")).items():
            assert name not in shapes and name not in PRIMITIVES, f"{path.name}: {name} is there twice"
            shapes[name] = shape
    return shapes


@functools.cache
def shared():
    """The shapes that others refer to, as `$defs`."""
    return {**PRIMITIVES, **profiles(), **{name: expanded(shape) for name, shape in tables().items() if is_shared(name)}}


def is_shared(name):
    """Whether others refer to a shape: it is not a door's, a page's or a store's."""
    return name not in phone.DOORS and "/" not in name and not name.endswith(".json")


def profiles():
    """A rig's profile and a bed of it: the published schema, of a profile that may be half-filled or older."""
    published = profile_schema()["properties"]
    for name, choices in fields.UNSAID.items():
        published[name]["enum"] += choices
    bed = {**published["beds"]["items"], "required": ["end"]}
    beds = {"type": "array", "items": {"$ref": "#/$defs/bed"}}
    profile = {"type": "object", "properties": {**published, "beds": beds}, "additionalProperties": False}
    return {"bed": {key: shape for key, shape in bed.items() if key != "anyOf"}, "profile": profile}


def schema(*place):
    """JSON Schema of a shape by its name; of a door's answer: (door, "answer"), and of an argument: (door, "arguments", name)."""
    short = tables()
    for part in place:
        short = short[part]
    return {"$schema": DIALECT, "$defs": shared(), **expanded(short)}


@functools.cache
def validator(*place):
    return jsonschema_rs.validator_for(schema(*place))


def drifts(content, *place):
    """Where content is not of the shape at a place: a line each, at most five."""
    if validator(*place).is_valid(content):
        return []
    faults = list(validator(*place).iter_errors(content))[:5]
    return [f"{' '.join(place)}{''.join(f'/{part}' for part in fault.instance_path)}: {fault.message[:300]}" for fault in faults]


DOOR_OF = {(module, name.split(".")[1]): name for name, (module, _) in phone.DOORS.items()}


def drifts_of_call(module, function, arguments, answer):
    """Where a call that was answered, and its answer, are not of their door's shapes; a function without a door has none."""
    if (module, function) == ("phone", "call"):
        reply = json.loads(answer)
        if "ok" not in reply:
            return []
        door, arguments, answer = arguments["name"], json.loads(arguments["arguments_json"]), reply["ok"]
    else:
        door = DOOR_OF.get((module, function))
    if door is None:
        return []
    handed = [drift for name, value in arguments.items() if name != "held" for drift in drifts(value, door, "arguments", name)]
    return handed + drifts(answer, door, "answer")
