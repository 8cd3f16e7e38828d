"""A department's rigs with no signal: those that were kept or opened open; of the others it is said how to get them."""
import shutil

import pytest
from playwright.sync_api import expect

import build
from site_src.content import data, fleet
from tests.phone.handset import Handset, Host
from tests.phone.words import SITE

FLEET = data.words("rig")["fleet"]
RIGS = fleet.load()
MANY = 53  # of which a phone keeps 50


@pytest.fixture(scope="module")
def many(tmp_path_factory):
    """The site of a department with more rigs than a phone keeps."""
    folder = tmp_path_factory.mktemp("many")
    for count in range(MANY):
        (folder / f"engine-{count:02}.toml").write_text(f'name = "Engine {count:02}"\nunits = "US"\n', encoding="utf-8")
    build.build(folder / "dist", rigs_folder=folder)
    return folder / "dist"


@pytest.fixture
def phone(browser, request, tmp_path):
    """A phone with the site installed from a host of its own, which a test may change or stop."""
    host = Host(shutil.copytree(request.getfixturevalue(getattr(request, "param", "built")), tmp_path / "dist"))
    handset = Handset(browser, host, worker=True)
    handset.install().close()
    yield handset
    handset.close()
    host.stop()


def key(page):
    return page.locator("#keep button")


def marked(page):
    """The rigs of the list that are said to open with no signal."""
    return page.locator("[data-rig]").filter(has=page.locator("span:visible", has_text=FLEET["here"]))


def status(page):
    return page.locator("#keep").get_by_role("status")


def said(sentence, **facts):
    return FLEET[sentence].format(**facts)


@pytest.mark.parametrize("address", ["rigs/tollgate-engine-1/", "rigs/tollgate-engine-1/index.html", "rigs/"])
def test_a_page_that_was_never_opened_says_how_to_get_it(away, address):
    """With no signal a fleet's page that is not here is not called a page that does not exist."""
    page = away.open(address)
    expect(page.get_by_role("heading", level=1)).to_have_text(FLEET["away_title"])
    expect(page.get_by_text(FLEET["away_do"])).to_be_visible()
    page.get_by_role("link", name=data.words("rig")["rig"]["title"], exact=True).first.tap()
    expect(page.get_by_role("heading", level=1)).to_have_text(data.words("rig")["rig"]["title"])


def test_it_is_said_in_the_language_of_the_page(browser, built):
    """A French page that is away says so in French."""
    handset = Handset(browser, Host(built), worker=True, locale="fr-CA")
    start = handset.open("fr/")
    start.locator("#readiness[data-state=yes]").wait_for(timeout=60000)
    handset.lose_signal()
    page = handset.open("fr/rigs/tollgate-engine-1/")
    expect(page.get_by_role("heading", level=1)).to_have_text(data.load("words/fr/rig")["fleet"]["away_title"])
    handset.close()


def test_another_unknown_address_is_still_unknown(away):
    """Only the fleet's pages may be had later."""
    expect(away.open("no/such/").get_by_role("heading", level=1)).to_have_text(SITE["missing"]["title"])


