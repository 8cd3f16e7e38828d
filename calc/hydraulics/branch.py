"""The parts of a network of hose, as calc.hydraulics.network solves it: runs, and what stands at their ends."""
import math


class Branch:
    """One hose run: what feeds it, its losses, and at a leaf its outlet.

    feeder: place of the branch that feeds it in the list, or None at the pump
    rise_psi: pressure taken by height and fixed losses, psi
    loss: psi at 1 gpm, 0 or more; grows with the square
    outlet: a leaf's Outlet or Draw, or None at a joint
    is_shut: nothing passes
    into: place of the branch at whose end it comes in, which is a joint and is not shut; None where it has an end of its own
    is_dry: a leaf that the water does not reach
    """

    def __init__(self, feeder, rise_psi, loss, outlet, is_shut, into=None):
        self.feeder = feeder
        self.rise_psi = rise_psi
        self.loss = loss
        self.outlet = outlet
        self.flow_gpm = 0
        self.is_shut = is_shut
        self.into = into
        self.is_dry = False


class Draw:
    """An end that takes a flow whatever its pressure is.

    drawn_gpm: 0 or more
    """

    def __init__(self, drawn_gpm):
        self.drawn_gpm = drawn_gpm

    def content(self, flow_gpm):
        """Nothing: its flow is not to be found."""
        return 0


class Outlet:
    """A nozzle's pressure by its flow: an orifice, but for a range of flows in which it holds its pressure.

    least_gpm, most_gpm: flows at which the pressure is rated_psi, equal for a fixed orifice, above 0
    rated_psi: above 0
    """

    drawn_gpm = None

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
