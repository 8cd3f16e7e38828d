"""The lines of a layout, read and checked, each a Run that can be made to carry a flow.

A layout is plain data, `{"lines": [LINE, ...]}`, the lines that leave the pump. A LINE holds
    coefficient    psi per 100 ft at 100 gpm, for one hose, above 0
    length_ft      feet, 0 or more
    end            a nozzle (see calc.hydraulics.outlet), `{"lines": [LINE, ...]}` for a wye or manifold, or `{"into": ID}` of another
                   line, at whose hose's end, before its device, this one comes in beside it: both then feed what stands there
and, where they apply,
    id             the name of the line in the report; without one, its place ("1", "1.2")
    shut           true where its valve or nozzle is shut: nothing passes; open without it
    size_in        nominal size of the hose, inches (for a department's own rule alone, see calc.hydraulics.friction_rule)
    bore_in        inches, above 0; without it, velocity and water held are reported as None
    rise_ft        feet, outlet above inlet, either sign; level without it; not read where it goes into another, whose end has a height
    parallel       equal hoses that share the run, 1 to 12; one without it
    appliance_psi  loss of the wye, manifold or device at the outlet, psi; none without it
    gate_psi       what its valve takes off at the inlet, psi; open without it (for flows alone)
    gate_gpm       the flow at which the valve takes that; without it, what the line is rated for
Appliances and gates take their pressure at the rated flow of all that is behind them, lines that are shut included,
and with the square of the flow away from it: a valve left as it stands takes less when one of two nozzles is shut.
"""
from calc.base.errors import CalcError, check_not_negative, check_positive
from calc.hydraulics import hose, outlet, water
from calc.layout import joint

MOST_LINES = 500  # ends any layout, a cyclic one included


def read(layout, changes):
    """Every line as a Run, each after the run that feeds it.

    layout: as the module says, up to 500 lines
    changes: True (shut) or False (open) by id, over what the lines say; empty to leave them

    Raises CalcError naming the field, with the fact `line` where it is a line's.
    """
    runs = []
    names = set()
    coming = []
    pending = _branches(layout, None)
    while pending:
        run = pending.pop()
        if run.name in names:
            raise CalcError("id", "duplicate", line=run.name)
        names.add(run.name)
        runs.append(run)
        if len(runs) > MOST_LINES:
            raise CalcError("lines", "too_many", most=MOST_LINES)
        end = run.line.get("end")
        if not isinstance(end, dict):
            raise CalcError("end", "missing", line=run.name)
        if "lines" in end:
            run.branches = _branches(end, run)
            pending.extend(run.branches)
        elif "into" in end:
            coming.append(run)
    for name in changes:
        if name not in names:
            raise CalcError("changes", "unknown_line", line=name)
    for run in reversed(runs):
        try:
            run.rate(changes.get(run.name, run.line.get("shut", False)))
        except CalcError as error:
            raise CalcError(error.field, error.code, line=run.name, **error.facts)
    if coming:
        joint.join(runs, coming)
    for run in runs:
        run.is_shut = run.is_shut or (run.feeder is not None and run.feeder.is_shut)
    return runs


def _branches(parent, feeder):
    """The lines of a layout or a wye as runs, last first, so that a stack yields them in order."""
    lines = parent.get("lines") if isinstance(parent, dict) else None
    where = {} if feeder is None else {"line": feeder.name}
    if not isinstance(lines, (list, tuple)) or not lines:
        raise CalcError("lines", "missing", **where)
    if len(lines) > MOST_LINES:
        raise CalcError("lines", "too_many", most=MOST_LINES, **where)
    runs = []
    for place, line in enumerate(lines, 1):
        if not isinstance(line, dict):
            raise CalcError("lines", "not_a_line", place=place, **where)
        default = str(place) if feeder is None else feeder.name + "." + str(place)
        name = line.get("id", default)
        if not isinstance(name, str) or not name:
            raise CalcError("id", "not_a_name", place=place, **where)
        runs.append(Run(line, feeder, name))
    runs.reverse()
    return runs


