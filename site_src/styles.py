"""The styles of all pages in two files: what the pages opened first use, and the rest, which the others load after it. A page's own
sheets apply to it alone, by the names in its root element's data-css.

Sources stay a file a topic. Each is scoped by `:where([data-css~=name])`, which adds nothing to its weight, and put in the order below, general before
special; the bundler lowers that nesting for older browsers and shortens the whole. Apart stay night.css, which a choice turns on, and what sets paper.
"""
import functools
import pathlib
import re
import tempfile

from site_src import bundle

CSS = bundle.STATIC / "css"
ALWAYS = ("tokens", "base")
FIRST = ("answer", "controls", "start", "line", "pressure", "term")  # of start and Pressure
ORDER = (
    *FIRST, "rig", "picture", "reckon", "power", "bench", "drill", "table", "service", "run", "quick", "years", "service_sheet", "bay",
    "diagnose", "step", "short", "help", "order", "why", "evidence", "log", "checkoff", "recovery", "cards", "sheet",
)
ROOT = re.compile(r"(?m)^(\s*)html(?=[\s:.\[{])")
OLDER = re.compile(r"[^{}]*:-(?:webkit|moz)-any\([^{}]*\{[^{}]*\}")  # what :is was called before there was a :where
FRAMES = re.compile(r"(?m)^@keyframes .*$")


def source(name):
    return (CSS / f"{name}.css").read_text(encoding="utf-8")


def of_root(text):
    """A sheet whose rules of the root element are of the element that it is scoped by."""
    return ROOT.sub(r"\1&:is(html)", text)


@functools.cache
def sheet(is_first):
    """One file's bytes; print.css is in each last, and there outweighs what sets colors by night."""
    scoped = [(name, source(name)) for name in ORDER if (name in FIRST) == is_first]
    together = [
        *(map(source, ALWAYS) if is_first else ()),
        *(frames for _, text in scoped for frames in FRAMES.findall(text)),
        *(f':where([data-css~="{name}"]) {{\n{of_root(FRAMES.sub("", text))}\n}}' for name, text in scoped),
        f"@media print {{\n{source('print').replace(':root', ':root:root')}\n}}",
    ]
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "site.css").write_text("\n".join(together), encoding="utf-8", newline="\n")
        bundle.build(folder, "--external=*.woff2", "--outdir=out", "site.css")
        return OLDER.sub("", (folder / "out/site.css").read_text(encoding="utf-8")).encode()


def parts():
    """The sources that are in the site as part of those files alone: paths below static/."""
    return [f"css/{name}.css" for name in (*ALWAYS, *ORDER, "print")]
