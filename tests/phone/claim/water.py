"""A water or foam page read as a person reads it, and worked out at the desk from that alone."""
import importlib

from calc.base import entry
from calc.base.errors import CalcError
from site_src.content import data, reckoners, units

READ = """() => ({
  rows: Object.fromEntries([...document.querySelectorAll(".entry-row")].map((row) => [row.dataset.entry, {
    text: row.querySelector("b").textContent.trim(), unit: row.querySelector("small")?.textContent.trim() ?? "" }])),
  figure: document.querySelector("main output b:not([aria-hidden])")?.textContent.trim() ?? null,
  unit: document.querySelector("main output span")?.textContent.trim() ?? null,
  said: (document.querySelector("main output b:not([aria-hidden])") ? document.querySelector(".answer-sum") : document.querySelector("main output"))?.textContent.trim() ?? null,
  refused: [...document.querySelectorAll(".entry[data-refused] .entry-row")].map((row) => row.dataset.entry),
})"""
UNSET = "\u2013"


def check(page, system, shown):
    """Figure and sentence are what calc says of the rows, or one row is refused by both."""
    try:
        answer = _answered(page, system, shown["rows"])
    except CalcError as refusal:
        assert shown["refused"] in ([refusal.field], []) and shown["figure"] is None, (refusal.field, refusal.code, shown)
        return
    assert not shown["refused"], shown
    assert shown["figure"] == answer["figure"]["text"], (answer["figure"], shown)
    assert shown["said"] == _sentence(answer, system), (answer["facts"], shown)
    if shown["figure"] is not None:
        assert shown["unit"] == data.words("units")["unit"][system][answer["figure"]["kind"]], shown


def _sentence(answer, system):
    words = data.words("water")
    facts = {name: words["text"].get(name, {}).get(text, text) for name, text in answer["facts"].items()}
    return words["told"][answer["sum"]].format(**{f"u_{kind}": name for kind, name in data.words("units")["unit"][system].items()}, **facts)


def _answered(page, system, rows):
    """The answer to the rows as they stand; what the page does not ask now is as it opened."""
    family = units.family(system)
    entries = reckoners.opening(page, family)
    for field in reckoners.fields(page):
        if field["name"] in rows:
            entries[field["name"]] = _entry(field, rows[field["name"]]["text"], entries[field["name"]], system)
    module = importlib.import_module(f"calc.supply.{page}_answer")
    return module.answer(entries, reckoners.shelf(page), units.shown_in(system))


def _entry(field, text, opening, system):
    """What a row says; one that reads as it opened, or as a usual figure, is that, which may have been in other units."""
    options = reckoners.choices(field, units.family(system))
    if options:
        [chosen] = {option["id"] for option in options if option["label"] == text}
        return chosen
    if text == UNSET:
        return ""
    offered = [] if field["kind"] == "count" else [known for known in (opening, *field.get("usual", [])) if known]
    shown = entry.all_shown(units.shown_in(system), [[field["kind"], known] for known in offered])
    return offered[shown.index(text)] if text in shown else f"{text}@{system}"
