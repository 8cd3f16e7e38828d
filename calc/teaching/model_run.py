"""What a task on the made-up rig should have looked like: each act when the one before it showed, and a stop at the first sign that does not.

The order is that of the cards (calc.shift.laws): idle, neutral, a shaft at rest, a pause at the center, a proof after each act. What a
step waits for is seen, felt or heard, never read off the drawing; so a fault is met where a person first can.
Source: order of the into-pump and to-road cards; times are those of the made-up rig and the soonest there can be.
"""
from calc.base.errors import CalcError
from calc.teaching import outcome, powertrain, practice

TICK_S = 0.1
LONGEST_WAIT_S = 8  # twice what the made-up shaft takes to stand still
HELD_S = 3  # that what should stay as it is is watched
STANDS_MPH = 0.05  # the speedometer rests at zero

# Each step: the act, or none for a look; then the signs to see, in turn. A look at the start must stay as it is.
STEPS = {
    "to_pump": (
        (None, ("starts_dark",)),
        (("selector", "centre"), ("exhaust", "silent")),
        (("selector", "pump"), ("clunk_pump", "lamp_engaged")),
        (("gear", "drive"), ("loads", "lamp_ok", "pressure")),
        (("circulate", True), ("water",)),
        (("throttle", "raised"), ("speeds_up",)),
    ),
    "to_road": (
        (None, ("starts_lit", "starts_pumping", "starts_raised")),
        (("throttle", "idle"), ("slows",)),
        (("gear", "neutral"), ("stands",)),
        (("selector", "centre"), ("exhaust", "silent")),
        (("selector", "road"), ("clunk_road", "lamp_out")),
        (("gear", "drive"), ("leans",)),
        (("gear", "neutral"), ("eases",)),
    ),
}

RISK = ("gear", "drive")  # what is not done after a proof that failed
# What a person names as the proof that contradicts, of each sign that a fault keeps away; of a look at two lamps, each that is dark.
PROOFS = ("engaged", "ok", "gauge", "speed", "air", "clunk", "throttle")
PROOF_OF = {
    "starts_dark": "engaged", "starts_pumping": "gauge", "starts_raised": "throttle", "exhaust": "air", "clunk_pump": "clunk", "clunk_road": "clunk",
    "lamp_engaged": "engaged", "lamp_out": "engaged", "pressure": "gauge", "speeds_up": "throttle",
}


def model_run(task, parameters, lights, faults):
    """The run as it should have gone.

    task, parameters, lights, faults: see calc.teaching.practice.begin

    Returns contract `model_run`. Raises CalcError as practice.begin does.
    """
    run, steps = practice.begin(task, parameters, lights, faults), []
    for act, signs in STEPS[task]:
        kind, to = act if act else (None, None)
        step = {"at_s": run["at_s"], "kind": kind, "to": to, "sign": signs[-1], "shows": True}
        steps.append(step)
        if act:
            run = practice.advance(run, {"kind": kind, "to": to})
        for sign in signs:
            run, shows = _watched(run, sign)
            if shows:
                continue
            step["sign"], step["shows"] = sign, False
            if PROOF_OF.get(sign) != "gauge" or run["train"]["tank_open"]:
                return {"steps": steps, "how": "stopped", "at_s": run["at_s"]}
            steps.append({"at_s": run["at_s"], "kind": "tank", "to": True, "sign": "pressure", "shows": True})
            run, _ = _watched(practice.advance(run, {"kind": "tank", "to": True}), "pressure")
    return {"steps": steps, "how": "finished", "at_s": run["at_s"]}


def proofs(task, parameters, lights, fault):
    """The proofs that contradict with a fault, from the first that fails to the act that is not done after it.

    task, parameters, lights: see calc.teaching.practice.begin
    fault: a code of calc.teaching.powertrain.FAULT_CODES

    Returns a list of codes of PROOFS. Raises CalcError as practice.begin does. Source: as the module says.
    """
    run, failed = practice.begin(task, parameters, lights, [fault]), []
    for act, signs in STEPS[task]:
        if failed and act == RISK:
            break
        if act:
            run = practice.advance(run, {"kind": act[0], "to": act[1]})
        for sign in signs:
            run, shows = _watched(run, sign)
            named = [lamp for lamp in ("engaged", "ok") if not run["shown"]["lights"][lamp]] if sign == "starts_lit" else [PROOF_OF.get(sign)]
            failed += [proof for proof in named if not shows and proof and proof not in failed]
    return failed


def alike(task, parameters, lights, fault):
    """The faults that show the same signs up to the stop, so that nothing seen or heard tells them apart.

    task, parameters, lights: see calc.teaching.practice.begin
    fault: a code of calc.teaching.powertrain.FAULT_CODES

    Returns a list of codes without the fault itself. Raises CalcError naming faults.
    """
    if fault not in powertrain.FAULT_CODES:
        raise CalcError("faults", "unknown", fault=str(fault))
    signs = _signs(model_run(task, parameters, lights, [fault]))
    return [
        other for other in powertrain.FAULT_CODES
        if other != fault and _signs(model_run(task, parameters, lights, [other])) == signs
    ]


def _signs(model):
    return [(step["sign"], step["shows"]) for step in model["steps"]]


def _watched(run, sign):
    """The run after a sign was waited for, and whether it showed; a look at the start has to last."""
    is_look = sign.startswith("starts_")
    waited_s = 0
    while waited_s < (HELD_S if is_look else LONGEST_WAIT_S):
        run = practice.advance(run, {"kind": "tick", "passed_s": TICK_S})
        waited_s += TICK_S
        if _shows(run, sign) != is_look:
            return run, not is_look
    return run, is_look


def _shows(run, sign):
    now = run["shown"]
    lit, heard = now["lights"], now["sounds"]
    if sign in ("clunk_pump", "clunk_road", "loads", "leans", "water", "exhaust"):
        return sign in heard
    return {
        "starts_dark": not lit["engaged"],
        "starts_lit": lit["engaged"] and lit["ok"],
        "starts_pumping": now["pressure_psi"] > outcome.SHOWS_PSI,
        "starts_raised": now["raised"],
        "silent": "exhaust" not in heard,
        "lamp_engaged": lit["engaged"],
        "lamp_ok": lit["ok"],
        "lamp_out": not lit["engaged"],
        "pressure": now["pressure_psi"] > outcome.SHOWS_PSI,
        "speeds_up": now["raised"],
        "slows": not now["raised"],
        "stands": now["speed_mph"] < STANDS_MPH,
        "eases": "leans" not in heard,
    }[sign]
