"""What flows through square-law hose at a given pressure: Newton's method, one sweep up and down a tree of it a step.

A network is a list of calc.hydraulics.branch.Branch, each after the one that feeds it: a tree, and lines that come in at the end of another, each of which closes
a loop. A branch loses `rise + loss * Q * |Q|`; a leaf ends in an outlet whose pressure follows from its flow. The flows are those that
make a convex sum, the content of the network, least: the work of every loss less the work of the pump. Newton's step always
leads down that sum, and is halved until it does, so the search ends. A loop adds to a step one more sweep, which says what its
flow does to the tree, and one row to a small set of equations.
"""
import math

from calc.base.errors import CalcError
from calc.hydraulics import tangent

MOST_STEPS = 60
MOST_HALVINGS = 40
MOST_LOOPS = 12
CLOSE = 1e-10  # pressure left over, as a share of those that make it up, at which flows are in balance


def solve(branches, pump_psi):
    """Set every branch's flow_gpm to what flows at this pump pressure. Water never flows back through a nozzle.

    branches: list of Branch, each after its feeder; a leaf that is_shut stays shut; no more than 12 that come in at another's end
    pump_psi: pressure at the pump, psi; any does where every end is a Draw

    Raises CalcError naming lines where loops are too many, or the search is not done in its steps, which no layout of hose
    has been seen to do. Source: the content of a network, from memory (Cherry and Millar's minimum, as used for pipe networks).
    """
    chords = [branch for branch in branches if branch.into is not None and not branch.is_shut]
    if len(chords) > MOST_LOOPS:
        raise CalcError("lines", "too_many_loops", most=MOST_LOOPS)
    _start(branches, chords, pump_psi)
    for _ in range(MOST_STEPS):
        if _balances(branches, chords, pump_psi):
            return
        _descend(branches, chords, tangent.flows_gpm(branches, chords, pump_psi), pump_psi)
    raise CalcError("lines", "no_balance")


def _start(branches, chords, pump_psi):
    """Guess the flows. A nozzle that still water does not reach has none.

    The guess is right where all nozzles are level and nothing is looped: there a tree of square laws is one square law. A nozzle that is
    higher than others is taken for a smaller one. A hose that comes in at another's end takes its share of that one's flow.
    """
    still_psi = []
    for branch in branches:
        still_psi.append((pump_psi if branch.feeder is None else still_psi[branch.feeder]) - branch.rise_psi)
    most_psi = max([psi for psi, branch in zip(still_psi, branches) if branch.outlet])
    eases = [0.0] * len(branches)  # flow of a branch and all behind it, at 1 psi
    behind = [0.0] * len(branches)
    for place in range(len(branches) - 1, -1, -1):
        branch = branches[place]
        if branch.outlet:
            if branch.outlet.drawn_gpm is not None:
                continue
            branch.is_dry = still_psi[place] <= 0
            if not branch.is_dry and not branch.is_shut:
                eases[place] = branch.outlet.flow_gpm(still_psi[place], branch.loss) / math.sqrt(most_psi)
        elif behind[place]:
            eases[place] = 1 / math.sqrt(1 / (behind[place] * behind[place]) + branch.loss)
        if branch.feeder is not None:
            behind[branch.feeder] += eases[place]
    for place, branch in enumerate(branches):
        if not eases[place]:
            branch.flow_gpm = branch.outlet.drawn_gpm or 0 if branch.outlet else 0
        elif branch.feeder is None:
            branch.flow_gpm = eases[place] * math.sqrt(most_psi)
        else:
            branch.flow_gpm = branches[branch.feeder].flow_gpm * eases[place] / behind[branch.feeder]
    if chords:
        _sum_flows(branches, ())
        for chord in chords:
            beside = branches[chord.into]
            roots = math.sqrt(chord.loss), math.sqrt(beside.loss)
            chord.flow_gpm = beside.flow_gpm * (roots[1] / sum(roots) if sum(roots) else 0.5)
        _sum_flows(branches, chords)


def _descend(branches, chords, targets, pump_psi):
    """Go towards the targets as far as the content falls, and shut the nozzles that would then draw air."""
    before = [branch.flow_gpm for branch in branches]
    reached = _content(branches, pump_psi)
    share = 1.0
    for _ in range(MOST_HALVINGS):
        for branch, old, new in zip(branches, before, targets):
            branch.flow_gpm = old + share * (new - old)
        _sum_flows(branches, chords)
        if _content(branches, pump_psi) <= reached + 1e-12 * abs(reached):
            break
        share /= 2
    drawing = [branch for branch in branches if branch.outlet and branch.flow_gpm < 0]
    for branch in drawing:
        branch.is_dry = True
        branch.flow_gpm = 0
    if drawing:
        _sum_flows(branches, chords)


def _balances(branches, chords, pump_psi):
    """Whether every flow is the one for the pressure it gets; if so, opens any nozzle found dry that water reaches."""
    outlets_psi = []
    sizes_psi = []  # the terms of each pressure added up without their signs: what the tolerance is a share of
    thirsty = []
    for place, branch in enumerate(branches):
        inlet_psi, size_psi = pump_psi, abs(pump_psi)
        if branch.feeder is not None:
            inlet_psi, size_psi = outlets_psi[branch.feeder], sizes_psi[branch.feeder]
        lost_psi = branch.loss * branch.flow_gpm * abs(branch.flow_gpm)
        outlets_psi.append(inlet_psi - branch.rise_psi - lost_psi)
        sizes_psi.append(size_psi + abs(branch.rise_psi) + abs(lost_psi))
        if not branch.outlet or branch.is_shut or branch.outlet.drawn_gpm is not None:
            continue
        if not branch.is_dry:
            if abs(outlets_psi[place] - branch.outlet.pressure_psi(branch.flow_gpm)) > CLOSE * sizes_psi[place]:
                return False
        elif outlets_psi[place] > CLOSE * sizes_psi[place]:
            thirsty.append(place)
    for place, branch in enumerate(branches) if chords else ():
        if branch.into is not None and not branch.is_shut:
            if abs(outlets_psi[place] - outlets_psi[branch.into]) > CLOSE * (sizes_psi[place] + sizes_psi[branch.into]):
                return False
    for place in thirsty:
        branches[place].is_dry = False
        branches[place].flow_gpm = branches[place].outlet.flow_gpm(outlets_psi[place], branches[place].loss)
    _sum_flows(branches, chords)
    return not thirsty


def _sum_flows(branches, chords):
    """Flows of joints from those of the nozzles behind them, and of what comes in and leaves by loops."""
    for branch in branches:
        if not branch.outlet and branch.into is None:
            branch.flow_gpm = 0
    for chord in chords:
        branches[chord.into].flow_gpm -= chord.flow_gpm
    for branch in reversed(branches):
        if branch.feeder is not None:
            branches[branch.feeder].flow_gpm += branch.flow_gpm


def _content(branches, pump_psi):
    """The sum that is least at the flows that are."""
    total = 0
    for branch in branches:
        flow = branch.flow_gpm
        if branch.feeder is None:
            total -= pump_psi * flow
        total += branch.rise_psi * flow + branch.loss * abs(flow) * flow * flow / 3
        if branch.outlet:
            total += branch.outlet.content(flow)
    return total
