"""What flows through a tree of square-law hose at a given pressure: Newton's method, one sweep up and down a step.

A tree is a list of Branch, each after the one that feeds it. A branch loses `rise + loss * Q * |Q|`; a leaf ends in an
outlet whose pressure follows from its flow. The flows are those that make a convex sum, the content of the tree, least:
the work of every loss less the work of the pump. Newton's step always leads down that sum, and is halved until it does,
so the search ends.
"""
import math

from calc.base.errors import CalcError

MOST_STEPS = 60
MOST_HALVINGS = 40
CLOSE = 1e-10  # pressure left over, as a share of those that make it up, at which flows are in balance
SLIGHTEST_SLOPE = 1e-6  # psi per gpm: keeps a hose without loss from having no slope at all


class Branch:
    """One hose run: what feeds it, its losses, and at a leaf its outlet.

    feeder: place of the branch that feeds it in the list, or None at the pump
    rise_psi: pressure taken by height and fixed losses, psi
    loss: psi at 1 gpm, 0 or more; grows with the square
    outlet: a leaf's Outlet, or None at a joint
    is_shut: nothing passes
    is_dry: a leaf that the water does not reach
    """

    def __init__(self, feeder, rise_psi, loss, outlet, is_shut):
        self.feeder = feeder
        self.rise_psi = rise_psi
        self.loss = loss
        self.outlet = outlet
        self.flow_gpm = 0
        self.is_shut = is_shut
        self.is_dry = False


class Outlet:
    """A nozzle's pressure by its flow: an orifice, but for a range of flows in which it holds its pressure.

    least_gpm, most_gpm: flows at which the pressure is rated_psi, equal for a fixed orifice, above 0
    rated_psi: above 0
    """

    def __init__(self, least_gpm, most_gpm, rated_psi):
        self.least_gpm = least_gpm
        self.most_gpm = most_gpm
        self.rated_psi = rated_psi
        self.loss_below = rated_psi / (least_gpm * least_gpm)
        self.loss = rated_psi / (most_gpm * most_gpm)

    def pressure_psi(self, flow_gpm):
        """Its pressure at a flow, 0 or more."""
        held_psi, loss = self.law(flow_gpm)
        return held_psi + loss * flow_gpm * flow_gpm

    def law(self, flow_gpm):
        """What it takes near a flow, `(held_psi, loss)`: a pressure that is held, and a loss that grows with the square."""
        size = abs(flow_gpm)
        if size >= self.most_gpm:
            return 0, self.loss
        if size < self.least_gpm:
            return 0, self.loss_below
        return (self.rated_psi if flow_gpm > 0 else -self.rated_psi), 0

    def flow_gpm(self, psi, loss):
        """What flows through it and a run before it with this loss, at a pressure above 0."""
        below_gpm = math.sqrt(psi / (loss + self.loss_below))
        if below_gpm <= self.least_gpm:
            return below_gpm
        above_gpm = math.sqrt(psi / (loss + self.loss))
        if above_gpm >= self.most_gpm:
            return above_gpm
        return math.sqrt(max(psi - self.rated_psi, 0) / loss) if loss else self.least_gpm

    def content(self, flow_gpm):
        """Work of the outlet up to a flow: the integral of its pressure."""
        size = abs(flow_gpm)
        if size <= self.least_gpm:
            return self.loss_below * size * size * size / 3
        work = self.rated_psi * (min(size, self.most_gpm) - self.least_gpm * 2 / 3)
        if size > self.most_gpm:
            work += self.loss * (size * size * size - self.most_gpm * self.most_gpm * self.most_gpm) / 3
        return work


def solve(branches, pump_psi):
    """Set every branch's flow_gpm to what flows at this pump pressure. Water never flows back through a nozzle.

    branches: list of Branch, each after its feeder; a leaf that is_shut stays shut
    pump_psi: pressure at the pump, psi

    Raises CalcError naming lines where the search is not done in its steps, which no layout of hose has been seen to do.
    Source: the content of a network, from memory (Cherry and Millar's minimum, as used for pipe networks).
    """
    _start(branches, pump_psi)
    for _ in range(MOST_STEPS):
        if _balances(branches, pump_psi):
            return
        _descend(branches, _newton(branches, pump_psi), pump_psi)
    raise CalcError("lines", "no_balance")


