"""The install: progress from the first, the cause when it stops, on by itself, and Ready only for files that are right and compute."""
import contextlib
import shutil

import pytest
from playwright.sync_api import expect

from site_src.content import data
from site_src.publish import serving
from tests.phone.handset import Handset, Host, carried, ready
from tests.phone.words import SITE

START = SITE["start"]
FRENCH = data.shared_words("fr")


class Changing(Host):
    """A host of its own site, whose server can be put in another's place."""

    def serve(self, handler):
        self.stop()
        was, serving.Handler = serving.Handler, handler
        try:
            self.start()
        finally:
            serving.Handler = was


@pytest.fixture
def own(built, tmp_path):
    host = Changing(shutil.copytree(built, tmp_path / "dist"))
    yield host
    with contextlib.suppress(OSError):
        host.stop()


@pytest.fixture
def phone(browser, own):
    handset = Handset(browser, own, worker=True)
    handset.expected += ["404", "Failed to load", "ERR_", "MIME"]
    yield handset
    handset.close()


def readiness(page):
    return page.locator("#readiness")


def is_ready(page, timeout=90000):
    expect(readiness(page)).to_have_attribute("data-state", "yes", timeout=timeout)


def test_a_missing_file_is_said_and_then_fetched(phone, own, built):
    """The page counts files and megabytes, names the file that is not there, and says Ready without a tap once it is."""
    shutil.rmtree(own.dist / "packs")
    (own.dist / "cautions/index.html").unlink()
    page = phone.open("all/")
    expect(readiness(page)).to_contain_text(START["cause"]["missing"].format(file="cautions/index.html"), timeout=60000)
    expect(readiness(page)).to_contain_text(f"of {carried(built)} files")
    expect(readiness(page)).to_contain_text("MB")
    expect(readiness(page)).to_have_attribute("data-state", "partly")
    shutil.copy(built / "cautions/index.html", own.dist / "cautions/index.html")
    page.evaluate("dispatchEvent(new Event('online'))")  # as the phone does when its signal is back
    is_ready(page)
    expect(readiness(page)).to_have_text(ready(carried(built)))


def test_a_phone_that_fills_up_goes_on_once_there_is_room(phone, own, built):
    """The store is full in the middle of an install: the page says so, names no file as missing, and ends Ready once room was made."""
    page = phone.open("404.html")
    session = phone.context.new_cdp_session(page)
    origin = own.origin.rstrip("/")
    session.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": 1_500_000})  # of 3.2 MB
    page.goto(f"{own.origin}all/")
    expect(readiness(page)).to_contain_text(START["cause"]["room"], timeout=60000)
    expect(readiness(page)).to_have_attribute("data-state", "partly")
    session.send("Storage.overrideQuotaForOrigin", {"origin": origin})
    page.evaluate("dispatchEvent(new Event('online'))")
    is_ready(page)
    expect(readiness(page)).to_have_text(ready(carried(built)))


def test_a_spoiled_pack_is_made_up_for(phone, own, built):
    """A pack that was cut off on its way to the host, one that is another's: their files are fetched by themselves, and what is kept is right."""
    first, second = own.dist / "packs/en-text-1.pack", own.dist / "packs/all-js-1.pack"
    first.write_bytes(first.read_bytes()[:-400])
    shutil.copy(first, second)
    page = phone.open("all/")
    is_ready(page)
    kept = {name: page.evaluate(READ, name) for name in ("cautions/index.html", "pressure/page.json", "diagnose/page.json")}
    assert kept == {name: (built / name).read_text(encoding="utf-8") for name in kept}


class Frozen(serving.Handler):
    """A host that sends no script with its type, and a policy that stops the calculator."""

    extensions_map = {**serving.TYPES, ".wasm": "application/octet-stream", ".json": "text/plain", ".webmanifest": "text/plain"}

    def send_header(self, name, value):
        super().send_header(name, "default-src 'self'; frame-ancestors 'none'" if name == "Content-Security-Policy" and self.path != "/sw.js" else value)


