"""Units of the page: factors that Pint makes, baked for the phone. No factor is typed by hand."""
import functools

import pint

from site_src.content import data

REGISTRY = pint.UnitRegistry()


def systems():
    """The rows of the four systems, in their order."""
    return data.load("units")["system"]


def _scale(kind, system, is_fine):
    """One unit as calc.base.display takes it: factor from calc's unit, decimals, those of an entry, the offset of a temperature's zero, a gauge's step."""
    row = system["kinds"][kind]
    ours = systems()[0]["kinds"][kind]["unit"]
    zero, one = (REGISTRY.Quantity(amount, ours).to(row["unit"]).magnitude for amount in (0, 1))
    scale = {"factor": one - zero, "places": _read(row, is_fine)["places"]}
    scale.update({name: row[name] for name in ("set", "typed") if name in row})
    return {**scale, "offset": zero} if zero else scale


def _read(row, is_fine):
    """Decimals and step of a kind, as a layout is set or, where that is finer, as an instrument at a test is read."""
    return row.get("fine", row) if is_fine else row


def factor(kind, system):
    """How many of a system's unit make one of calc's, which are those of the system US.

    kind: a kind of quantity, such as "pressure"
    system: a row of systems()
    """
    return _scale(kind, system, False)["factor"]


def family(name):
    """Whose hose and tips a system goes with, customary or metric."""
    return data.by_id(systems())[name]["family"]


@functools.cache
def baked(is_fine=False):
    """Every system as calc.base.display takes them: by name and kind. is_fine: as instruments at a test are read."""
    return {system["id"]: {kind: _scale(kind, system, is_fine) for kind in system["kinds"]} for system in systems()}


def for_page(is_fine=False):
    """For each system what a script needs to read and step in it: family, place, likely lengths, steps of a tap, scales."""
    return {
        row["id"]: {
            "family": row["family"],
            "place": place,
            "likely_lengths": row["likely_lengths"],
            "steps": {kind: _read(spec, is_fine)["step"] for kind, spec in row["kinds"].items() if "step" in _read(spec, is_fine)},
            "kinds": baked(is_fine)[row["id"]],
        }
        for place, row in enumerate(systems())
    }


def shown_in(name, language=None, is_fine=False):
    """What calc.base.display calls units: every system, which is shown, and a language's decimal mark, or that of the page being made."""
    return {"shown": name, "decimal": data.decimal(language), "systems": baked(is_fine)}


def fine(name, language=None):
    """The same as instruments at a service test are read."""
    return shown_in(name, language, is_fine=True)


@functools.cache  # asked for the same few rows of the data for every rig of a fleet
def canonical(kind, amount, unit):
    """An amount of the data files in calc's own unit.

    kind: a kind of quantity
    amount: the figure as the source prints it
    unit: the unit it is printed in, as Pint writes it
    """
    return REGISTRY.Quantity(amount, unit).to(systems()[0]["kinds"][kind]["unit"]).magnitude
