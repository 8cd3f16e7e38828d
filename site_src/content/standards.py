"""The standards a pump may be tested to: data files of several countries, brought to calc's units."""
import functools

from site_src.content import data, units

NAMES = ("us", "canada", "europe")
# endings of a key: the unit as Pint names it, and the ending and unit that calc knows
UNITS = {
    "kpa": ("kilopascal", "psi", "psi"),
    "bar": ("bar", "psi", "psi"),
    "lpm": ("liter/minute", "gpm", "gallon/minute"),
    "m": ("meter", "ft", "foot"),
    "l": ("liter", "gal", "gallon"),
    "min": ("minute", "s", "second"),
    "c": ("degree_Celsius", "f", "degree_Fahrenheit"),
}
VACUUM = ("inhg", "inch_Hg")  # what calc reads the weight of air and a vacuum in
TOLD = ("source", "basis", "memory")


@functools.cache
def named(name):
    """One country's file, as it is written."""
    return data.load(f"service/{name}")


def kinds(name):
    """The kinds of test a standard knows, in their order."""
    return [kind["id"] for kind in named(name)["kind"]]


def edition():
    """The edition of our own limits that is in force."""
    return data.load("service/editions")["edition"][-1]["id"]


@functools.cache
def standard(name, kind):
    """A standard for one kind of test, as calc.service.plan takes it.

    name: one of NAMES
    kind: one of kinds(name)
    """
    written, common = named(name), data.load("service/common")
    chosen = data.by_id(written["kind"])[kind]
    holds = _brought(chosen["holds"])
    runs = [
        {**_brought(run), "holds": holds.get(run["id"], []), "interval_s": chosen["interval_min"] * 60}
        for run in written["run"]
    ]
    sections = {key: _brought(section, key) for key, section in written.items() if isinstance(section, dict)}
    return {
        **{key: section for key, section in sections.items() if key not in ("runs", "kinds")},
        "id": name,
        "kind": kind,
        "edition": edition(),
        "tests": chosen["tests"],
        "runs": runs,
        "unsure": written["unsure"] + chosen.get("unsure", []),
        "missing": written.get("missing", []),
        "suction": data.load("water")["suction"],
        "accuracy": _brought(common["accuracy"]),
        "interlock": [{"id": row["id"], "drives": row["drives"]} for row in common["interlock"]],
        "quick": _brought(common["quick"]),
    }


def _brought(content, section=None):
    """A section in calc's units, without what is told of its source."""
    if isinstance(content, list):
        return [_brought(row, section) for row in content]
    if not isinstance(content, dict):
        return content
    return dict(_in_ours(key, value, section) for key, value in content.items() if key not in TOLD)


def _in_ours(key, value, section):
    if isinstance(value, (dict, list)):
        return key, _brought(value, section)
    parts = key.split("_")
    for place, part in enumerate(parts):
        if part in UNITS and not isinstance(value, str):
            unit, ending, ours = UNITS[part]
            if part in ("kpa", "bar") and (section == "vacuum" or parts[0] == "barometer"):
                ending, ours = VACUUM
            parts[place] = ending
            return "_".join(parts), units.REGISTRY.Quantity(value, unit).to(ours).magnitude
    return key, value


@functools.cache
def every():
    """Every standard by name and kind of test."""
    return {name: {kind: standard(name, kind) for kind in kinds(name)} for name in NAMES}


def sections():
    """Every section of every standard with its source, for the page that lists them: its limits from memory by themselves."""
    rows = []
    for name in NAMES:
        for key, section in named(name).items():
            if isinstance(section, dict):
                rows.append({"standard": name, "section": key, "source": section["source"], "basis": section["basis"], "limits": [],
                             "is_unsure": key in named(name)["unsure"]})
                if section.get("memory"):
                    rows.append({**rows[-1], "basis": "from memory", "limits": section["memory"]})
    return rows
