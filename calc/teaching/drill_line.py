"""This rig's own lines, as the questions of the drill take them.

`ground` is what the questions stand on: `{"shelf", "rig", "beds", "tips", "lights", "gauges"}`; shelf, rig and beds as calc.rig.profile has them at hand.
"""
from calc.base import display, entry
from calc.base.errors import CalcError
from calc.base.order import ordered
from calc.hydraulics import caution, friction_rule, outlet, water
from calc.layout import typed
from calc.rig import profile
from calc.teaching import drill_parts as parts

FLOOR_FT = 10  # where the rig's profile has no height of a floor
MOST_PSI = 300  # what asks for more is no line to train on
SAME_IN = 0.001
SAME_GPM = 1e-6
APART_PSI = 15  # beds whose pressures differ by less are alike to a gauge


class Line:
    """A hose bed with what its questions need."""

    def __init__(self, ground, units, bed):
        shelf = ground["shelf"]
        [line] = typed.translated(profile.layout_of(bed), shelf, units)[0]["lines"]
        _, self.flow_gpm, self.nozzle_psi = outlet.rating(line["end"])
        self.name, self.label, self.kind = bed["name"], line["label"], line["end"]["kind"]
        self.coefficient, self.size_in, self.length_ft = line["coefficient"], line["size_in"], line["length_ft"]
        self.own_coefficient = own_coefficient(shelf, units, bed.get("hose"))
        self.tip = tip_label(ground, units, bed["end"]["tip"]) if self.kind == "smooth" else ""
        self.device_psi = line["appliance_psi"]
        self.is_over = "device_most_gpm" in line and self.flow_gpm > line["device_most_gpm"] + SAME_GPM
        self.test_psi = line.get("test_psi")
        self.rule = rule_of(shelf, units, self.size_in, self.flow_gpm)
        self.friction_psi = friction_rule.loss_psi(self.rule, self.size_in, self.coefficient, self.flow_gpm, self.length_ft)

    def pump_psi(self):
        """What the line asks of the pump as it lies."""
        return self.nozzle_psi + self.friction_psi + self.device_psi

    def is_stopped(self):
        """Whether no page gives it a number: more flow than its device is made for, or its hose at its test pressure. Source: calc.hydraulics.caution."""
        strain = caution.of_hose(self.pump_psi(), {"test_psi": self.test_psi})
        return self.is_over or strain is not None and strain[0] == caution.STOP

    def facts(self, units):
        """Texts that say what it is."""
        return {
            "bed": self.name, "hose": self.label, "length": display.text(units, "length", self.length_ft), "end": self.kind, "tip": self.tip,
            "flow": display.text(units, "flow", self.flow_gpm), "nozzle": display.text(units, "pressure", self.nozzle_psi), "own": self.own_coefficient,
        }


def own_coefficient(shelf, units, hose):
    """The friction coefficient of a hose whose figure is the rig's own, so that nobody can know it by heart, as text; else none.

    shelf, units: as the module says
    hose: its name, or None

    Raises CalcError naming units. Source: the rig's profile, see calc.rig.profile.
    """
    figures = shelf["hoses"].get(hose, {})
    return parts.term(units, "coefficient", figures["coefficient"]) if figures.get("origin") else ""


def tip_label(ground, units, tip):
    """A tip's name, or its diameter in the page's unit.

    ground, units: as the module says
    tip: as typed

    Raises CalcError naming units.
    """
    tip_in = entry.quantity(units, "diameter", "tip", tip)
    for row in ground["tips"]:
        if abs(entry.quantity(units, "diameter", "tip", row["id"]) - tip_in) < SAME_IN:
            return row["label"]
    return entry.shown(units, "diameter", tip)


def rule_of(shelf, units, size_in, flow_gpm):
    """The department's friction rule where it can be had in the head: for its hose, its flow, and gauges in psi and US gallons; else C Q^2 L.

    shelf, units: as the module says
    size_in: of the hose, or None
    flow_gpm: through it

    Raises CalcError naming the rule.
    """
    rule = shelf.get("rule")
    if units["shown"] != "US":
        return "square"
    try:
        friction_rule.loss_psi(rule, size_in, 1, flow_gpm, 100)
    except CalcError:
        return "square"
    return rule


def usable(ground, units):
    """The beds that questions can be made of, by their place.

    ground, units: as the module says

    Returns [place, Line] rows. Raises nothing.
    """
    lines = []
    for place, bed in enumerate(ground["beds"]):
        try:
            line = Line(ground, units, bed)
        except CalcError:
            continue  # a hose whose own figure has a fault, or an end that was never filled in
        if line.pump_psi() < MOST_PSI and not line.is_stopped():
            lines.append((place, line))
    return lines


def friction_row(units, rule, coefficient, flow_gpm, length_ft, loss_psi):
    """The row of a working that says how the friction came out by a rule.

    units: as the module says
    rule: a code of calc.hydraulics.friction_rule
    coefficient, flow_gpm, length_ft, loss_psi: of the hose

    Raises CalcError naming units.
    """
    counted_gpm = friction_rule.rounded_flow_gpm(flow_gpm, friction_rule.STEPS_GPM[rule]) if rule in friction_rule.STEPS_GPM else flow_gpm
    code = "square" if rule in friction_rule.STEPS_GPM else rule
    return "friction_" + code, {
        "coefficient": parts.term(units, "coefficient", coefficient), "hundreds_flow": parts.term(units, "flow", counted_gpm, 100),
        "flow": display.text(units, "flow", counted_gpm), "hundreds_length": parts.term(units, "length", length_ft, 100),
        "loss": parts.term(units, "pressure", loss_psi),
    }


def floor_height_ft(ground, units):
    """The height of a floor as the rig's department counts it, or the usual.

    ground, units: as the module says

    Raises CalcError naming floor. Source: common practice (10 ft).
    """
    typed = ground["rig"].get("floor")
    return entry.quantity(units, "length", "floor", typed) if typed else FLOOR_FT


def elevation_terms(units, rise_ft):
    """Terms of the working of an elevation.

    units: as the module says
    rise_ft: height, feet

    Raises CalcError naming units.
    """
    return {
        "rate": parts.term(units, "elevation_rate", water.PSI_PER_FT), "rise": parts.term(units, "length", rise_ft),
        "elevation": parts.term(units, "pressure", water.elevation_psi(rise_ft)),
    }


def unlike(ground, units):
    """Pairs of beds that ask clearly different pressures of the pump, the lower first.

    ground, units: as the module says

    Raises nothing.
    """
    lines = ordered(usable(ground, units), lambda row: (row[1].pump_psi(), row[0]))
    return [(one, other) for _, one in lines for _, other in lines if other.pump_psi() - one.pump_psi() >= APART_PSI and one.name != other.name]
