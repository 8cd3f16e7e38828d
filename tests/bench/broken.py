"""The mutants of a module of calc: what mutmut would change, and how to put it in place in a running process."""
import importlib
import itertools
import pathlib
import sys
import textwrap

import libcst
from libcst.metadata import MetadataWrapper, PositionProvider
from mutmut.mutation.file_mutation import MutationVisitor
from mutmut.mutation.mutators import mutation_operators
from mutmut.mutation.pragma_handling import IgnoredCode

CALC = pathlib.Path(__file__).resolve().parents[2] / "calc"


def mutants(name):
    """Every mutant of one module: name, line, last line, function, and the act that breaks."""
    text = (CALC / (name.replace(".", "/") + ".py")).read_text(encoding="utf-8")
    wrapper = MetadataWrapper(libcst.parse_module(text))
    positions = wrapper.resolve(PositionProvider)
    visitor = MutationVisitor(mutation_operators, IgnoredCode(set(), set(), set()))
    module = wrapper.visit(visitor)
    lines = text.splitlines()
    found = []
    for statement, outer in _statements(wrapper.module):
        inside = {id(node): statement for node in _walk(statement)}
        spot = positions[statement]
        first, last = spot.start.line, spot.end.line
        label = ".".join(part.name.value for part in (outer, statement) if hasattr(part, "name")) or "module"
        for change in visitor.mutations:
            if id(change.original_node) not in inside:
                continue
            at = positions.get(change.original_node)
            line, end = (at.start.line, at.end.line) if at else (first, last)
            was, new = (module.code_for_node(node).strip() for node in (change.original_node, change.mutated_node))
            code = module.code_for_node(statement.deep_replace(change.original_node, change.mutated_node))
            if outer is None and not isinstance(statement, libcst.FunctionDef):
                code += "".join(module.code_for_node(each) for each in _assignments(wrapper.module, statement))
            found.append({
                "module": name, "function": f"{name}.{label}", "line": line, "end": end, "first": first, "last": last,
                "is_function": isinstance(statement, libcst.FunctionDef),
                "name": f"{label}: {' '.join(was.split())} -> {' '.join(new.split())} in {lines[line - 1].strip() if at else ''}",
                "apply": _breaker(name, outer, statement, code),
            })
    return found


def _statements(module):
    """Each function, method or other statement of the module with the class that holds it."""
    for statement in module.body:
        if isinstance(statement, libcst.ClassDef):
            yield from ((each, statement) for each in statement.body.body)
        else:
            yield statement, None


def _assignments(module, statement):
    """The values that a module gives names after a statement: what it makes of that one's is made anew."""
    later = module.body[module.body.index(statement) + 1:]
    return [each for each in later if isinstance(each, libcst.SimpleStatementLine) and isinstance(each.body[0], libcst.Assign)]


def _walk(node):
    yield node
    for child in node.children:
        yield from _walk(child)


def _breaker(name, outer, statement, code):
    """An act that puts this code in place of a function's, or these values in place of a module's or a class's."""
    def apply():
        module = importlib.import_module("calc." + name)
        scope = dict(vars(module))
        if isinstance(statement, libcst.FunctionDef):
            holder = getattr(module, outer.name.value) if outer else module
            function = getattr(holder, statement.name.value)
            other = _compiled(textwrap.dedent(code), statement.name.value, holder, scope)
            function.__code__, function.__defaults__, function.__kwdefaults__ = (
                other.__code__, other.__defaults__, other.__kwdefaults__)
            return
        if outer:
            values = {}
            exec(compile(textwrap.dedent(code), name, "exec"), scope, values)
            for key, value in values.items():
                setattr(getattr(module, outer.name.value), key, value)
            return
        exec(compile(textwrap.dedent(code), name, "exec"), scope)
        for key, value in scope.items():
            if key in vars(module) and value is not vars(module)[key]:
                _replace(key, vars(module)[key], value)

    return apply


def _compiled(code, name, holder, scope):
    """The function of this code; one that says super() finds its class as it would in it."""
    if "super()" in code:
        code = "def _within(__class__):\n" + textwrap.indent(code, "    ") + "\n    return " + name
        exec(code, scope)
        return scope["_within"](holder)
    exec(code, scope)
    return scope[name]


def _replace(key, old, new):
    """Every module that has this value under this name has the new one."""
    for module in list(sys.modules.values()):
        if getattr(module, "__dict__", None) and vars(module).get(key) is old and key != "__builtins__":
            setattr(module, key, new)
