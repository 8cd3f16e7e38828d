"""What a practice run was worth: by what was really so and by what the machine would not forgive, never by the lamps."""
from calc.base.errors import CalcError

SHOWS_PSI = 10
# notes that a machine would not forgive, and those that went well
HARMS = ("in_gear", "turning", "above_idle", "no_pause", "clash", "not_home", "strain", "runaway", "unproved", "no_flow",
         "second_try", "hot", "dry", "past_proof", "lamp_dark", "tank_closed")
LATE = "past_proof"  # an act of risk after a proof that failed: nothing broke, and a stop after it comes too late
UNBROKEN = (LATE, "lamp_dark")  # a throttle that was raised with a lamp dark and did not answer broke nothing either
GOODS = ("sound_move", "home_pump", "home_road", "gear_taken", "water_moved", "throttle_answered", "tank_opened")
CURED = ("tank_shut", "tank_opened")  # the fault that the panel itself puts right, and what does it


def verdict(run):
    """What an ended run was worth.

    run: one that has ended

    Returns contract `practice_verdict`. Raises CalcError naming run where it has not ended.
    """
    if run["ended"] is None:
        raise CalcError("run", "not_ended")
    return judged({
        "faults": run["faults"], "notes": run["notes"], "ended": run["ended"], "is_reached": is_reached(run), "at_s": run["at_s"],
        "away_s": run["away_s"],
    })


def judged(record):
    """What a run was worth, by what is left of it when its rig is gone.

    record: `{"faults", "notes", "ended", "is_reached", "at_s", "away_s"}` of an ended run

    Returns contract `practice_verdict`. Raises nothing.
    """
    right, harm = [], []
    for note in record["notes"]:
        for codes, wanted in ((right, GOODS), (harm, HARMS)):
            if note["code"] in wanted and note["code"] not in codes:
                codes.append(note["code"])
    stopped = record["ended"] == "stopped"
    if [code for code in harm if code not in UNBROKEN]:
        outcome = "harm"
    elif harm and stopped:
        outcome = "late"
    elif record["faults"]:
        is_cured = CURED[0] in record["faults"] and CURED[1] in right and record["is_reached"]
        outcome = "found" if stopped else "cured" if is_cured else "missed"
    elif stopped:
        outcome = "unneeded"
    else:
        outcome = "good" if record["is_reached"] else "unreached"
    return {
        "outcome": outcome, "right": right, "harm": harm, "took_s": record["at_s"], "away_s": record["away_s"],
        "faults": record["faults"],
    }


def is_reached(run):
    """Whether a run's task is done, by what is really so and not by the lamps.

    run: see calc.teaching.practice

    Raises nothing.
    """
    train = run["train"]
    if run["task"] == "to_road":
        return train["collar"] == "road" and train["gear"] == "neutral" and not run["shown"]["raised"]
    return (train["collar"] == "pump" and train["gear"] == "drive" and run["shown"]["raised"] and train["circulating"]
            and run["shown"]["pressure_psi"] > SHOWS_PSI)


def is_dead(run):
    """Whether the throttle stayed dead and the shift was not begun again since: a sound move of the pump shift control, in NEUTRAL at idle, is that.

    run: see calc.teaching.practice

    Raises nothing. Source: the order dead_throttle of site_src/data/orders.toml, once more from the first step.
    """
    codes = [note["code"] for note in run["notes"]]
    if "dead_throttle" not in codes:
        return False
    while codes[-1] not in ("dead_throttle", "sound_move"):
        codes.pop()
    return codes[-1] == "dead_throttle"


def is_past_proof(run, first):
    """Whether a proof has already failed where a person could see it: at the start, at the clunk, or at the throttle.

    run: see calc.teaching.practice, with the collar where the task wants it
    first: the same run at its start

    Raises nothing. Source: the order of the cards, as calc.teaching.model_run takes it.
    """
    pumps, start = run["task"] == "to_pump", first["shown"]
    if pumps:
        has_failed = start["lights"]["engaged"]
    else:
        # a dead throttle lets the engine down to idle by itself while it pumps
        is_dry = start["pressure_psi"] <= SHOWS_PSI and CURED[1] not in [note["code"] for note in run["notes"]]
        has_failed = not start["lights"]["engaged"] or not start["lights"]["ok"] or is_dry or "throttle_dead" in run["faults"]
    return has_failed or is_dead(run) or run["shown"]["lights"]["engaged"] != pumps
