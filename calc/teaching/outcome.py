"""What a practice run was worth: by what was really so and by what the machine would not forgive, never by the lamps."""
from calc.base.errors import CalcError

SHOWS_PSI = 10
# notes that a machine would not forgive, and those that went well
HARMS = ("in_gear", "turning", "above_idle", "no_pause", "clash", "not_home", "strain", "runaway", "unproved", "no_flow",
         "second_try", "hot", "dry")
GOODS = ("sound_move", "home_pump", "home_road", "gear_taken", "water_moved", "throttle_answered")


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
    if harm:
        outcome = "harm"
    elif record["faults"]:
        outcome = "found" if stopped else "missed"
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
