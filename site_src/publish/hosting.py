"""What a host is to send beside the files: README's table, as the server of this machine, `_headers` and `--check` use it."""
import gzip

import brotli

from site_src.publish.release import TYPES

HEADERS = {
    "Strict-Transport-Security": "max-age=31536000",
    "Content-Security-Policy": "frame-ancestors 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Permissions-Policy": "geolocation=(), microphone=(), camera=(self), screen-wake-lock=(self)",
    "Cache-Control": "no-cache",
}
COMPRESSED = (".html", ".css", ".js", ".mjs", ".json", ".webmanifest", ".wasm", ".svg", ".bin")
LEAST_BYTES = 500  # of a file that is worth compressing
PACKERS = {  # by the ending of the file beside
    ".gz": lambda content: gzip.compress(content, 9, mtime=0),
    ".br": lambda content: brotli.compress(content, quality=11),
}


def type_of(name):
    """The Content-Type of a file by its ending."""
    return TYPES.get(f".{name.rpartition('.')[2]}", "application/octet-stream")


def write_headers(dist, site_path):
    """Write `_headers`, which several static hosts read: headers of every address, types of the endings hosts get wrong."""
    lines = [f"{site_path}*", *(f"  {name}: {value}" for name, value in HEADERS.items())]
    for ending in (".js", ".mjs", ".wasm", ".webmanifest"):
        lines += [f"{site_path}*{ending}", f"  Content-Type: {TYPES[ending]}"]
    (dist / "_headers").write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")


def compress(dist, kinds=tuple(PACKERS)):
    """Write beside each file that gains by it the same file as gzip or Brotli or both, for hosts that send such files as they lie."""
    for path in sorted(dist.rglob("*")):
        if path.suffix in COMPRESSED and path.stat().st_size >= LEAST_BYTES:
            content = path.read_bytes()
            for kind in kinds:
                path.with_name(f"{path.name}{kind}").write_bytes(PACKERS[kind](content))
