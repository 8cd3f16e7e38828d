"""A server of the built site on this machine, with the headers that README asks of a host."""
import functools
import http.server
import pathlib
import time

from site_src.publish.hosting import HEADERS
from site_src.publish.release import TYPES

HERE = {name: value for name, value in HEADERS.items() if name != "Strict-Transport-Security"}  # this machine has no certificate
SWAP_S = 2  # a build puts its site in place of the last one: a request that falls between the two waits, so long at most


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves dist with the right types, whatever this machine's tables say."""

    extensions_map = TYPES

    def log_message(self, *args):
        pass

    def send_head(self):
        until = time.monotonic() + SWAP_S
        while not pathlib.Path(self.directory).exists() and time.monotonic() < until:
            time.sleep(0.01)
        return super().send_head()

    def end_headers(self):
        for name, value in HERE.items():
            self.send_header(name, value)
        super().end_headers()

    def send_error(self, code, message=None, explain=None):
        page = pathlib.Path(self.directory, "404.html")
        if code != 404 or not page.exists():
            return super().send_error(code, message, explain)
        content = page.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", TYPES[".html"])
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(content)


def server(dist, port=8000):
    """A server of the built site on this machine; port 0 takes any free one."""
    return http.server.ThreadingHTTPServer(("127.0.0.1", port), functools.partial(Handler, directory=str(dist)))