class Run:
    """One line while it is worked out; its branches are runs too.

    rating: a nozzle's, see outlet.rating, or None at a joint
    rated_gpm: what all nozzles behind it are rated for when open, each once
    into: the Run at whose end it comes in; guests: those that come in at its own
    end_gpm: what flows through its end: its own flow and its guests'
    is_shut: nothing can pass: it, one before it or all behind it is shut
    """

    def __init__(self, line, feeder, name):
        self.line = line
        self.feeder = feeder
        self.name = name
        self.branches = []
        self.rating = None
        self.nozzle = None
        self.into = None
        self.guests = []

    def rate(self, shut):
        """Read a line whose branches are read; whatever can be refused of it is refused, shut or open."""
        line = self.line
        if shut is not True and shut is not False:
            raise CalcError("shut", "not_true_or_false")
        self.is_closed = self.is_shut = shut
        if self.branches:
            self.is_shut = shut or all(branch.is_shut for branch in self.branches)
            self.rated_gpm = sum(branch.rated_gpm for branch in self.branches)
        elif "into" in line["end"]:
            self.rated_gpm = 0  # the nozzles there count once: see joint.join
        else:
            self.rating = outlet.rating(line["end"])
            self.rated_gpm = self.rating[1]
        for required in ("coefficient", "length_ft"):
            if required not in line:
                raise CalcError(required, "missing")
        self.parallel = line.get("parallel", 1)
        if self.parallel not in range(1, hose.MOST_PARALLEL + 1) or self.parallel is True:
            raise CalcError("parallel", "out_of_range", least=1, most=hose.MOST_PARALLEL)
        check_not_negative("length_ft", line["length_ft"])
        for loss in ("appliance_psi", "gate_psi"):
            if loss in line:
                check_not_negative(loss, line[loss])
        if "gate_gpm" in line:
            check_positive("gate_gpm", line["gate_gpm"])
        self.elevation_psi = water.elevation_psi(line.get("rise_ft", 0))
        self.bore_in = line.get("bore_in")
        self.water_gal = None
        if self.bore_in is not None:
            self.water_gal = self.parallel * hose.water_in_hose_gal(self.bore_in, line["length_ft"])
        if self.rated_gpm:
            self.carry(self.rated_gpm)

    def carry(self, flow_gpm, end_gpm=None):
        """Take from this flow what friction and gate take, and from that through its end, alike where nothing else comes in, its appliance's loss."""
        line = self.line
        self.flow_gpm = flow_gpm
        self.end_gpm = end_gpm = flow_gpm if end_gpm is None else end_gpm
        if flow_gpm < 0:
            self.friction_per_100_ft_psi = -hose.friction_loss_psi(line["coefficient"], -flow_gpm / self.parallel, 100)
        else:
            self.friction_per_100_ft_psi = hose.friction_loss_psi(line["coefficient"], flow_gpm / self.parallel, 100)
        self.friction_psi = self.friction_per_100_ft_psi * (line["length_ft"] / 100)
        self.appliance_psi = self.gate_psi = 0
        if "appliance_psi" in line:
            share = end_gpm / self.rated_gpm
            self.appliance_psi = line["appliance_psi"] * share * abs(share)
        if "gate_psi" in line:
            share = flow_gpm / line.get("gate_gpm", self.rated_gpm)
            self.gate_psi = line["gate_psi"] * share * abs(share)

    def velocity_ft_per_s(self):
        """Speed of the water in each hose; None without a bore."""
        return None if self.bore_in is None else hose.velocity_ft_per_s(abs(self.flow_gpm) / self.parallel, self.bore_in)

    def stand(self, inlet_psi):
        """Hold still water: a line that is charged and shut at its far end."""
        self.carry(0)
        self.inlet_psi = inlet_psi
        self.outlet_psi = inlet_psi - self.elevation_psi
        if self.rating is not None:
            self.nozzle = outlet.passing(self.line["end"], 0, 0)
