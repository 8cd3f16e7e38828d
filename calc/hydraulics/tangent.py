"""One step of Newton's method in a network of hose: a sweep up and down its tree, and one more for each loop.

Each branch is made to say Q = give + take * p of the pressure at its inlet. What flows in a loop is then drawn at one place of the tree and
given at another: what 1 gpm does to every pressure is a sweep with nothing else, and a few equations say how much it is.
"""
SLIGHTEST_SLOPE = 1e-6  # psi per gpm: keeps a hose without loss from having no slope at all


def flows_gpm(branches, chords, pump_psi):
    """The flow of each branch where the tangents of all meet.

    branches: list of calc.hydraulics.branch.Branch at the flows that are stepped from, see calc.hydraulics.network
    chords: those of them that come in at the end of another and are not shut
    pump_psi: pressure at the pump, psi

    Raises nothing. Source: Newton's method; loops by their effect on the tree (the small system that is left once a tree is eliminated).
    """
    losses = []  # (fixed, slope) of each branch: what it loses near its flow is fixed + slope * Q, an outlet's included
    for branch in branches:
        flow = branch.flow_gpm
        size = abs(flow)
        if branch.outlet and branch.outlet.drawn_gpm is None:
            held_psi, loss = branch.outlet.law(flow)
            loss += branch.loss
            slope = max(2 * loss * size, SLIGHTEST_SLOPE)
            losses.append((branch.rise_psi + held_psi + loss * flow * size - slope * flow, slope))
        else:
            slope = 2 * branch.loss * size
            losses.append((branch.rise_psi - branch.loss * flow * size, slope))
    takes = _takes(branches, losses)
    gives = [0.0] * len(branches)  # what each end draws by itself
    for place, branch in enumerate(branches):
        if branch.outlet and branch.outlet.drawn_gpm is not None and not branch.is_shut:
            gives[place] = branch.flow_gpm
    targets, ends_psi = _swept(branches, losses, takes, gives, pump_psi)
    return _looped(branches, chords, losses, takes, targets, ends_psi, pump_psi) if chords else targets


def _takes(branches, losses):
    """What more each branch takes for each psi at its inlet, and what all behind it take at its end, from the leaves up."""
    takes = [0.0] * len(branches)
    behind = [0.0] * len(branches)
    for place in range(len(branches) - 1, -1, -1):
        branch = branches[place]
        if branch.outlet:
            if branch.is_shut or branch.is_dry or branch.outlet.drawn_gpm is not None:
                continue  # its flow does not go by its pressure
            take = 1 / losses[place][1]
        else:
            take = behind[place] / (1 + behind[place] * losses[place][1])
        takes[place] = take
        if branch.feeder is not None:
            behind[branch.feeder] += take
    return takes, behind


def _swept(branches, losses, takes, gives, pump_psi):
    """Flow of each branch and pressure at its end: each says Q = give + take * p of its inlet, then down from the pump.

    gives: what is drawn at the end of each, changed as it is gone through
    """
    takes, behind = takes
    offers = [0.0] * len(branches)
    for place in range(len(branches) - 1, -1, -1):
        branch = branches[place]
        fixed, slope = losses[place]
        if branch.outlet:
            offer = gives[place] - takes[place] * fixed
        elif branch.into is not None:
            continue
        else:
            offer = (gives[place] - behind[place] * fixed) / (1 + behind[place] * slope)
        offers[place] = offer
        if branch.feeder is not None:
            gives[branch.feeder] += offer
    flows = []
    ends_psi = []
    for place, branch in enumerate(branches):
        inlet_psi = pump_psi if branch.feeder is None else ends_psi[branch.feeder]
        flow = offers[place] + takes[place] * inlet_psi
        flows.append(flow)
        ends_psi.append(inlet_psi - losses[place][0] - losses[place][1] * flow)
    return flows, ends_psi


def _looped(branches, chords, losses, takes, flows, ends_psi, pump_psi):
    """The flows of a tree with those of its loops: each loop's flow is such that its hose loses what lies between its ends."""
    still = [(0.0, slope) for _, slope in losses]
    effects = []
    for chord in chords:
        gives = [0.0] * len(branches)
        if chord.feeder is not None:
            gives[chord.feeder] += 1.0
        gives[chord.into] -= 1.0
        effects.append(_swept(branches, still, takes, gives, 0.0))
    rows = []
    for number, chord in enumerate(chords):
        flow = chord.flow_gpm
        slope = max(2 * chord.loss * abs(flow), SLIGHTEST_SLOPE)
        row = [_between(chord, ends, 0.0) for _, ends in effects]
        row[number] -= slope
        row.append(chord.rise_psi + chord.loss * flow * abs(flow) - slope * flow - _between(chord, ends_psi, pump_psi))
        rows.append(row)
    chord_flows = _solved(rows)
    targets = list(flows)
    for (by_one, _), amount in zip(effects, chord_flows):
        for place in range(len(targets)):
            targets[place] += by_one[place] * amount
    left = list(chord_flows)
    for place, branch in enumerate(branches):
        if branch.into is not None:
            targets[place] = 0 if branch.is_shut else left.pop(0)
    return targets


def _between(chord, ends_psi, pump_psi):
    """What pressure lies between the ends of a hose that closes a loop."""
    return (pump_psi if chord.feeder is None else ends_psi[chord.feeder]) - ends_psi[chord.into]


def _solved(rows):
    """A small set of linear equations, each row with its right-hand side last: elimination. Its pivots are never 0, see SLIGHTEST_SLOPE."""
    count = len(rows)
    for pivot in range(count):
        for row in rows[pivot + 1:]:
            share = row[pivot] / rows[pivot][pivot]
            for place in range(pivot, count + 1):
                row[place] -= share * rows[pivot][place]
    answers = [0.0] * count
    for pivot in range(count - 1, -1, -1):
        rest = sum([rows[pivot][place] * answers[place] for place in range(pivot + 1, count)])
        answers[pivot] = (rows[pivot][count] - rest) / rows[pivot][pivot]
    return answers
