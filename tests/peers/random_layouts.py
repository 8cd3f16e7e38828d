"""Random trees and networks of hose, of our own invention, to give to calc and to a general network solver alike."""
import random

DEEPEST = 6
MOST_NOZZLES = 30
TIPS_IN = (0.75, 0.875, 0.9375, 1, 1.125, 1.25)
MOST_LOOPS = 6
MASTER_TIPS_IN = (1.375, 1.5, 1.75, 2)


def random_layout(seed):
    """A layout up to six lines deep with up to thirty nozzles, and the pump pressure it is given, in psi."""
    chance = random.Random(seed)
    nozzles = chance.randint(1, MOST_NOZZLES)
    lines = [_line(chance, 1, share, nozzles) for share in _shares(chance, nozzles, chance.randint(1, 4))]
    return {"lines": lines}, chance.randint(100, 300)


def random_network(seed, elsewhere=0.5):
    """The same with one to six lines more that each come in at the end of another: hose unlike the one it joins, beside it or from elsewhere.

    elsewhere: the share of those that come from another place
    """
    chance = random.Random(f"loops {seed}")
    layout, pump_psi = random_layout(seed)
    for _ in range(chance.randint(1, MOST_LOOPS)):
        names = dict(_named(layout["lines"]))
        ends = [name for name in names if "into" not in names[name]["end"]]
        into = chance.choice(ends)
        beside = into.rpartition(".")[0]
        joints = [name for name in ends if "lines" in names[name]["end"] and not f"{name}.".startswith(f"{into}.")] + [""]
        feeder = beside if chance.random() >= elsewhere else chance.choice(joints)
        line = {
            "coefficient": chance.choice([0.08, 0.2, 0.8, 2, 8, 15.5]), "length_ft": chance.randint(20, 600), "rise_ft": 0,
            "parallel": chance.choice([1, 1, 2]), "shut": chance.random() < 0.1, "appliance_psi": chance.choice([0, 0, 5]), "end": {"into": into},
        }
        (names[feeder]["end"] if feeder else layout)["lines"].append(line)
    return layout, pump_psi


def _named(lines, before=""):
    for place, line in enumerate(lines, 1):
        yield f"{before}{place}", line
        yield from _named(line["end"].get("lines", []), f"{before}{place}.")


def _shares(chance, nozzles, branches):
    """Nozzles dealt out to branches, unevenly, at least one each."""
    shares = [1] * min(branches, nozzles)
    favoured = chance.randrange(len(shares))
    for _ in range(nozzles - len(shares)):
        shares[favoured if chance.random() < 0.6 else chance.randrange(len(shares))] += 1
    return shares


def _line(chance, depth, nozzles, of_all):
    """One line with this many nozzles behind it: hose to suit them, now and then shut, with height and appliances."""
    made = {
        "coefficient": chance.choice([0.08, 0.2] if nozzles > 4 else [0.2, 0.8, 2]),
        "length_ft": chance.randint(10, 300),
        "rise_ft": chance.randint(-15, 20),
        "parallel": chance.choice([1, 1, 1, 2, 3]),
        "shut": chance.random() < 0.06,
        "appliance_psi": chance.choice([0, 0, 5, 10]),
    }
    if nozzles > 1 or (depth < DEEPEST and chance.random() < 0.2):
        branches = nozzles if depth == DEEPEST - 1 else chance.randint(1, 4)
        made["end"] = {"lines": [_line(chance, depth + 1, share, of_all) for share in _shares(chance, nozzles, branches)]}
    elif of_all <= 8 and chance.random() < 0.3:
        made.update(coefficient=chance.choice([0.8, 2]), parallel=2, appliance_psi=25)  # a master stream on two runs
        made["end"] = {"kind": "smooth", "tip_in": chance.choice(MASTER_TIPS_IN), "nozzle_psi": 80}
    else:
        made.update(coefficient=chance.choice([2, 8, 15.5]), parallel=1)
        made["end"] = _handline(chance, of_all)
    return made


def _handline(chance, of_all):
    if chance.random() < 0.3:
        return {"kind": "smooth", "tip_in": chance.choice(TIPS_IN), "nozzle_psi": 50}
    most_gpm = 250 if of_all <= 8 else 100
    return {"kind": "fog", "rated_gpm": chance.randint(20, most_gpm), "rated_psi": chance.choice([50, 75, 100])}
