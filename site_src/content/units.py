"""Units of the page: factors that Pint makes, baked for the phone. No factor is typed by hand."""
import functools

import pint

from site_src.content import data

REGISTRY = pint.UnitRegistry()


def systems():
    """The rows of the four systems, in their order."""
    return data.load("units")["system"]


def factor(kind, system):
    """How many of a system's unit make one of calc's, which are those of the system US.

    kind: a kind of quantity, such as "pressure"
    system: a row of systems()
    """
    ours = systems()[0]["kinds"][kind]["unit"]
    return REGISTRY.Quantity(1, ours).to(system["kinds"][kind]["unit"]).magnitude


def family(name):
    """Whose hose and tips a system goes with, customary or metric."""
    return data.by_id(systems())[name]["family"]


@functools.cache
def baked():
    """Every system as calc.base.display takes them: by name, by kind, factor and places."""
    return {
        system["id"]: {
            kind: {"factor": factor(kind, system), "places": row["places"]} for kind, row in system["kinds"].items()
        }
        for system in systems()
    }


def shown_in(name):
    """What calc.base.display calls units: every system, which is shown, and the decimal mark of the page that is being made."""
    return {"shown": name, "decimal": data.decimal(), "systems": baked()}


def canonical(kind, amount, unit):
    """An amount of the data files in calc's own unit.

    kind: a kind of quantity
    amount: the figure as the source prints it
    unit: the unit it is printed in, as Pint writes it
    """
    return REGISTRY.Quantity(amount, unit).to(systems()[0]["kinds"][kind]["unit"]).magnitude
