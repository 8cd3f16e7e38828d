"""The doors of calc as TypeScript's declarations, written from their contracts: what each takes and what it answers."""
import json
import re

from calc import phone
from tests import contracts

NAME = re.compile(r'Shape\["(\w+)"\]')


def declarations():
    """The text of doors.d.ts: `Shape`, the shapes by name that they name, and `Doors`, every door's arguments and answer."""
    doors = {door: written(contracts.expanded(contracts.tables()[door])) for door in phone.DOORS}
    shapes = {}
    named(" ".join(doors.values()), shapes)
    return interface("Shape", shapes) + interface("Doors", doors)


def named(text, shapes):
    """Put to the shapes those that a text names, and what they name in turn."""
    for name in NAME.findall(text):
        if name not in shapes:
            shapes[name] = written(contracts.shared()[name])
            named(shapes[name], shapes)


def interface(name, types):
    """An interface of such types by their names."""
    return "\n".join([f"interface {name} {{", *(f"  {json.dumps(key)}: {text};" for key, text in types.items()), "}", ""])


def written(shape):
    """A JSON Schema as a type; what TypeScript cannot say, such as a pattern, is left out."""
    if shape is True or not shape:
        return "any"
    if "$ref" in shape:
        return f"Shape[{json.dumps(shape['$ref'].rsplit('/', 1)[1])}]"
    if "const" in shape:
        return json.dumps(shape["const"])
    if "enum" in shape:
        return " | ".join(json.dumps(choice) for choice in shape["enum"])
    if "anyOf" in shape:
        return " | ".join(written(one) for one in shape["anyOf"])
    if isinstance(shape.get("type"), list):
        return " | ".join(written({**shape, "type": kind}) for kind in shape["type"])
    if shape.get("type") == "array":
        return f"({written(shape.get('items', True))})[]"
    if shape.get("type") == "object":
        return objects(shape)
    return "number" if shape["type"] == "integer" else shape["type"]


def objects(shape):
    """A closed object, or one with any names."""
    required = shape.get("required", [])
    fields = [f"{json.dumps(name)}{'' if name in required else '?'}: {written(inner)}" for name, inner in shape.get("properties", {}).items()]
    if not fields:
        return f"Record<string, {written(shape['additionalProperties'])}>" if shape.get("additionalProperties") else "Record<string, never>"
    if shape.get("additionalProperties"):
        fields.append("[name: string]: any")
    return f"{{ {'; '.join(fields)} }}"
