"""An install that is cut off, by its link, its host or its worker, says how far it is and ends Ready untouched; where nothing can be kept, the page says that and computes."""
import contextlib
import re
import shutil
import threading

import pytest
from playwright.sync_api import expect

from tests.phone.handset import Handset, Host, carried, ready, until
from tests.phone.test_install import START, is_ready, readiness
from tests.slow_host import Link, slow_server

# Ten times as fast: a worker tries for half a minute before it says that the signal is lost.
HASTY = "const later = self.setTimeout; self.setTimeout = (act, ms, ...more) => later(act, ms / 10, ...more);\n"
# a try of the page to reach the worker is noted once the page has heard that it failed
NOTING = """() => {
  const container = navigator.serviceWorker, register = container.register.bind(container);
  container.register = (...given) => {
    const asked = register(...given);
    asked.catch(() => setTimeout(() => { window.refused = true; }));
    return asked;
  };
}"""
COUNT = re.compile(r"(\d+) of \d+ files")


class Linked(Host):
    """A host over a link."""

    def __init__(self, dist, link):
        self.link = link
        super().__init__(dist)

    def start(self):
        self._connections = []
        self._server = slow_server(self.dist, self.link, self.port)
        self.port = self._server.server_port
        self._serving = threading.Thread(target=self._server.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True)
        self._serving.start()


@pytest.fixture
def link():
    return Link(delay_s=0.02, seed=7)


@pytest.fixture
def phone(browser, built, tmp_path, link):
    """A phone whose host has no packs, so that files come one by one, and a worker that waits a tenth as long."""
    dist = shutil.copytree(built, tmp_path / "dist", ignore=shutil.ignore_patterns("packs"))
    (dist / "sw.js").write_text(HASTY + (dist / "sw.js").read_text(encoding="utf-8"), encoding="utf-8")
    host = Linked(dist, link)
    handset = Handset(browser, host, worker=True)
    handset.expected += ["Failed to load", "ERR_", "404", "fetching the script"]
    yield handset
    handset.close()
    with contextlib.suppress(OSError):
        host.stop()


def under_way(phone, link, files=20):
    """All pages while files come, some of them there."""
    page = phone.open("all/")
    link.rate = 200_000
    expect(readiness(page)).to_have_text(re.compile(rf"\b([{files // 10}-9]\d|1\d\d) of \d+ files"), timeout=60000)
    return page


def count(page):
    return int(COUNT.search(readiness(page).inner_text())[1])


def test_a_poor_link_ends_ready_unattended(phone, link):
    """One request in five is lost: nobody touches the phone, and it ends Ready."""
    page = phone.open("all/")
    expect(readiness(page)).to_contain_text("files", timeout=30000)
    link.loss = 0.2  # the page itself came
    is_ready(page, timeout=120000)
    assert link.lost > 0


def test_the_host_gone_half_way(phone, link, built):
    """The host and every way to it go in the middle: what came is counted and the cause said, nowhere Ready; once both are back it ends Ready untouched."""
    page = under_way(phone, link)
    page.evaluate(NOTING)
    phone.lose_signal()
    expect(readiness(page)).to_contain_text(START["cause"]["lost"], timeout=30000)
    came = count(page)
    assert 20 <= came < carried(built)
    until(page, "window.refused")
    expect(readiness(page)).to_contain_text(START["cause"]["lost"])
    expect(readiness(page)).to_have_attribute("data-state", "partly")
    assert count(page) == came
    link.rate = 0
    phone.host.start()
    phone.context.set_offline(False)
    is_ready(page)
    expect(readiness(page)).to_have_text(ready(carried(built)))


def test_the_worker_killed_half_way(phone, link, built):
    """The browser ends the worker in the middle of its install: the page begins it again, goes on from what came, and ends Ready."""
    page = under_way(phone, link)
    session = phone.context.new_cdp_session(page)
    session.send("ServiceWorker.enable")
    session.send("ServiceWorker.stopAllWorkers")
    came = count(page)
    link.rate = 0
    is_ready(page)
    assert came >= 20
    expect(readiness(page)).to_have_text(ready(carried(built)))


PLACE = "if (navigator.serviceWorker) ServiceWorkerContainer.prototype.register = "  # a page without an address has none
REFUSED = PLACE + "() => Promise.reject(new DOMException('not here', '{name}'));"
NOWHERE = {  # how a window that keeps nothing turns a worker down, and what is said; from memory of Firefox's and Safari's private windows and of views inside other apps
    "insecure to it": (REFUSED.format(name="SecurityError"), "private"),
    "not supported in it": (REFUSED.format(name="NotSupportedError"), "private"),
    "without an error": (PLACE + "async () => undefined;", "private"),
    "no workers": ("delete Navigator.prototype.serviceWorker;", "unable"),
}


@pytest.mark.parametrize("how", NOWHERE)
def test_a_window_that_keeps_nothing(take, how):
    """It says so on All pages and on the start page, never Ready, and works out a pressure all the same."""
    shim, why = NOWHERE[how]
    handset = take(worker=True)
    handset.context.add_init_script(shim)
    page = handset.open("all/")
    expect(readiness(page)).to_have_text(START[why])
    expect(readiness(page)).to_have_attribute("data-state", "no")
    page.goto(handset.host.origin)
    expect(readiness(page)).to_have_text(START[f"short_{why}"])
    page.goto(f"{handset.host.origin}pressure/")
    expect(page.locator("output")).to_contain_text("170")  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75


@pytest.mark.parametrize(("answer", "sentence"), [("true", "kept"), ("false", "unpromised")])
def test_whether_the_browser_promises_to_keep_entries(handset, answer, sentence):
    """All pages says which it is."""
    handset.context.add_init_script(f"if (navigator.storage) StorageManager.prototype.persist = async () => {answer};")
    expect(handset.open("all/").locator("#keeping")).to_have_text(START[sentence])
