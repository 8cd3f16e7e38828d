"""Calls any public function of calc by name, its module as a path below calc; the same file runs under both Pythons."""
import json

from calc.base.errors import CalcError


def call(request):
    """Answer one JSON request `{"module", "function", "arguments"}` with JSON text."""
    asked = json.loads(request)
    module = __import__("calc." + asked["module"], None, None, ("*",))
    try:
        return json.dumps({"ok": getattr(module, asked["function"])(**asked["arguments"])})
    except CalcError as error:
        return json.dumps({"refused": {"field": error.field, "code": error.code, "facts": error.facts}})