def test_a_wrong_header_is_not_kept(phone, own, built):
    """Installed from a host with wrong types and a policy of its own, the site is Ready and computes with the host gone."""
    own.serve(Frozen)
    page = phone.open("all/")
    is_ready(page)
    page.close()
    phone.troubles.clear()  # of the pages that came from the host
    phone.lose_signal()
    page = phone.open("pressure/")
    expect(page.locator("output")).to_contain_text("170")  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    headers = page.evaluate("async () => Object.fromEntries((await fetch('../static/vendor/micropython/micropython.wasm')).headers)")
    assert headers["content-type"] == "application/wasm"
    own.start()


SPOIL = """async (name) => {
  const cache = await caches.open(`files ${new URL("/", location)}`);
  const key = (await cache.keys()).find(({ url }) => url.startsWith(`${new URL(name, location)}?`));
  const kept = await cache.match(key);
  await cache.put(key, new Response((await kept.text()).replaceAll("1", "7"), { headers: kept.headers }));
}"""
READ = "async (name) => (await fetch(`/${name}`)).text()"


def test_a_file_that_another_page_rewrote_heals(phone, own, built):
    """What is kept is compared with its digest before Ready is said; what is wrong is fetched again."""
    phone.install().close()
    page = phone.open("404.html")
    page.evaluate(SPOIL, "/pressure/page.json")
    sheet = (built / "pressure/page.json").read_text(encoding="utf-8")
    assert page.evaluate(READ, "pressure/page.json") != sheet
    session = phone.context.new_cdp_session(page)
    session.send("ServiceWorker.enable")
    session.send("ServiceWorker.stopAllWorkers")  # as a browser does after a while; another life of it compares anew
    page.close()
    page = phone.open("all/")
    is_ready(page)
    assert page.evaluate(READ, "pressure/page.json") == sheet


def test_a_language_comes_when_it_is_chosen(phone, own, built):
    """English is carried alone; French is fetched whole once it is chosen, or not at all, and then opens with no signal."""
    page = phone.install()
    (own.dist / "packs").rename(own.dist / "taken")
    (own.dist / "fr/cautions/index.html").rename(own.dist / "aside")
    page.get_by_role("radio", name="Français").tap()
    expect(page.locator("#stays")).to_have_text(f"{START['stays']} {START['cause']['missing'].format(file='fr/cautions/index.html')}", timeout=30000)
    expect(page.locator("h1")).to_have_text(SITE["all"]["title"])
    is_ready(page)  # in English, as it was
    (own.dist / "aside").rename(own.dist / "fr/cautions/index.html")
    (own.dist / "taken").rename(own.dist / "packs")
    page.get_by_role("radio", name="Français").tap()
    expect(page.locator("h1")).to_have_text(FRENCH["all"]["title"], timeout=60000)
    is_ready(page)
    assert carried(built, "fr") < carried(built) + 20
    page.close()
    phone.lose_signal()
    for address, words in (("fr/pressure/", FRENCH), ("pressure/", FRENCH)):  # the phone goes by what was chosen
        page = phone.open(address)
        expect(page.locator("h1")).to_have_text(words["pressure"]["title"])
        page.close()
    own.start()


def test_a_page_whose_own_script_was_lost_ends_ready_unattended(phone, own, built):
    """Where no script of a page ran, it has the site fetched all the same, asks again for a worker that did not come either, and draws itself once it is here."""
    (own.dist / "sw.js").unlink()
    phone.context.route("**/js/pages/all.js", lambda route: route.abort(), times=1)
    page = phone.open("all/")
    expect(page.locator("#down")).to_be_visible()
    shutil.copy(built / "sw.js", own.dist / "sw.js")
    is_ready(page)
    expect(page.locator("#down")).to_be_hidden()
