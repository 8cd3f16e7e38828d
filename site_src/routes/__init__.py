"""One module of routes a topic."""
import json

import flask


def json_page(content):
    """Plain data as a JSON response whose bytes depend on nothing but the data."""
    return flask.Response(json.dumps(content, ensure_ascii=False, sort_keys=True), mimetype="application/json")
