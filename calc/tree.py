"""What flows through a tree of square-law hose at a given pressure: Newton's method, one sweep up and down a step.

A tree is a list of Branch, each after the one that feeds it. A branch loses `rise + loss * Q * |Q|`; a leaf ends in an
outlet whose pressure follows from its flow. The flows are those that make a convex sum, the content of the tree, least:
the work of every loss less the work of the pump. Newton's step always leads down that sum, and is halved until it does,
so the search ends.
"""


MOST_STEPS = 60
MOST_HALVINGS = 40
CLOSE = 1e-12  # relative change of every flow at which the search is done
SLIGHTEST_SLOPE = 1e-9  # psi per gpm: keeps a hose without loss from having no slope at all


class Branch:
    """One hose run: what feeds it, its losses, and at a leaf its outlet.

    feeder: place of the branch that feeds it in the list, or None at the pump
    rise_psi: pressure taken by height and fixed losses, psi
    loss: psi at 1 gpm, 0 or more; grows with the square
    outlet: a leaf's Outlet, or None at a joint
    is_shut: nothing passes
    """

    def __init__(self, feeder, rise_psi, loss, outlet, is_shut):
        self.feeder = feeder
        self.rise_psi = rise_psi
        self.loss = loss
        self.outlet = outlet
        self.flow_gpm = 0
        self.is_shut = is_shut


class Outlet:
    """A nozzle's pressure by its flow: an orifice, but for a range of flows in which it holds its pressure.

    least_gpm, most_gpm: flows at which the pressure is rated_psi, equal for a fixed orifice, above 0
    rated_psi: above 0
    """

    def __init__(self, least_gpm, most_gpm, rated_psi):
        self.least_gpm = least_gpm
        self.most_gpm = most_gpm
        self.rated_psi = rated_psi

    def pressure_psi(self, flow_gpm):
        held = self._held(flow_gpm)
        if held is None:
            return self.rated_psi if flow_gpm > 0 else -self.rated_psi
        return self.rated_psi * flow_gpm * abs(flow_gpm) / (held * held)

    def slope(self, flow_gpm):
        held = self._held(flow_gpm)
        return 0 if held is None else 2 * self.rated_psi * abs(flow_gpm) / (held * held)

    def content(self, flow_gpm):
        """Work of the outlet up to a flow: the integral of its pressure."""
        size = abs(flow_gpm)
        third = self.rated_psi / 3
        if size <= self.least_gpm:
            return third * size * size * size / (self.least_gpm * self.least_gpm)
        below = third * self.least_gpm
        if size <= self.most_gpm:
            return below + self.rated_psi * (size - self.least_gpm)
        held = below + self.rated_psi * (self.most_gpm - self.least_gpm)
        return held + third * (size * size * size / (self.most_gpm * self.most_gpm) - self.most_gpm)

    def _held(self, flow_gpm):
        """The flow whose orifice governs; None while the nozzle holds its pressure."""
        if abs(flow_gpm) < self.least_gpm:
            return self.least_gpm
        return self.most_gpm if abs(flow_gpm) >= self.most_gpm else None


def solve(branches, pump_psi):
    """Set every branch's flow_gpm to what flows at this pump pressure. Water never flows back through a nozzle.

    branches: list of Branch, each after its feeder; a leaf that is_shut stays shut
    pump_psi: pressure at the pump, psi

    Raises nothing. Source: the content of a network, from memory (Cherry and Millar's minimum, as used for pipe networks).
    """
    for branch in branches:
        if branch.outlet:
            branch.flow_gpm = 0 if branch.is_shut else branch.outlet.most_gpm
    while True:
        _sum_flows(branches)
        _search(branches, pump_psi)
        # A nozzle above the water is shut. Shutting one only lowers the pressure of the others, so none opens again.
        shut = [branch for branch in branches if branch.outlet and not branch.is_shut and branch.flow_gpm <= 0]
        if not shut:
            return
        for branch in shut:
            branch.is_shut = True
            branch.flow_gpm = 0


def _search(branches, pump_psi):
    reached = _content(branches, pump_psi)
    for _ in range(MOST_STEPS):
        before = [branch.flow_gpm for branch in branches]
        targets = _newton(branches, pump_psi)
        share = 1.0
        for _ in range(MOST_HALVINGS):
            for branch, old, new in zip(branches, before, targets):
                if branch.outlet:
                    branch.flow_gpm = old + share * (new - old)
            _sum_flows(branches)
            content = _content(branches, pump_psi)
            if content <= reached + 1e-14 * abs(reached):
                break
            share /= 2
        reached = content
        if all(abs(branch.flow_gpm - old) <= CLOSE * (1 + abs(old)) for branch, old in zip(branches, before)):
            return


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
        flow = branch.flow_gpm
        if branch.is_shut or (not branch.outlet and joint_takes[place] == 0):
            continue  # nothing flows, whatever the pressure
        slope = 2 * branch.loss * abs(flow)
        fixed_psi = branch.rise_psi + branch.loss * flow * abs(flow) - slope * flow
        if branch.outlet:
            outlet_slope = branch.outlet.slope(flow)
            slope = max(slope + outlet_slope, SLIGHTEST_SLOPE)
            fixed_psi = branch.rise_psi + branch.loss * flow * abs(flow) + branch.outlet.pressure_psi(flow) - slope * flow
            takes[place] = 1 / slope
            gives[place] = -fixed_psi / slope
        else:
            takes[place] = 1 / (1 / joint_takes[place] + slope)
            gives[place] = takes[place] * (joint_gives[place] / joint_takes[place] - fixed_psi)
        if branch.feeder is not None:
            joint_gives[branch.feeder] += gives[place]
            joint_takes[branch.feeder] += takes[place]
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
        size = abs(flow)
        total += branch.rise_psi * flow + branch.loss * size * size * size / 3
        if branch.outlet:
            total += branch.outlet.content(flow)
        if branch.feeder is None:
            total -= pump_psi * flow
    return total
