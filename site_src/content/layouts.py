"""The layouts that are ready to use, as the Pressure page holds a layout: every entry as text with its system."""
from site_src.content import data

SYSTEMS = {"customary": "US", "metric": "SI"}
CREW = "2"
ENTRIES = ("flow", "least", "tip", "pressure")


def ready(family):
    """Every ready-made layout of a family of sizes, by id, in the order of the data."""
    table = data.load("layouts")
    return {row["id"]: _layout(row, family, table) for row in table["layout"]}


def _water(family, changes):
    said = {**data.load("layouts")["left_out"]["water"][family], **changes}
    return {name: value if name == "kind" else _entry(value, family) for name, value in said.items()}


def supply(family):
    """The hose that is laid to a new wye."""
    line = data.load("layouts")["left_out"]["supply"][family]
    return {"hose": line["hose"], "length": _entry(line["length"], family), "height": _entry(0, family), "device": "wye"}


def _entry(value, family):
    if isinstance(value, dict):
        value = value[family]
    return f"{value}@{SYSTEMS[family]}"


def _layout(row, family, table):
    names = {"nozzle": iter("ABCDEFGH"), "joint": iter("STUVWXYZ")}
    return {
        "crew": str(row.get("crew", CREW)),
        "source": _water(family, row.get("water", {})),
        "now": {"pressure": "", "gates": "set", "shut": []},
        "lines": [_line(line, family, table, names) for line in row[family]],
    }


def _line(row, family, table, names):
    row = {**table["left_out"]["line"], **row}
    joint = "lines" in row["end"]
    return {
        "id": next(names["joint" if joint else "nozzle"]),
        "hose": row["hose"],
        "length": _entry(row["length"], family),
        "height": _entry(row["height"], family),
        "runs": str(row["runs"]),
        "device": row.get("device", "none"),
        "loss": "",
        "loss_at": "",
        "device_most": "",
        "end": {"lines": [_line(each, family, table, names) for each in row["end"]["lines"]]} if joint else _nozzle(row["end"], family, table),
    }


def _nozzle(end, family, table):
    end = {**table["left_out"]["nozzle"][family], **end}
    return {"kind": end["kind"], **{name: _entry(end[name], family) for name in ENTRIES}}
