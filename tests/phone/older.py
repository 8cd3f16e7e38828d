"""A page's styles and scripts as the oldest browser of README's promise takes them: what it does not know it drops."""
import re

# of a style sheet, with the first to know it; by the compatibility tables of each name
BLOCKS = re.compile(r"@container|@media[^{]*scripting|@supports(?! *not)[^{]*(?:[ds]vh|field-sizing|:has)")  # Chromium 105, 120, 108 and 123
UNKNOWN = re.compile(r"@supports *not selector\(:has")
SELECTORS = re.compile(r":has\(|::details-content")  # Chromium 105, Firefox 121; 131
VALUES = re.compile(r"\d(?:[dsl]vh|cq[iw])\b|^container-type|^text-wrap|^field-sizing")  # Chromium 108 and 105, 114, 123
# of scripts: what is deleted is not there
SCRIPT = """delete Element.prototype.checkVisibility; // Chromium 105, Firefox 106, Safari 17.4
delete globalThis.CompressionStream; delete globalThis.DecompressionStream; // Firefox 113, Safari 16.4
delete Navigator.prototype.wakeLock; // Safari 16.4, Firefox 126
delete globalThis.BarcodeDetector;
delete Navigator.prototype.share; delete Navigator.prototype.canShare; // never in Firefox on a desk
delete globalThis.OffscreenCanvas; // Safari 16.4
"""


def styles(text):
    """A built style sheet without what such a browser drops: blocks, whole rules by their selector, declarations by their value."""
    parts, at = [], 0
    while at < len(text):
        head = re.compile(r"[^{};]*").match(text, at)[0]
        at += len(head)
        if text[at:at + 1] != "{":
            parts.append(head + text[at:at + 1])
            at += 1
            continue
        end = closing(text, at)
        body, at = text[at + 1:end], end + 1
        if UNKNOWN.match(head):
            head = "@media all"
        if BLOCKS.match(head) or SELECTORS.search(head):
            continue
        if head.startswith(("@media", "@supports")):
            parts.append(f"{head}{{{styles(body)}}}")
        elif head.startswith("@"):
            parts.append(f"{head}{{{body}}}")
        else:
            parts.append(f"{head}{{{';'.join(each for each in body.split(';') if not VALUES.search(each))}}}")
    return "".join(parts)


def closing(text, at):
    """Where the brace that opens at a place is closed."""
    depth = 0
    for brace in re.compile("[{}]").finditer(text, at):
        depth += 1 if brace[0] == "{" else -1
        if depth == 0:
            return brace.start()
    raise ValueError(text[at:at + 80])


def age(handset):
    """Let a phone's browser be such a one from its next page on."""
    handset.context.add_init_script(SCRIPT)
    handset.context.route("**/static/css/*.css", lambda route: route.fulfill(body=styles(route.fetch().text()), content_type="text/css"))
    return handset
