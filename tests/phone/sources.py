"""The scripts as they are written, a module a file, on a page of the site: the site itself has them in bundles."""
import re

import build
from site_src import bundle
from site_src.publish.release import TYPES

STATIC = build.ROOT / "site_src" / "static"
PLACE = re.compile(r"/sources/(js|vendor)/")  # not the page of that name


def _source(route):
    path = STATIC / route.request.url.split("/sources/")[1].partition("?")[0]
    route.fulfill(body=path.read_bytes(), content_type=TYPES[path.suffix])


def _from_sources(route):
    name = route.request.url.split("/static/js/")[1]
    if name in (*bundle.ALONE, bundle.THREAD):
        return route.fallback()
    modules = [*bundle.EVERY, bundle.entries()[name][-1]] if name in bundle.entries() else []
    return route.fulfill(body="".join(f'import "../../../sources/{module}";\n' for module in modules), content_type=TYPES[".js"])


def source(page, name):
    """Where a page finds a module, such as "shared/store.js"; with or without a host, the browser itself answers."""
    page.context.unroute(PLACE, _source)
    page.context.route(PLACE, _source)
    return f"{page.evaluate('location.origin')}/sources/js/{name}"


def run_from_sources(context):
    """Let pages opened after this run from the modules, so that a test can reach into them."""
    context.route(PLACE, _source)
    for folder in ("pages", "shared"):
        context.route(f"**/static/js/{folder}/*.js", _from_sources)
