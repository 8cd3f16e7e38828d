"""The data of pages, each part said once: what several pages bring lies in a file they share, and their page.json only names it.

Written after the pages, in each language's folder: `<topic>/shared.json` has what pages of one topic share, `shared.json` at the top what pages of
more than one do, `orders.json` the orders of hazards. A part is known by the digest of its content, so that no page takes another version's.
static/js/shared/site.js puts the page's data together again, key for key as the route wrote it.
"""
import collections
import hashlib
import json
import re

from site_src.content import data as texts
from site_src.content import languages
from site_src.routes import JSON

TOPICS = {"foam": "water", "practice": "why", "all": ""}  # pages whose folder is not their topic's
SMALLEST = 250  # characters: less than that is said again, since its name has its price too
PRELOAD = '<link rel="preload" as="fetch" crossorigin href="{}">'
ASKS = re.compile(PRELOAD.format(r"((?:\.\./)*page\.json)"))


def text(content):
    return json.dumps(content, **JSON)


def tables(data):
    """The parts of a page's data by their path, (key,)."""
    return [((key,), value) for key, value in data.items()]


def rows(data):
    """The parts of those parts that are tables, by their path, (key, name)."""
    return [((key, name), row) for key, table in data.items() if isinstance(table, dict) for name, row in table.items()]


def users(pages, parts):
    """Which pages have a part, by its key and wording."""
    found = collections.defaultdict(set)
    for page, data in pages.items():
        for path, value in parts(data):
            found[path[0], text(value)].add(page)
    return found


def home(pages, path):
    """The file, below a language's folder, of a part that these pages share."""
    topics = {TOPICS.get(folder := page.rpartition("/")[0].split("/")[0], folder) for page in pages}
    if path[0] == "orders":
        return "orders.json"
    return f"{topics.pop()}/shared.json" if len(topics) == 1 and "" not in topics else "shared.json"


def share(dist, language):
    """Share the data of all pages of one language; what a page's script then asks for is named in the page beside its page.json.

    Rows that more pages have than their whole table first, then what is left of tables.
    """
    top = dist / languages.folder(language)
    pages = {path.relative_to(top).as_posix(): json.loads(path.read_text(encoding="utf-8")) for path in sorted(top.glob("**/page.json"))
             if not any(path.is_relative_to(dist / other) for other in texts.languages() if other != language)}
    files, named = collections.defaultdict(dict), {page: collections.defaultdict(dict) for page in pages}

    def move(page, path, value, used):
        name, file = hashlib.sha256(text(value).encode()).hexdigest()[:8], home(used, path)
        files[file][name] = value
        named[page][steps(page) + file]["/".join(path)] = name
        del (pages[page] if len(path) == 1 else pages[page][path[0]])[path[-1]]

    of_table, of_row = users(pages, tables), users(pages, rows)
    for page, data in pages.items():
        of_whole = {key: of_table[key, text(table)] for key, table in data.items()}
        wider = [(path, row) for path, row in rows(data) if of_row[path[0], text(row)] > of_whole[path[0]]]
        for path, row in wider:
            if len(text(row)) >= SMALLEST:
                move(page, path, row, of_row[path[0], text(row)])
    of_table = users(pages, tables)  # of what is left of them
    for page, data in pages.items():
        for path, value in tables(data):
            if len(text(value)) >= SMALLEST and len(of_table[path[0], text(value)]) > 1:
                move(page, path, value, of_table[path[0], text(value)])
    for page, data in pages.items():
        if named[page]:
            assert "shared" not in data, page
            write(top / page, {**data, "shared": named[page]})
    for file, content in files.items():
        write(top / file, content)
    preload(top, named)


def steps(page):
    return "../" * page.count("/")


def write(path, content):
    path.write_text(text(content), encoding="utf-8", newline="\n")


def preload(top, named):
    """Every page that asks at once for data asks for the parts of it that are shared too."""
    for page in sorted(top.glob("**/index.html")):
        asked = ASKS.search(html := page.read_text(encoding="utf-8")) if languages.FLEET not in page.relative_to(top).as_posix() else None
        data = asked and (page.parent / asked[1]).resolve().relative_to(top.resolve()).as_posix()
        if named.get(data):
            up = asked[1].removesuffix("page.json")
            asks = "\n".join(PRELOAD.format(up + file) for file in sorted(named[data]))
            page.write_text(html.replace(asked[0], f"{asked[0]}\n{asks}"), encoding="utf-8", newline="\n")
