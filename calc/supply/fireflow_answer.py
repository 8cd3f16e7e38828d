"""The fire flow page's answer: what a quick rule asks, the lines that carry it, and whether the supply here does."""
from calc.base import display, readout
from calc.supply import fireflow, sources

RULES = ("area", "volume", "store")
INVOLVED = ("25", "50", "75", "100")
HAZARDS = ("3", "4", "5", "6", "7")
CONSTRUCTIONS = ("0.5", "0.75", "1", "1.5")


def answer(entries, shelf, units):
    """What a quick rule asks, against lines and supply, ready to be read.

    entries: text as typed or chosen: `by` ("area", "volume" or "store"), `length`, `width`; by area `floors` and `involved`; else
        `height`; by area and by store `exposures`; by store `hazard` and `construction`; the flow of one `line` and of the `supply`; the `tank` on board, where it is known
    shelf: not used by this page
    units: see calc.base.display

    Returns contract `water_answer` with `fireflow_picture`. Raises CalcError naming the entry. Source: calc.supply.fireflow.
    """
    rule = readout.choice(entries, "by", RULES)
    typed = readout.amounts(entries, units, (
        ("length", "length", 1, 2000), ("width", "length", 1, 2000), ("line", "flow", 5, 2000), ("supply", "flow", 0, 20000)))
    rows, cautions = [], []
    asked_gpm = {"area": _by_area, "volume": _by_volume, "store": _by_store}[rule](entries, units, typed, rows, cautions)
    lines = fireflow.lines_for(asked_gpm, typed["line"])
    rows.append(readout.row(units, "handlines", None, str(lines), (
        ("flow", "flow", asked_gpm), ("line", "flow", typed["line"]), ("lines", None, str(lines))), ("handlines",)))
    rows.append(readout.row(units, "held", "percent", 100 * typed["supply"] / asked_gpm, (
        ("supply", "flow", typed["supply"]), ("flow", "flow", asked_gpm)), ("handlines",)))
    if typed["supply"] < asked_gpm:
        cautions.insert(0, readout.caution(units, "stop", "supply_short", (
            ("amount", "flow", typed["supply"]), ("limit", "flow", asked_gpm), ("needed", "flow", asked_gpm - typed["supply"]))))
    _tank(entries, units, asked_gpm, typed["line"], rows, cautions)
    flow_text = display.text(units, "flow", asked_gpm)
    most_gpm = max(asked_gpm, typed["supply"])
    return {
        "sum": "fireflow_" + rule,
        "figure": {"kind": "flow", "text": flow_text},
        "facts": {"lines": str(lines), "line": display.text(units, "flow", typed["line"])},
        "rows": rows,
        "cautions": cautions,
        "picture": {"asked": {"share": asked_gpm / most_gpm, "text": flow_text},
                    "supply": {"share": typed["supply"] / most_gpm, "text": display.text(units, "flow", typed["supply"])}},
    }


def _tank(entries, units, asked_gpm, line_gpm, rows, cautions):
    """How long the tank on board carries the flow asked, and one line."""
    tank_gal = readout.if_given(entries, units, "tank", "volume", 1, 100000)
    if tank_gal is None:
        return
    usable_gal = tank_gal * sources.USABLE_SHARE
    asked_minutes, line_minutes = [sources.tank_minutes(usable_gal, flow_gpm) for flow_gpm in (asked_gpm, line_gpm)]
    usable = ("usable", "volume", usable_gal)
    rows += [
        readout.row(units, "tank_asked", "time", asked_minutes, (usable, ("flow", "flow", asked_gpm), ("minutes", "time", asked_minutes)), ("usable", "tank")),
        readout.row(units, "tank_line", "time", line_minutes, (usable, ("flow", "flow", line_gpm), ("minutes", "time", line_minutes)), ("usable", "tank")),
    ]
    cautions.append(readout.caution(units, "caution", "tank_alone", (
        ("amount", "time", asked_minutes), ("flow", "flow", line_gpm), ("wanted", "time", line_minutes))))


def _plain(units, value):
    """A figure of the rule in US units, as its working has it."""
    return display.plain(units, value, 0)


def _by_area(entries, units, typed, rows, cautions):
    floors = readout.count(entries, "floors", 1, 50)
    exposures = readout.count(entries, "exposures", 0, 8)
    involved = float(readout.choice(entries, "involved", INVOLVED))
    asked_gpm = fireflow.by_area_gpm(typed["length"], typed["width"], floors, involved, exposures)
    rows.append(readout.row(units, "by_area", "flow", asked_gpm, (
        ("area", None, _plain(units, typed["length"] * typed["width"])), ("floors", None, str(floors)), ("percent", None, _plain(units, involved)),
        ("exposures", None, str(exposures)), ("gpm", None, _plain(units, asked_gpm))), ("fire_area",)))
    if asked_gpm > fireflow.AREA_MOST_GPM:
        cautions.append(readout.caution(units, "caution", "area_over", (
            ("amount", "flow", asked_gpm), ("limit", "flow", fireflow.AREA_MOST_GPM))))
    if involved > fireflow.AREA_MOST_PERCENT:
        cautions.append(readout.caution(units, "caution", "past_half", (
            ("amount", None, _plain(units, involved)), ("limit", None, str(fireflow.AREA_MOST_PERCENT)))))
    return asked_gpm


def _volume_ft3(entries, units, typed):
    return typed["length"] * typed["width"] * readout.amount(entries, units, "height", "length", 1, 200)


def _by_volume(entries, units, typed, rows, cautions):
    volume_ft3 = _volume_ft3(entries, units, typed)
    asked_gpm = fireflow.by_volume_gpm(volume_ft3)
    rows.append(readout.row(units, "by_volume", "flow", asked_gpm, (
        ("volume", None, _plain(units, volume_ft3)), ("gpm", None, _plain(units, asked_gpm))), ("fire_volume",)))
    rows.append(readout.row(units, "half_minute", "volume", asked_gpm * fireflow.VOLUME_MINUTES, (
        ("gpm", None, _plain(units, asked_gpm)),), ("fire_volume",)))
    cautions.append(readout.caution(units, "caution", "a_floor", ()))
    return asked_gpm


def _by_store(entries, units, typed, rows, cautions):
    volume_ft3 = _volume_ft3(entries, units, typed)
    exposures = readout.count(entries, "exposures", 0, 8)
    hazard = readout.choice(entries, "hazard", HAZARDS)
    construction = readout.choice(entries, "construction", CONSTRUCTIONS)
    stored_gal = fireflow.store_gal(volume_ft3, float(hazard), float(construction), exposures > 0)
    asked_gpm = fireflow.delivery_gpm(stored_gal)
    rows.append(readout.row(units, "store", "volume", stored_gal, (
        ("volume", None, _plain(units, volume_ft3)), ("hazard", None, hazard), ("construction", None, display.marked(units, construction)),
        ("gal", None, _plain(units, stored_gal))), ("fire_store",)))
    rows.append(readout.row(units, "delivery", "flow", asked_gpm, (("stored", "volume", stored_gal),), ("fire_delivery",)))
    return asked_gpm
