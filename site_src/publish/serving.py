"""A server of the built site on this machine, with the headers that README asks of a host."""
import functools
import http.server
import pathlib
import time

from site_src.publish.release import TYPES

HEADERS = {
    "Content-Security-Policy": "frame-ancestors 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Permissions-Policy": "geolocation=(), microphone=(), camera=(), screen-wake-lock=(self)",
    "Cache-Control": "no-cache",
}
SWAP_S = 2  # a build moves the last site away and its own in; a request between the two waits this long at most


class Handler(http.server.SimpleHTTPRequestHandler):
    """Serves dist with the right types, whatever this machine's tables say."""

    extensions_map = TYPES

    def log_message(self, *args):
        pass

    def end_headers(self):
        self.send_header("Cache-Control", "no-cache")
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
