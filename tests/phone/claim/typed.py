"""A page of figures typed in, Heat and Speeds, read as a person reads it and worked out at the desk from that alone."""
from calc.base import entry
from calc.base.errors import CalcError
from calc.teaching import gear_table, warming
from site_src.content import data, units

READ = """() => ({
  entries: Object.fromEntries([...document.querySelectorAll("main input")].map((input) => [input.id.replace("speeds-", ""), input.value])),
  figures: [...document.querySelectorAll("main output:not([data-stale])")].map((output) => output.innerText.trim()),
  rows: [...document.querySelectorAll("main tbody tr")].map((row) => [...row.querySelectorAll("td")].map((cell) => cell.innerText.trim())),
  refused: [...document.querySelectorAll("main [aria-invalid=true]")].map((input) => input.id.replace("speeds-", "")),
})"""
# by page: what an entry is read as, and what it opens on; the others are plain numbers
KINDS = {
    "heat": {"power": "power", "trapped": "volume", "tank": "volume", "rise": "temperature_rise"},
    "speeds": {"idle_pressure": "pressure", "wanted": "pressure", "pressure_shown": "pressure", "speed_shown": "road_speed"},
}
OPENING = {"heat": data.load("why/heat")["opening"], "speeds": {"idle_pressure": "50@US", "wanted": "150@US"}}


def check(page, system, shown):
    """The figures are what calc says of the entries, or one entry is refused by both and no figure stands."""
    try:
        _check(page, system, shown, as_opened=True)
    except AssertionError:
        _check(page, system, shown, as_opened=False)  # typed just as it opened, to the figure shown


def _check(page, system, shown, as_opened):
    shown_in = units.shown_in(system)
    entries = {name: _entry(page, name, text, shown_in, as_opened) for name, text in shown["entries"].items() if not name.startswith("ratio_")}
    faulty = []
    while True:
        try:
            figures, rows = WORKED[page](entries, shown_in, data.words("units")["unit"][system])
            break
        except CalcError as refusal:  # which of several is named first is nobody's to say
            faulty.append(refusal.field)
            entries[refusal.field] = OPENING[page].get(refusal.field, "")
    if faulty:
        assert len(shown["refused"]) == 1 and shown["refused"][0] in faulty and not shown["figures"] + shown["rows"], (faulty, shown)
    else:
        assert (shown["refused"], shown["figures"], shown["rows"]) == ([], figures, rows), (figures, rows, shown)


def _entry(page, name, text, shown_in, as_opened):
    """What an input says; one that reads as it opened is as it opened, which may have been in other units."""
    kind, opening = KINDS[page].get(name), OPENING[page].get(name)
    if kind is None or not text.strip():
        return text.strip()
    return opening if as_opened and opening and entry.shown(shown_in, kind, opening) == text else f"{text}@{shown_in['shown']}"


def _heat(entries, shown_in, unit):
    answer = warming.answer(entries, shown_in)
    return [f"{answer['shut']} {unit['temperature_rise']}", f"{answer['circulation']} {unit['flow']}"], []


def _speeds(entries, shown_in, unit):
    answer = gear_table.answer(entries, [], shown_in)
    rows = [[row["speed"], row["pump_rpm"] or "?", row["pressure"] or "?"] for row in answer["rows"]]
    return [f"{row[0]} {unit['road_speed']}" for row in rows], rows


WORKED = {"heat": _heat, "speeds": _speeds}