def _start(branches, pump_psi):
    """Guess the flows. A nozzle that still water does not reach has none.

    The guess is right where all nozzles are level: there a tree of square laws is one square law. A nozzle that is
    higher than others is taken for a smaller one.
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
            branch.is_dry = still_psi[place] <= 0
            if not branch.is_dry and not branch.is_shut:
                eases[place] = branch.outlet.flow_gpm(still_psi[place], branch.loss) / math.sqrt(most_psi)
        elif behind[place]:
            eases[place] = 1 / math.sqrt(1 / (behind[place] * behind[place]) + branch.loss)
        if branch.feeder is not None:
            behind[branch.feeder] += eases[place]
    for place, branch in enumerate(branches):
        if not eases[place]:
            branch.flow_gpm = 0
        elif branch.feeder is None:
            branch.flow_gpm = eases[place] * math.sqrt(most_psi)
        else:
            branch.flow_gpm = branches[branch.feeder].flow_gpm * eases[place] / behind[branch.feeder]


def _descend(branches, targets, pump_psi):
    """Go towards the targets as far as the content falls, and shut the nozzles that would then draw air."""
    before = [branch.flow_gpm for branch in branches]
    reached = _content(branches, pump_psi)
    share = 1.0
    for _ in range(MOST_HALVINGS):
        for branch, old, new in zip(branches, before, targets):
            branch.flow_gpm = old + share * (new - old)
        _sum_flows(branches)
        if _content(branches, pump_psi) <= reached + 1e-12 * abs(reached):
            break
        share /= 2
    drawing = [branch for branch in branches if branch.outlet and branch.flow_gpm < 0]
    for branch in drawing:
        branch.is_dry = True
        branch.flow_gpm = 0
    if drawing:
        _sum_flows(branches)


def _balances(branches, pump_psi):
    """Whether every nozzle's flow is the one for the pressure it gets; if so, opens any found dry that water reaches."""
    outlets_psi = []
    sizes_psi = []  # the terms of each pressure added up without their signs: what the tolerance is a share of
    thirsty = []
    for place, branch in enumerate(branches):
        inlet_psi, size_psi = pump_psi, abs(pump_psi)
        if branch.feeder is not None:
            inlet_psi, size_psi = outlets_psi[branch.feeder], sizes_psi[branch.feeder]
        lost_psi = branch.loss * branch.flow_gpm * branch.flow_gpm
        outlets_psi.append(inlet_psi - branch.rise_psi - lost_psi)
        sizes_psi.append(size_psi + abs(branch.rise_psi) + lost_psi)
        if not branch.outlet or branch.is_shut:
            continue
        if not branch.is_dry:
            if abs(outlets_psi[place] - branch.outlet.pressure_psi(branch.flow_gpm)) > CLOSE * sizes_psi[place]:
                return False
        elif outlets_psi[place] > CLOSE * sizes_psi[place]:
            thirsty.append(place)
    for place in thirsty:
        branches[place].is_dry = False
        branches[place].flow_gpm = branches[place].outlet.flow_gpm(outlets_psi[place], branches[place].loss)
    _sum_flows(branches)
    return not thirsty


def _sum_flows(branches):
    """Flows of joints from those of the nozzles behind them."""
    for branch in branches:
        if not branch.outlet:
            branch.flow_gpm = 0
    for branch in reversed(branches):
        if branch.feeder is not None:
            branches[branch.feeder].flow_gpm += branch.flow_gpm


def _newton(branches, pump_psi):
    """The flow of each branch where its tangents meet: elimination from the leaves, then down from the pump.

    Each branch is made to say Q = give + take * p of the pressure at its inlet.
    """
    gives = [0.0] * len(branches)
    takes = [0.0] * len(branches)
    joint_gives = [0.0] * len(branches)
    joint_takes = [0.0] * len(branches)
    for place in range(len(branches) - 1, -1, -1):
        branch = branches[place]
        if branch.is_shut or branch.is_dry or not (branch.outlet or joint_takes[place]):
            continue  # nothing flows, whatever the pressure
        flow = branch.flow_gpm
        size = abs(flow)
        if branch.outlet:
            held_psi, loss = branch.outlet.law(flow)
            loss += branch.loss
            slope = max(2 * loss * size, SLIGHTEST_SLOPE)
            take = 1 / slope
            give = flow - take * (branch.rise_psi + held_psi + loss * flow * size)
        else:
            slope = 2 * branch.loss * size
            take = 1 / (1 / joint_takes[place] + slope)
            give = take * (joint_gives[place] / joint_takes[place] - branch.rise_psi + branch.loss * flow * size)
        gives[place] = give
        takes[place] = take
        if branch.feeder is not None:
            joint_gives[branch.feeder] += give
            joint_takes[branch.feeder] += take
    targets = []
    outlets_psi = []
    for place, branch in enumerate(branches):
        inlet_psi = pump_psi if branch.feeder is None else outlets_psi[branch.feeder]
        target = gives[place] + takes[place] * inlet_psi
        targets.append(target)
        at_joint = joint_takes[place]
        outlets_psi.append((target - joint_gives[place]) / at_joint if at_joint else inlet_psi)
    return targets


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
