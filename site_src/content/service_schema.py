"""The published schema of a service test's file: JSON Schema, made from the shape that calc.service.file asks of it."""
from calc.service import file

DRAFT = "https://json-schema.org/draft/2020-12/schema"
_TIME = {"type": ["integer", "number", "null"], "minimum": 0, "maximum": file.LATEST_MS}
PLAIN = {
    "text": {"type": "string", "maxLength": file.MOST_TEXT},
    "name": {"type": "string", "minLength": 1, "maxLength": file.MOST_NAME},
    "few": {"enum": ["", "0", "1", "2", "3", "4"]},
    "dozen": {"enum": ["", *(str(count) for count in range(13))]},
    "count": {"enum": [1, 2, 3, 4]},
    "number": {"type": "number"},
    "time": _TIME,
    "typed": {"oneOf": [{"type": ["string", "null"], "maxLength": file.MOST_NAME},
                        {"type": "array", "maxItems": 9, "items": {"type": "string", "maxLength": file.MOST_NAME}}]},
    "picture": {"type": "string", "maxLength": file.MOST_PICTURE, "pattern": "^data:image/jpeg;base64,"},
    "any": {},
}
TOLD = {
    "schema": "Version of this shape.", "begun_ms": "Milliseconds since 1970, as every time here.", "tests": "By part of the test: values as typed, with their system after @; a set names in as_before the readings that were kept from the one before it.",
    "standard": "The limits it was judged by: only this site's own, of the edition named, count.", "result": "What its readings proved; worked out again wherever it is read.",
    "photos": "Of a gauge or a defect, by part of the test.", "photographed": "By photo: SHA-256 of its part, time and picture, as a list in JSON; the digest of a signature covers these.",
    "signed": "Who signed, and SHA-256 of what was signed.", "versions": "What was signed before it was opened again, with what changed and why.",
}


def schema():
    """The schema of one test, as plain data."""
    return {"$schema": DRAFT, "title": "Fire pump service test", "description": "Amounts are text as typed, such as \"145@US\".", **_of(file.SHAPE, TOLD)}


def _of(shape, told=None):
    if isinstance(shape, str):
        return PLAIN[shape]
    if isinstance(shape, list):
        return {"type": "array", "maxItems": file.MOST_ROWS, "items": _of(shape[0])}
    names = [name for name in shape if name != "*"]
    parts = {}
    for name in names:
        part = _of(shape[name])
        parts[name.rstrip("?")] = part if name[-1] != "?" or shape[name] == [file.ATTEMPT] else {"anyOf": [part, {"type": "null"}]}
    for name in told or {}:
        parts[name] = {"description": told[name], **parts[name]}
    return {"type": "object", "maxProperties": file.MOST_ROWS, "required": [name for name in names if name[-1] != "?"], "properties": parts,
            "additionalProperties": _of(shape["*"]) if "*" in shape else False}
