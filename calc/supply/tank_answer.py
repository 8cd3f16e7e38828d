"""The tank page's answer: how long a tank or a pond lasts at a flow, or what a stream gives."""
from calc.base import display, readout
from calc.supply import sources

SOURCES = ("tank", "pond", "stream")
USABLE = ("100", "90", "80")
MARKS = (0.75, 0.5, 0.25)
# least flow from tank to pump that a rig is built for, with a large tank and with a smaller
LARGE_TANK_GAL, LARGE_TANK_GPM, SMALL_TANK_GPM = 500, 500, 250


def answer(entries, shelf, units):
    """How long the water lasts, or how much a stream brings, ready to be read.

    entries: text as typed or chosen: `water_from` ("tank", "pond" or "stream"), the `flow` that is drawn, and of a tank `tank` and
        `usable` (percent); of a pond `pond_length`, `pond_width` and `cover` (water above the strainer); of a stream `stream_width`,
        `depth`, and `float_length` with `float_time`, how far a float went in how long
    shelf: not used by this page
    units: see calc.base.display

    Returns contract `water_answer` with `tank_picture` or `stream_picture`. Raises CalcError naming the entry.
    Source: volume over flow; calc.supply.sources; least flow from tank to pump NFPA 1901, from memory.
    """
    water_from = readout.choice(entries, "water_from", SOURCES)
    flow_gpm = readout.amount(entries, units, "flow", "flow", 1, 5000)
    return {"tank": _tank, "pond": _pond, "stream": _stream}[water_from](entries, units, flow_gpm)


def _tank(entries, units, flow_gpm):
    tank_gal = readout.amount(entries, units, "tank", "volume", 1, 100000)
    percent = readout.choice(entries, "usable", USABLE)
    usable_gal = tank_gal * float(percent) / 100
    built_for_gpm = LARGE_TANK_GPM if tank_gal >= LARGE_TANK_GAL else SMALL_TANK_GPM
    cautions = []
    if flow_gpm > built_for_gpm:
        cautions.append(readout.caution(units, "caution", "tank_to_pump", (
            ("amount", "flow", flow_gpm), ("limit", "flow", built_for_gpm))))
    usable = readout.row(units, "usable", "volume", usable_gal, (
        ("tank", "volume", tank_gal), ("percent", None, percent), ("usable", "volume", usable_gal)), ("usable",))
    return _lasting(units, "tank", usable, (usable_gal, tank_gal, flow_gpm), cautions)


def _pond(entries, units, flow_gpm):
    typed = readout.amounts(entries, units, (("pond_length", "length", 1, 5000), ("pond_width", "length", 1, 5000), ("cover", "lift", 0, 40)))
    usable_gal = sources.pond_gal(typed["pond_length"], typed["pond_width"], typed["cover"])
    cautions = []
    if typed["cover"] <= sources.STRAINER_COVER_FT:
        cautions.append(readout.caution(units, "stop", "strainer_bare", (
            ("amount", "lift", typed["cover"]), ("limit", "lift", sources.STRAINER_COVER_FT))))
    usable = readout.row(units, "pond", "volume", usable_gal, (
        ("length", "length", typed["pond_length"]), ("width", "length", typed["pond_width"]), ("cover", "lift", typed["cover"]),
        ("limit", "lift", sources.STRAINER_COVER_FT), ("usable", "volume", usable_gal)), ("pond",))
    return _lasting(units, "pond", usable, (usable_gal, usable_gal, flow_gpm), cautions)


def _lasting(units, which, usable, amounts, cautions):
    """The answer of water that runs out."""
    usable_gal, whole_gal, flow_gpm = amounts
    minutes = sources.tank_minutes(usable_gal, flow_gpm)
    lasting = readout.row(units, "minutes", "time", minutes, (
        ("usable", "volume", usable_gal), ("flow", "flow", flow_gpm), ("minutes", "time", minutes)), ("tank",))
    return {
        "sum": which,
        "figure": readout.lasting(units, minutes),
        "facts": {"usable": usable["text"], "flow": display.text(units, "flow", flow_gpm)},
        "rows": [usable, lasting],
        "cautions": cautions,
        "picture": {
            "marks": [
                {"left": left, "volume": display.text(units, "volume", whole_gal * left),
                 "after": readout.lasting(units, whole_gal * (1 - left) / flow_gpm)} for left in MARKS],
            "flow": display.text(units, "flow", flow_gpm),
            "stays": {"share": 1 - usable_gal / whole_gal if whole_gal else 0, "text": display.text(units, "volume", whole_gal - usable_gal)},
        },
    }


def _stream(entries, units, flow_gpm):
    typed = readout.amounts(entries, units, (
        ("stream_width", "lift", 0.5, 500), ("depth", "lift", 0.1, 30), ("float_length", "lift", 1, 500), ("float_time", "seconds", 0.5, 600)))
    stream_gpm = sources.stream_gpm(typed["stream_width"], typed["depth"], typed["float_length"], typed["float_time"])
    cautions = []
    if flow_gpm > stream_gpm:
        cautions.append(readout.caution(units, "stop", "stream_short", (
            ("amount", "flow", flow_gpm), ("limit", "flow", stream_gpm))))
    row = readout.row(units, "stream", "flow", stream_gpm, (
        ("surface", "flow", stream_gpm / sources.FLOAT_SHARE), ("share", None, display.plain(units, sources.FLOAT_SHARE, 1)),
        ("stream", "flow", stream_gpm)), ("stream",))
    return {
        "sum": "stream",
        "figure": {"kind": "flow", "text": row["text"]},
        "facts": {"flow": display.text(units, "flow", flow_gpm)},
        "rows": [row],
        "cautions": cautions,
        "picture": {"width": display.text(units, "lift", typed["stream_width"]), "depth": display.text(units, "lift", typed["depth"]),
                    "flow": display.text(units, "flow", flow_gpm), "is_short": flow_gpm > stream_gpm},
    }
