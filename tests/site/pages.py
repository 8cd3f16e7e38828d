"""The built pages as a test reads them: addresses, tags, ids and tables."""
import html.parser
import json

from site_src.app import create_app
from site_src.content import data, fleet, reckoners, units
from site_src.routes import checks, help, service, tables


def page_data(path):
    """The data of a page by its page.json, with what it shares with others put back in its place."""
    content = json.loads(path.read_text(encoding="utf-8"))
    parts = [(place.split("/", 1), json.loads((path.parent / file).read_text(encoding="utf-8"))[name])
             for file, named in content.pop("shared", {}).items() for place, name in named.items()]
    for (key, *row), value in sorted(parts, key=lambda part: len(part[0])):  # a table before its rows
        (content[key] if row else content)[row[0] if row else key] = value
    return content


def cards():
    """The names of the shift cards."""
    return [card["id"] for card in data.cards()]


def kinds():
    """The pages' addresses below the site's root, as the routes give them: those of each route together."""
    return [sorted(expanded(rule.rule.lstrip("/"))) for rule in create_app().url_map.iter_rules() if rule.rule.endswith("/")]


def addresses():
    """Every page by its address below the site's root."""
    return sorted(address for alike in kinds() for address in alike)


# what stands for each part of an address that a route leaves open
PARTS = {
    "card": cards(),
    "system": [system["id"] for system in units.systems()],
    "page": list(tables.PAGES),
    "source": reckoners.WATER,
    "name": sorted(fleet.load()),
    "part": list(service.PARTS),
    "work": list(checks.PARTS),
    "topic": list(help.TOPICS),
}


def expanded(address):
    """An address with its open parts filled in, in every way."""
    for part, values in PARTS.items():
        if f"<{part}>" in address:
            return [full for value in values for full in expanded(address.replace(f"<{part}>", value))]
    return [address]


class Page(html.parser.HTMLParser):
    """One page: `tags` as (name, attributes), `ids`, `tables` as caption and rows of text, `inline` script or style."""

    def __init__(self, path):
        super().__init__()
        self.tags, self.ids, self.tables, self.inline = [], set(), [], []
        self._within = []
        self.feed(path.read_text(encoding="utf-8"))

    def handle_starttag(self, tag, attrs):
        attributes = dict(attrs)
        self.tags.append((tag, attributes))
        self._within.append(tag)
        if attributes.get("id"):
            self.ids.add(attributes["id"])
        if tag == "table":
            self.tables.append({"caption": "", "rows": []})
        if tag == "tr":
            self.tables[-1]["rows"].append([])
        if tag in ("td", "th"):
            self.tables[-1]["rows"][-1].append("")
        if tag == "br":
            self.handle_data(" ")

    def handle_endtag(self, tag):
        while tag in self._within and self._within.pop() != tag:
            pass

    def handle_data(self, text):
        if self._within and self._within[-1] in ("script", "style") and text.strip():
            self.inline.append(text)
        if "caption" in self._within:
            self.tables[-1]["caption"] += text
        if "td" in self._within or "th" in self._within:
            self.tables[-1]["rows"][-1][-1] += text

    def row(self, caption, first):
        """The cells of the row that begins with this word, in the table of this caption."""
        table = [table for table in self.tables if table["caption"] == caption][0]
        return [row for row in table["rows"] if row[0].split()[0] == first][0]
