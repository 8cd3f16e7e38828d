"""The answer of the heat page: typed text in, figures with their workings out. It never says how long."""
from calc.base import display, entry
from calc.base.errors import check_positive, check_within
from calc.pump import heat

# what each is, and its bounds in calc's units: past any fire engine, its pump, its tank and its water: common practice
KINDS = {"power": "power", "trapped": "volume", "tank": "volume", "rise": "temperature_rise"}
BOUNDS = {"power": (0.1, 5000), "trapped": (0.1, 1000), "tank": (1, 20000), "rise": (0.1, 180)}


def answer(entries, units):
    """What the pump's power does to the water, shut in and sent round.

    entries: `power`, `trapped`, `tank`, `rise` as typed: power into the water, water shut in the pump, water in
        the tank, and the rise from inlet to outlet that is to be held
    units: see calc.base.display

    Returns the answer of contract `warming.answer`. Raises CalcError naming the entry. Source: calc.pump.heat.
    """
    known = {}
    for name, kind in KINDS.items():
        known[name] = entry.quantity(units, kind, name, entries.get(name, ""))
        check_positive(name, known[name])
        check_within(name, known[name], *BOUNDS[name])
    shut_f = heat.shutoff_rise_f_per_min(known["power"], known["trapped"])
    return {
        "shut": display.text(units, "temperature_rise", shut_f),
        "is_past_rise": shut_f > known["rise"],  # in its first minute, shut in
        "circulation": display.text(units, "flow", heat.circulation_gpm(known["power"], known["rise"])),
        "tank": display.working(
            units, "temperature_rise", heat.tank_rise_f_per_min(known["power"], known["tank"], known["trapped"])),
        "terms": {name: display.working(units, kind, known[name]) for name, kind in KINDS.items()},
        "constant": _constant(units),
    }


def _constant(units):
    """The one constant of the three workings, in the page's units: 5.08 deg F gal / (hp min)."""
    constant = heat.BTU_PER_MIN_PER_HP / heat.LB_PER_GAL
    factors = [display.scale(units, units["shown"], kind)["factor"] for kind in ("temperature_rise", "volume", "power")]
    return display.rounded(units, constant * factors[0] * factors[1] / factors[2], 2)