def test_every_rig_is_kept(phone, built):
    """One touch keeps all of them and says how much that is; with the host gone each opens, and can be taken."""
    page = phone.open("rigs/")
    size = sum(path.stat().st_size for name in RIGS for path in (built / "rigs" / name).iterdir())
    expect(key(page)).to_have_text(said("keep", want=len(RIGS), kb=-(-size // 1000)))
    key(page).tap()
    expect(status(page)).to_have_text(said("held", have=len(RIGS), want=len(RIGS)))
    expect(marked(page)).to_have_count(len(RIGS))
    page.close()
    phone.lose_signal()
    page = phone.open("rigs/")
    expect(status(page)).to_have_text(said("held", have=len(RIGS), want=len(RIGS)))
    expect(key(page)).to_be_hidden()
    for name, profile in RIGS.items():
        page.get_by_role("link", name=profile["name"]).tap()
        expect(page.get_by_role("heading", level=2)).to_have_text(profile["name"])
        if name == "tollgate-engine-1":
            expect(page.locator(".sheet table").first).to_be_visible()
        page.go_back()
    page.get_by_role("link", name="Tollgate Engine 1").tap()
    page.get_by_role("link", name=FLEET["take"]).tap()
    expect(page.get_by_role("heading", name=data.words("rig")["carry"]["take_title"])).to_be_visible()


def test_a_rig_that_was_opened_opens_again(phone):
    """Without being kept; the others are still away."""
    page = phone.open("rigs/tollgate-engine-1/index.html")
    expect(page.locator(".sheet")).to_be_visible()
    page.evaluate("async () => { while (!(await (await caches.open(`fleet ${new URL('/', location)}`)).keys()).length) await null; }")  # put by after it was answered
    phone.lose_signal()
    expect(phone.open("rigs/tollgate-engine-1/").locator(".sheet")).to_be_visible()
    expect(phone.open("rigs/tollgate-engine-2/").get_by_text(FLEET["away_do"])).to_be_visible()


def test_what_could_not_be_kept_is_said(phone):
    """A rig whose page is not there now is not counted, and the way to get it is said; the others are kept."""
    phone.expected.append("404")
    page = phone.open("rigs/")
    expect(key(page)).to_be_visible()
    shutil.rmtree(phone.host.dist / "rigs" / "tollgate-brush-6")
    key(page).tap()
    expect(status(page)).to_have_text(said("partly", have=len(RIGS) - 1, want=len(RIGS)))
    expect(marked(page)).to_have_count(len(RIGS) - 1)
    phone.lose_signal()
    expect(phone.open("rigs/tollgate-brush-6/").get_by_text(FLEET["away_do"])).to_be_visible()
    expect(phone.open("rigs/saltmarsh-pump-2/").locator(".sheet")).to_be_visible()


def choose(page, *names):
    for name in names:
        page.locator("#keep label").filter(has_text=name).tap()


@pytest.mark.parametrize("phone", ["many"], indirect=True)
def test_a_large_department_is_chosen_from(phone):
    """Over 50 rigs, 50 at most are kept; what is no longer chosen goes, and pages that were only opened do not pile up."""
    page = phone.open("rigs/")
    expect(key(page)).to_be_disabled()
    choose(page, *(f"Engine {count:02}" for count in range(51)))
    expect(key(page)).to_have_text(said("too_many", want=51, most=50))
    expect(key(page)).to_be_disabled()
    choose(page, *(f"Engine {count:02}" for count in range(3, 51)))
    key(page).tap()
    expect(status(page)).to_have_text(said("held", have=3, want=3))
    choose(page, "Engine 01")
    key(page).tap()
    expect(status(page)).to_have_text(said("held", have=2, want=2))
    opened = page.evaluate("""async (count) => {
      for (let each = 3; each < count; each += 1) {
        const name = `engine-${String(each).padStart(2, "0")}`;
        await Promise.all([fetch(`${name}/`), fetch(`${name}/rig.json`)]);
      }
      const cache = await caches.open(`fleet ${new URL("/", location)}`);
      const last = [`engine-${count - 1}/`, `engine-${count - 1}/rig.json`].map((name) => new URL(name, location).href);
      let keys = [];
      for (let tries = 0; tries < 100; tries += 1) { // a page is put by after it was answered, and the oldest go after that
        keys = (await cache.keys()).map((request) => request.url);
        if (keys.length <= 60 && last.every((url) => keys.includes(url))) break;
        await new Promise((done) => setTimeout(done, 50));
      }
      return keys.length;
    }""", MANY)
    assert 30 < opened <= 60
    phone.lose_signal()
    for name, is_here in (("00", True), ("02", True), ("52", True), ("03", False)):
        expect(phone.open(f"rigs/engine-{name}/").get_by_role("heading", name=FLEET["away_title"])).to_have_count(0 if is_here else 1)
