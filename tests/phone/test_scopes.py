"""Several sites on one origin, each under a path of its own: none touches what another keeps, and entries of before survive."""
import shutil

import pytest
from playwright.sync_api import expect

from tests.phone.handset import Handset, Host, until
from tests.phone.sources import source
from tests.phone.test_failure import MADE
from tests.phone.test_rig import ENGINE

# What workers of before kept: the files of each site, and fleet pages of all of them in one.
OLDER = """async (origin) => {
  for (const path of ["", "pump/", "pump/beta/"]) await (await caches.open(`workbox-precache-v2-${origin}${path}`)).put(`${origin}${path}index.html`, new Response("old"));
  const fleet = await caches.open("fleet-kept");
  for (const path of ["rigs/a/", "pump/rigs/b/"]) await fleet.put(`${origin}${path}`, new Response("old"));
}"""
KEYS = """async () => Object.fromEntries(await Promise.all((await caches.keys()).map(async (name) =>
  [name.replaceAll(location.origin, ""), (await (await caches.open(name)).keys()).length])))"""
RIGS = """async (path) => (await (await import(`${path}sources/js/shared/store.js`)).keptRecords("rigs")).map(({ name }) => name).sort()"""
KEEP = """async ([path, rig]) => (await import(`${path}sources/js/shared/store.js`)).keepRecord("rigs", rig)"""
PATHS = ("/pump/", "/pump/beta/")


@pytest.fixture(scope="module")
def siblings(browser, built, tmp_path_factory):
    """A phone with entries and files of before, that then installed a site at /pump/ and one at /pump/beta/."""
    dist = tmp_path_factory.mktemp("siblings")
    for path in PATHS:
        shutil.copytree(built, dist / path.strip("/"), dirs_exist_ok=True)
    handset = Handset(browser, Host(dist), worker=True)
    handset.keeps_anything = True
    page = handset.context.new_page()
    handset.expected.append("404")
    page.goto(f"{handset.host.origin}nothing")
    page.evaluate(MADE, [2, {"drafts": {}, "rigs": {ENGINE["id"]: ENGINE}}])
    page.evaluate(OLDER, handset.host.origin)
    page.close()
    for path in PATHS:
        page = handset.open(f"{path.lstrip('/')}all/")
        page.locator("#readiness[data-state=yes]").wait_for(timeout=120000)
        page.close()
    yield handset
    handset.close()
    handset.host.stop()


def test_each_keeps_its_own_files(siblings):
    """Neither install took a file of the other away, nor of a site that is not theirs; what older workers of these two kept is gone."""
    counts = siblings.open("pump/cautions/").evaluate(KEYS)
    own = {path: counts.pop(f"files {path}") for path in PATHS}
    assert own["/pump/"] == own["/pump/beta/"] > 100
    assert counts == {"workbox-precache-v2-/": 1, "fleet-kept": 1, "fleet-kept /pump/": 1}


def test_each_opens_with_no_signal(siblings):
    """With the host gone both open, each from its own files."""
    siblings.lose_signal()
    for path in PATHS:
        page = siblings.open(f"{path.lstrip('/')}pressure/")
        expect(page.locator("output")).to_contain_text("170")  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
        assert page.url == siblings.host.origin.rstrip("/") + path + "pressure/"
        page.close()
    siblings.context.set_offline(False)
    siblings.host.start()


def test_entries_of_before_are_in_both_and_then_apart(siblings):
    """The rig that the shared database held is in each site; one that is made in a site is in that site alone."""
    pages = {path: siblings.open(f"{path.lstrip('/')}cautions/") for path in PATHS}
    for path, page in pages.items():
        source(page, "shared/store.js")
        assert page.evaluate(RIGS, path) == [ENGINE["name"]]
    pages["/pump/"].evaluate(KEEP, ["/pump/", {**ENGINE, "id": "rig-2", "name": "Only here"}])
    assert pages["/pump/"].evaluate(RIGS, "/pump/") == sorted([ENGINE["name"], "Only here"])
    assert pages["/pump/beta/"].evaluate(RIGS, "/pump/beta/") == [ENGINE["name"]]


def test_a_number_of_one_is_not_painted_in_the_other(siblings):
    """What a site worked out for its rig is painted there before any module runs; one beside it with the same rig chosen paints none of it."""
    chosen = {"rig": "another", **{f"{path} rig": ENGINE["id"] for path in PATHS}}
    page = siblings.open("pump/cautions/")
    page.evaluate("(chosen) => Object.entries(chosen).forEach(([name, id]) => localStorage.setItem(name, id))", chosen)
    page = siblings.open("pump/")
    until(page, "performance.getEntriesByName('live-answer').length")
    assert siblings.open("pump/").evaluate("window.painted?.length") > 0
    assert siblings.open("pump/beta/").evaluate("window.painted ?? null") is None
