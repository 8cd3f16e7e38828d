"""One module of routes a topic."""
import functools
import hashlib
import json
import pathlib

import flask

import calc

JSON = {"ensure_ascii": False, "sort_keys": True, "separators": (",", ":")}


def json_page(content):
    """Plain data as a JSON response whose bytes depend on nothing but the data."""
    return flask.Response(json.dumps(content, **JSON), mimetype="application/json")


def answering_page(content):
    """The same for a page that keeps its last answer: with the version of data, calc and scripts that answer is of."""
    return json_page({**content, "version": version(content)})


def version(content):
    """What such a page's answer is of, short: another text where data, calc or scripts are others."""
    return hashlib.sha256(json.dumps(content, **JSON).encode() + _sources().encode()).hexdigest()[:16]


@functools.cache
def _sources():
    """The digest of all that works an answer out and shows it."""
    calc_files = pathlib.Path(calc.__file__).parent.rglob("*.py")
    scripts = (pathlib.Path(__file__).parent.parent / "static/js").rglob("*.js")
    together = hashlib.sha256()
    for path in sorted([*calc_files, *scripts]):
        together.update(path.read_bytes())
    return together.hexdigest()
