"""A host as a phone meets it: it compresses, is far away, and shares a narrow link among all requests; some of them are lost."""
import functools
import http.server
import pathlib
import random
import threading
import time

from site_src.publish.hosting import COMPRESSED, LEAST_BYTES, PACKERS
from site_src.publish.serving import Handler

PIECE = 1400  # bytes, about what one packet carries


class Link:
    """One link for all: `rate` in bytes a second (0: no limit), `delay_s` for the way there and back, `loss` the share of requests that are lost."""

    def __init__(self, rate=0, delay_s=0, loss=0, seed=1):
        self.rate, self.delay_s, self.loss = rate, delay_s, loss
        self.random, self.lock, self.free_at = random.Random(seed), threading.Lock(), 0
        self.requests = self.bytes = self.lost = 0

    def take(self, count):
        """Wait until so many bytes have gone through."""
        with self.lock:
            self.bytes += count
            now = time.monotonic()
            self.free_at = max(self.free_at, now) + (count / self.rate if self.rate else 0)
            wait = self.free_at - now
        if wait > 0:
            time.sleep(wait)

    def is_lost(self):
        with self.lock:
            self.requests += 1
            lost = self.random.random() < self.loss
            self.lost += lost
        return lost


ENDINGS = {"br": ".br", "gzip": ".gz"}  # by what a browser takes


@functools.cache
def packed(path, kind, _changed_ns):
    content = pathlib.Path(path).read_bytes()
    return PACKERS[ENDINGS[kind]](content) if path.endswith(COMPRESSED) and len(content) >= LEAST_BYTES else None


class SlowHandler(Handler):
    """Handler, over a link."""

    protocol_version = "HTTP/1.1"
    link = None
    kind = "gzip"  # that it compresses by

    def do_GET(self):
        if self.link.is_lost():
            self.close_connection = True
            return
        time.sleep(self.link.delay_s)
        super().do_GET()

    def send_head(self):
        path = pathlib.Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() and self.path.partition("?")[0].endswith("/") else path
        body = packed(str(path), self.kind, path.stat().st_mtime_ns) if path.is_file() and self.kind in self.headers.get("Accept-Encoding", "") else None
        if body is None:
            return super().send_head()
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Encoding", self.kind)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.copyfile(_Bytes(body), self.wfile)
        return None

    def copyfile(self, source, outputfile):
        while piece := source.read(PIECE):
            self.link.take(len(piece))
            outputfile.write(piece)


class _Bytes:
    def __init__(self, content):
        self.content, self.at = content, 0

    def read(self, count):
        piece = self.content[self.at:self.at + count]
        self.at += count
        return piece


def slow_server(dist, link, port=0, kind="gzip"):
    """A server of a built site over a link, which compresses by gzip or by br."""
    handler = type("Linked", (SlowHandler,), {"link": link, "kind": kind})
    server = http.server.ThreadingHTTPServer(("127.0.0.1", port), functools.partial(handler, directory=str(dist)))
    server.daemon_threads = True
    return server
