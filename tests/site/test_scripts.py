"""The phone's scripts as text: no name is used that nothing gives."""
import pathlib

import pytest
import tree_sitter
import tree_sitter_javascript

STATIC = pathlib.Path(__file__).resolve().parents[2] / "site_src" / "static"
SCRIPTS = sorted((STATIC / "js").rglob("*.js")) + [STATIC.parent / "sw.js"]
PARSER = tree_sitter.Parser(tree_sitter.Language(tree_sitter_javascript.language()))
# what the browser gives, what sw.js is given, and a word that the parser takes for a name within brackets
GIVEN = set("""
    Array Blob Boolean BroadcastChannel CSS CompressionStream Date DecompressionStream Error File Infinity JSON Map
    Math MessageChannel MutationObserver NodeFilter Number Object Promise RangeError Response Set SpeechSynthesisUtterance String
    Symbol TextDecoder TextEncoder TypeError URL Uint32Array Uint8Array
    addEventListener atob btoa caches clearTimeout crypto decodeURIComponent document encodeURIComponent fetch history importScripts
    localStorage location navigator performance queueMicrotask registration scrollTo self sessionStorage setInterval setTimeout
    structuredClone undefined window
    workbox FILES
    await
""".split())
DECLARES = {
    "variable_declarator": "name", "function_declaration": "name", "function_expression": "name", "class_declaration": "name",
    "arrow_function": "parameter", "for_in_statement": "left",
}
HOLDS_NAMES = {"formal_parameters", "import_clause", "catch_clause", "export_clause"}


def nodes(node):
    yield node
    for child in node.children:
        yield from nodes(child)


def names(node):
    """What a pattern, a parameter list or an import gives names to."""
    kinds = {"identifier", "shorthand_property_identifier_pattern"}
    return {each.text.decode() for each in nodes(node) if each.type in kinds}


def unknown(source):
    """Names used in a script that it neither declares nor imports and the browser does not have."""
    tree = PARSER.parse(source).root_node
    declared = set()
    for node in nodes(tree):
        if node.type in DECLARES and (named := node.child_by_field_name(DECLARES[node.type])):
            declared |= names(named)
        elif node.type in HOLDS_NAMES:
            declared |= names(node)
    kinds = {"identifier", "shorthand_property_identifier"}
    used = {node.text.decode() for node in nodes(tree) if node.type in kinds}
    return used - declared - GIVEN


def test_a_forgotten_import_is_seen():
    told = unknown(b'import { html } from "./a.js"; export const view = ({ one }) => { for (const [x] of one) html(x, nothing, { fill }); };')
    assert told == {"nothing", "fill"}


@pytest.mark.parametrize("path", SCRIPTS, ids=lambda path: path.relative_to(STATIC.parent).as_posix())
def test_every_name_is_given(path):
    """Each name is declared in the script, imported, or the browser's own."""
    assert unknown(path.read_bytes()) == set()
