"""What a built page may not hold: code or style of its own, an address of another origin, or a weaker policy than the rest."""
import re

import pytest

import build
from site_src import bundle
from tests.site import pages

POLICY = {
    "default-src 'self'", "script-src 'self' 'wasm-unsafe-eval'", "object-src 'none'", "base-uri 'none'", "form-action 'none'",
    "require-trusted-types-for 'script'", "trusted-types lit-html worker engine",
}
FETCHED = {("script", "src"), ("link", "href"), ("img", "src"), ("iframe", "src"), ("video", "src"), ("object", "data"), ("form", "action"), ("a", "href")}
FOREIGN = re.compile(r"^(?:[a-z][a-z0-9+.-]*:|//)", re.IGNORECASE)
SENDERS = ("XMLHttpRequest", "sendBeacon", "WebSocket", "EventSource", "RTCPeerConnection", "eval(", "new Function", "innerHTML", "insertAdjacentHTML",
           "document.write", "unsafeHTML", "unsafeSVG", "unsafeStatic", "method: \"POST\"", "getUserMedia", "geolocation.")

EXEMPT = [("camera.js", "getUserMedia"), ("touched.js", "XMLHttpRequest")]


@pytest.fixture(scope="module")
def built_pages(built):
    return {path.relative_to(built).as_posix(): pages.Page(path) for path in built.rglob("*.html")}


def test_every_page_carries_the_policy(built_pages):
    """The same policy stands in every page, before anything that it rules."""
    for name, page in built_pages.items():
        names = [tag for tag, _ in page.tags]
        [(place, given)] = [(place, given) for place, (tag, given) in enumerate(page.tags) if given.get("http-equiv") == "Content-Security-Policy"]
        assert {part.strip() for part in given["content"].split(";")} == POLICY, name
        assert not {"script", "link", "style"} & set(names[:place]), name


def test_no_page_holds_code_or_style(built_pages):
    """No page holds script, style or a handler of its own: all of it comes as files."""
    for name, page in built_pages.items():
        assert page.inline == [], name
        assert [(tag, key) for tag, given in page.tags for key in given if key == "style" or key.startswith("on")] == [], name


def test_no_page_names_another_origin(built_pages):
    """Nothing a page fetches, frames, links to or sends lies anywhere but on the site."""
    for name, page in built_pages.items():
        assert [given[key] for tag, given in page.tags for of, key in FETCHED if of == tag and FOREIGN.match(given.get(key) or "")] == [], name


def test_no_script_sends_or_builds_from_text():
    """No script of ours can send, run text as code, build a page from text, listen, or ask for the place; one looks through the camera, for a log's codes,
    and one reads pages of the site as documents, which alone asks for no text to be trusted."""
    scripts = [*(build.ROOT / "site_src" / "static" / "js").rglob("*.js"), *(build.ROOT / "site_src" / "worker").glob("*.js")]
    assert len(scripts) > 50
    assert sorted((path.name, sender) for path in scripts for sender in SENDERS if sender in path.read_text(encoding="utf-8")) == EXEMPT
    assert '.open("GET"' in (bundle.STATIC / "js/help/touched.js").read_text(encoding="utf-8")


def test_no_bundle_does_either(built):
    """Nor can any script as the site has it, but for lit-html's own templates, which stand behind its policy, and those two."""
    scripts = "".join(path.read_text(encoding="utf-8") for path in (built / "static/js").rglob("*.js"))
    allowed = "".join((bundle.STATIC / name).read_text(encoding="utf-8") for name in ("js/bay/camera.js", "js/help/touched.js", *(name for name in bundle.parts() if name.startswith("vendor/"))))
    assert len(scripts) > 100_000
    assert [sender for sender in SENDERS if scripts.count(sender) > allowed.count(sender)] == []
