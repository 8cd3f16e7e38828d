"""The data files and words of the site, read once."""
import contextvars
import copy
import functools
import pathlib
import re
import tomllib

from site_src.content import citing

FOLDER = pathlib.Path(__file__).parent.parent / "data"


@functools.cache
def load(name):
    """One data file as plain data.

    name: path below site_src/data without its ending, such as "hoses"

    Raises FileNotFoundError where there is none.
    """
    with open(FOLDER / f"{name}.toml", "rb") as file:
        content = tomllib.load(file)
    if not name.startswith("words/"):
        return citing.cited(content)
    return _bound(content) if name.startswith(_binding()) else content


# a number, or what stands for one, and the unit or percent sign after it
PAIR = re.compile(r"(?<=[\d}]) (?=(?:%|psi|kPa|bar|gpm|L/min|L|m|mm|km|km/h|po|pi|s|h|min|tr/min|hp|kW|N|°C|°F|gal)(?![\w/'’])|\{u_)")


def _binding():
    """Folders of the words of languages that set a number and its unit on one line."""
    with open(FOLDER / "languages.toml", "rb") as file:
        return tuple(f"words/{row['id']}/" for row in tomllib.load(file)["language"] if row.get("binds"))


def _bound(content):
    if isinstance(content, dict):
        return {key: _bound(value) for key, value in content.items()}
    if isinstance(content, list):
        return [_bound(value) for value in content]
    return PAIR.sub("\u00a0", content) if isinstance(content, str) else content


LANGUAGE = contextvars.ContextVar("language", default="en")  # of the page that is being made


def languages():
    """The languages there are words in, English first."""
    return [row["id"] for row in load("languages")["language"]]


def colon(language):
    """A colon as a language sets it, with the space before it if there is one."""
    return by_id(load("languages")["language"])[language]["colon"]


def decimal(language=None):
    """The decimal mark of a language, or of that of the page that is being made."""
    return by_id(load("languages")["language"])[language or LANGUAGE.get()]["decimal"]


def opening_system():
    """The system of units that the page being made opens in."""
    return by_id(load("languages")["language"])[LANGUAGE.get()]["system"]


def words(topic, language=None):
    """What a person reads on a topic, in a language or that of the page that is being made.

    topic: file name without its ending, such as "site", or a folder, such as "service", whose files have no section in common
    """
    place = f"words/{language or LANGUAGE.get()}/{topic}"
    return load(place) if (FOLDER / f"{place}.toml").is_file() else _merged(_topics(place))


SHARED = ("site", "start", "pressure", "units", "shift", "tables", "sources", "cautions")


def said(place):
    """The words at a place: its topic, then keys."""
    topic, *keys = place
    found = words(topic)
    for key in keys:
        found = found[key]
    return found


def shared_words(language=None):
    """The words that more than one page takes from, of all their topics. language: as for words"""
    return _merged(words(topic, language) for topic in SHARED)


def _merged(files):
    return {section: told for file in files for section, told in file.items()}


NAMED = {"hoses": ("hose", "label"), "losses": ("appliance", "label"), "formulas": ("formula", "name")}


def named(file):
    """The rows of hoses, losses or formulas, each under its name in the language of the page that is being made."""
    kind, key = NAMED[file]
    names = {**words(file)[kind], **words("water").get(kind, {})}
    forms = words(file).get("form", {})  # of a formula: as it is read
    return [{**row, key: names[row["id"]], **({"form": forms[row["id"]]} if forms else {})} for row in load(file)[kind]]


def by_id(rows):
    """Rows by their `id`, in their order."""
    return {row["id"]: row for row in rows}


@functools.cache
def steps():
    """Every step of the shift cards by its id, from all topics."""
    return by_id([step for topic in _topics("steps") for step in topic["step"]])


def step_words():
    """What a person reads at every step, by its id, from all topics."""
    return words("steps")


def orders(*names):
    """The orders that answer a hazard, by id: their grade with the sentences that a person reads.

    names: their ids; none: all of them

    `do` ends with the one more try, where there is one; `safe` is what of it holds also once there is none.
    `by_drive` holds what differs for a drive that has no selector, by the drive. Raises KeyError for a name that there
    is no order of.
    """
    file, told = load("orders"), words("orders")
    rows = by_id(file["order"])
    kinds = {row["id"]: row["of"] for row in file["drive"]}
    return {name: _by_drive({**rows[name], **told[name]}, kinds) for name in names or rows}


def _by_drive(order, kinds):
    own = {drive: _tried(order[kind]) for kind in order.get("drives", ()) for drive in kinds[kind]}
    common = _tried({key: told for key, told in order.items() if key != "drives" and key not in kinds})
    return {**common, "by_drive": own} if own else common


def _tried(told):
    """An order's words with its acts twice: as long as one more try is left, and safe once none is."""
    acts = {"do": [*told["do"], told["retry"]] if "retry" in told else told["do"], "safe": told["do"]}
    return {**{key: words for key, words in told.items() if key != "retry"}, **acts}


def order_for(order, drive):
    """An order as it is told to a rig of a drive; None: to any rig."""
    return {**order, **order.get("by_drive", {}).get(drive, {})}


def _topics(folder):
    return [load(f"{folder}/{path.stem}") for path in sorted((FOLDER / folder).glob("*.toml"))]


def cards():
    """The rows of the shift cards, in their order."""
    return load("shift")["sequence"]


def card_steps(name):
    """The steps of one card in their order, each with the rigs that the card has it for."""
    return list(_expanded(by_id(cards())[name]["steps"], {}))


def _expanded(names, only_if):
    parts = by_id(load("shift")["part"])
    for name in names:
        if name.startswith("@"):
            part = parts[name[1:]]
            yield from _expanded(part["steps"], {**only_if, **part.get("only_if", {})})
        else:
            step = steps()[name]
            only = {**only_if, **step.get("only_if", {})}
            yield {**step, "only_if": only} if only else step


def sequence(name):
    """The logic of one shift card, as calc.shift.card takes it; the caller's own copy."""
    listed = by_id(cards())[name]
    kept = ("id", "kind", "act", "hold_s", "limit_s", "asks", "only_if", "needs", "proves", "voids", "repeat", "order", "reports", "skip_if", "answers")
    return copy.deepcopy({
        "id": name,
        "anchor": listed["anchor"],
        "fits": listed.get("fits", {}),
        "rig": {question["id"]: question["answers"] + ["unknown"] for question in load("shift")["question"]},
        "steps": [{key: step[key] for key in kept if key in step} for step in card_steps(name)],
    })
