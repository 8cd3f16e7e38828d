"""What the built site's scripts may not use, and its styles not alone, so that they run on browsers of autumn 2022: Chromium 98, Firefox 104, Safari 16.

A newer grammar ends a whole file on an older browser, a newer function the act that calls it. Years by the compatibility tables of each name, from memory.
"""
import re

import pytest

NEWER = {
    "lookbehind in an expression, Safari 16.4": r"\(\?<[=!]",
    "sorted copies, 2023": r"\.to(Sorted|Reversed|Spliced)\(",
    "groups, 2024": r"(Object|Map)\.groupBy\(",
    "a promise from outside, 2024": r"Promise\.withResolvers",
    "sets of sets, 2024": r"\.(isSubsetOf|isSupersetOf|symmetricDifference)\(",
    "signals joined, 2023": r"AbortSignal\.any\(",
    "an array from what comes late, 2024": r"Array\.fromAsync",
    "idle time, never in Safari": r"requestIdleCallback\(",
    "an expression of sets, 2023": r"[(,=:!&|?{};]/(?:[^/\\\n]|\\.)+/[dgimsuy]*v[dgimsuy]*[.,;)]",
    "a popover, 2024": r"\.showPopover\(",
    "a picture's own way up by name, Firefox 111, Chromium 112": r"imageOrientation",
    "whether it is seen, unless it can be asked, Safari 17.4": r"\.checkVisibility\(",
}


@pytest.mark.parametrize("what", NEWER)
def test_not_used(built, what):
    """No script that is sent uses it, of ours or by others."""
    scripts = {path.relative_to(built).as_posix(): path.read_text(encoding="utf-8") for path in built.rglob("*") if path.suffix in (".js", ".mjs")}
    assert len(scripts) > 10
    assert [name for name, text in scripts.items() if re.search(NEWER[what], text)] == []


@pytest.mark.parametrize(("what", "text"), [("lookbehind in an expression, Safari 16.4", "a.split(/(?<=[.?!]) /)"), ("sorted copies, 2023", "rows.toSorted()")])
def test_it_is_seen(what, text):
    assert re.search(NEWER[what], text)


def test_heights_of_the_screen_have_their_elder(built):
    """A height that goes by a browser's bars, Chromium 108, is there for browsers that know it alone: one that does not goes by vh."""
    sheets = [path.read_text(encoding="utf-8") for path in built.rglob("*.css")]
    known = re.compile(r"@supports ?\(height: ?100dvh\) ?\{:root\{--[\w-]+:100dvh;--[\w-]+:100svh\}\}")
    assert [text for text in sheets if re.search(r"\d[dsl]v[hw]\b", known.sub("", text))] == []
    assert sum(len(known.findall(text)) for text in sheets) == 1
    assert any("--screen:100vh;" in text for text in sheets)
