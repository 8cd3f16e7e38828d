"""A host that can be stopped, and a phone that notes what goes wrong on it."""
import contextlib
import re
import urllib.parse
import socket
import threading

from playwright.sync_api import Error

import build
from site_src.content import data
from tests.browser import PHONE
from tests.phone import store, words


class Host:
    """Serves a built site from one port, from start to stop and again."""

    def __init__(self, dist):
        self.dist = dist
        self.port = 0
        self.start()

    def start(self):
        self._connections = []
        self._server = build.server(self.dist, self.port)
        self.port = self._server.server_port
        accept = self._server.get_request

        def noted():
            accepted = accept()
            self._connections.append(accepted[0])
            return accepted

        self._server.get_request = noted
        self._serving = threading.Thread(target=self._server.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True)
        self._serving.start()

    def stop(self):
        """Close the port and every connection a browser may hold open for later."""
        self._server.shutdown()
        self._server.server_close()
        self._serving.join()
        for connection in self._connections:
            with contextlib.suppress(OSError):  # it may be closed already
                connection.shutdown(socket.SHUT_RDWR)

    @property
    def origin(self):
        return f"http://127.0.0.1:{self.port}/"


class Handset:
    """One phone: pages are opened by address; console errors, page errors, foreign requests and all that is sent are noted.

    worker: whether the site may install itself; without it pages load sooner
    """

    def __init__(self, browser, host, worker=False, **settings):
        self.host = host
        self.troubles, self.requests, self.sent, self.expected = [], [], [], []
        self.keeps_anything = False  # set by a test that puts something else into the database
        self.context = browser.new_context(**{
            **PHONE, "locale": "en-US", "reduced_motion": "reduce", "service_workers": "allow" if worker else "block", **settings,
        })
        self.context.set_default_timeout(10000)
        self.context.on("request", self._ask)
        self.context.on("page", lambda page: page.on("websocket", lambda socket: self.sent.append(socket.url)))
        self.context.on("weberror", lambda error: self.troubles.append(f"page error: {error.error}"))
        self.context.on("console", self._hear)

    def _ask(self, request):
        self.requests.append(request.url)
        if request.method != "GET" or request.post_data_buffer:
            self.sent.append(f"{request.method} {request.url}")

    def _hear(self, message):
        if message.type == "error" and not any(re.search(pattern, message.text) for pattern in self.expected):
            self.troubles.append(f"console: {message.text} {message.location['url']}")

    def open(self, address=""):
        """A new page at an address of the site."""
        page = self.context.new_page()
        page.goto(self.host.origin + address)
        return page

    def install(self):
        """Open the page that counts, and wait until it has counted every file; returns that page."""
        page = self.open("all/")
        page.locator("#readiness[data-state=yes]").wait_for(timeout=60000)  # on a busy machine it takes its time
        return page

    def lose_signal(self):
        """No network on the phone, and no host to reach either."""
        self.host.stop()
        self.context.set_offline(True)

    def foreign(self):
        """Requests for anything that is not the site's own."""
        return [url for url in self.requests if not url.startswith(self.host.origin)]

    def close(self):
        """Put the phone away; fails where something went wrong on it, or it kept what is not of its shape."""
        drifts = [] if self.keeps_anything else store.drifts_on(self.context, self.host.origin)
        self.context.close()
        assert not drifts, drifts
        assert not self.troubles, self.troubles
        assert not self.foreign(), self.foreign()
        assert not self.sent, self.sent


@contextlib.contextmanager
def phones(browser, host):
    """A way to take phones, take(**settings), that puts all of them away at the end."""
    taken = []

    def take(**settings):
        taken.append(Handset(browser, host, **settings))
        return taken[-1]

    yield take
    for handset in taken:
        handset.close()


def until(page, condition):
    """Wait until an expression of a page's script is true. wait_for_function asks again by eval, which the page's policy forbids."""
    page.evaluate(f"""() => new Promise((done, fail) => {{
        const last = performance.now() + 10000;
        const look = () => ({condition}) ? done() : performance.now() > last ? fail(new Error("not in 10 s")) : setTimeout(look, 20);
        look();
    }})""")


def read_in(page, system):
    """Choose the units on All pages, and come back to the page."""
    here = urllib.parse.urlsplit(page.url)
    page.goto(urllib.parse.urljoin(page.url, "/fr/all/" if here.path.startswith("/fr/") else "/all/"))
    page.locator("#units input:checked").wait_for(state="attached")  # its script marks what holds now, and would undo an earlier touch
    page.locator(f"#units input[value={system}]").check(force=True)
    page.goto(here.geturl())


def kill(page):
    """End a page without a farewell, as a phone does that runs out of memory or of battery."""
    with contextlib.suppress(Error):
        page.goto("chrome://crash")
    page.close()


def carried(built, language="en"):
    """How many files of the built site a phone of a language holds: all but the worker itself, the fleet's pages, what is for the host, and other languages."""
    others = {other for other in data.languages() if other != "en"} - {language}
    names = [path.relative_to(built) for path in built.rglob("*") if path.is_file()]
    own = [name for name in names if name.name not in ("sw.js", "_headers") and not {"rigs", "screens", "packs", *others} & set(name.parts)]
    return sum(language == "en" or name.parts[0] == language or not (built / language / name).exists() for name in own)


def ready(count):
    """The sentence of All pages once all files are held."""
    return words.said("start", "ready", want=count)
