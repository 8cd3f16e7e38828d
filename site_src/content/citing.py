"""The bibliography, and the sources of the data that name it: "{nfpa_291}, chapter 4"."""
import functools
import pathlib
import re
import tomllib

FILE = pathlib.Path(__file__).parent.parent / "data" / "bibliography.toml"
ID = re.compile(r"\{([a-z0-9_]+)\}")
SEEN = ("address", "seen")
SECOND_HAND = ("seen_in", "reports")
SAID = ("source", "modern_source")


@functools.cache
def bibliography():
    """Whatever a source names, by id: title, publisher, year and where it was seen."""
    return tomllib.loads(FILE.read_text(encoding="utf-8"))


def ids(source):
    """The ids that a source names: text with ids in braces, or a list of ids."""
    return ID.findall(source) if isinstance(source, str) else source


def name(id):
    """What a page calls one of them: a standard goes without its year, which its source says where that counts."""
    row = bibliography()[id]
    return row["title"] if "seen_in" in row or "year" not in row else f"{row['title']} ({row['year']})"


def written_out(source):
    """A source as a person reads it; a name within a sentence starts as the words around it do."""
    def put(found):
        text, before = name(found[1]), source[:found.start()].rstrip()
        starts = not before or before[-1] == "." or text[1].isupper()
        return text if starts else text[0].lower() + text[1:]
    return ID.sub(put, source)


def listed():
    """The bibliography as its page has it: what was seen itself, then what was not, each with how and where; what has no page is left out."""
    rows = [_listed(id, row) for id, row in bibliography().items() if "publisher" in row]
    return {part: [row for row in rows if row["seen"] in ways] for part, ways in (("first_hand", SEEN), ("second_hand", SECOND_HAND))}


def _listed(id, row):
    way = next(key for key in (*SEEN, *SECOND_HAND) if key in row)
    said = row["publisher"].lower() in row["title"].lower()
    return {"name": name(id) if said else f"{name(id)}. {row['publisher']}", "seen": way, "where": row[way] if way != "seen" else ""}


def is_second_hand(source):
    """Whether all that a source names speaks for something that was not seen."""
    rows = [bibliography()[id] for id in ids(source)]
    return bool(rows) and all(any(key in row for key in SECOND_HAND) for row in rows)


def cited(content):
    """Plain data of a file with its sources written out; what is published, but seen second-hand alone, has that for its basis."""
    if isinstance(content, list):
        return [cited(value) for value in content]
    if not isinstance(content, dict):
        return content
    told = {key: written_out(value) if key in SAID and isinstance(value, str) else cited(value) for key, value in content.items()}
    if told.get("basis") == "published" and is_second_hand(content.get("source", ())):
        told["basis"] = "second-hand"
    return told
