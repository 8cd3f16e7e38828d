"""A card of four steps, one of each kind: what is refused and why, and what is written down of each step."""
import pytest

from calc.base.errors import CalcError

SMALL = {"anchor": "look", "steps": [
    {"id": "look", "kind": "confirm"}, {"id": "wait", "kind": "hold", "hold_s": 2}, {"id": "prime", "kind": "limit", "limit_s": {"unknown": 30}},
    {"id": "say", "kind": "ask", "answers": [{"id": "yes", "proves": ["seen"]}, {"id": "no"}], "reports": ["grinding"]}]}


def after(run, *events, sequence=SMALL):
    """The state after events, each (at_s, kind, step or None, more)."""
    state = run.unheld("shift.card", "start", sequence=sequence, rig={})
    for at_s, kind, step, more in events:
        event = {"at_s": at_s, "kind": kind, **({"step": step} if step else {}), **more}
        state = run.unheld("shift.card", "advance", state=state, event=event)
    return state


LOOKED = [(10, "seen", "look", {})]
HELD = [*LOOKED, (12, "hold", "wait", {}), *[(12 + 0.5 * count, "tick", None, {}) for count in range(1, 5)]]
WAITED = [*HELD, (15, "seen", "wait", {})]
PRIMED = [*WAITED, (16, "hold", "prime", {}), (20, "seen", "prime", {})]


@pytest.mark.parametrize(("before", "event", "field", "code", "facts"), [
    ([], (10, "seen", "wait", {}), "step", "not_offered", {"offered": "look"}), ([], (10, "seen", None, {}), "step", "not_offered", {"offered": "look"}),
    ([], (10, "not_seen", "wait", {}), "step", "not_offered", {"offered": "look"}), ([], (10, "hold", "look", {}), "step", "not_a_hold", {}),
    ([], (10, "report", "look", {"hazard": "grinding"}), "hazard", "not_offered", {}), ([], (10, "back", None, {}), "step", "no_step_before", {}),
    ([], (10, "not_short", None, {}), "event", "not_offered", {}),
    (LOOKED, (11, "seen", "wait", {}), "hold", "not_over", {"left_s": 2}), (HELD[:-1], (14, "seen", "wait", {}), "hold", "not_over", {"left_s": 0.5}),
    (WAITED, (16, "seen", "prime", {}), "hold", "not_begun", {}),
    (PRIMED, (21, "seen", "say", {}), "answer", "not_offered", {}), (PRIMED, (21, "seen", "say", {"answer": "maybe"}), "answer", "not_offered", {}),
    (PRIMED, (21, "report", "say", {"hazard": "steam"}), "hazard", "not_offered", {}),
    ([*PRIMED, (22, "danger", None, {})], (23, "seen", "say", {"answer": "yes"}), "step", "not_offered", {"offered": None}),
])
def test_what_is_not_offered_is_refused_and_why(run, before, event, field, code, facts):
    with pytest.raises(CalcError) as refusal:
        after(run, *before, event)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == (field, code, facts)


def done(step, at_s, took_s, answer=None):
    return {"step": step, "answer": answer, "at_s": at_s, "took_s": took_s}


def test_what_is_written_down(run):
    """Each step with its answer, when, and how long after it was offered; of the first nobody knows, nor after a clock that was set back."""
    state = after(run, *PRIMED, (23, "seen", "say", {"answer": "yes"}))
    assert state["confirmed"] == [done("look", 10, None), done("wait", 15, 5), done("prime", 20, 5), done("say", 23, 3, "yes")]
    assert (state["status"], state["position"], state["hold"], state["facts"], state["offered_s"]) == ("done", 4, None, ["seen"], 23)
    assert (state["offer"]["step"], state["offer"]["number"], state["offer"]["of"]) == (None, 5, 4)
    assert after(run, *PRIMED, (15, "seen", "say", {"answer": "no"}))["confirmed"][-1] == done("say", 15, None, "no")
    assert after(run, *PRIMED, (20, "seen", "say", {"answer": "no"}))["confirmed"][-1] == done("say", 20, 0, "no")


def test_how_far_it_is(run):
    state = after(run, *LOOKED)
    assert (state["offer"]["number"], state["offer"]["of"], state["offer"]["about"]) == (2, 4, 4)


def test_back_forgets_the_step_before(run):
    """And its hold begins anew."""
    state = after(run, *WAITED, (16, "hold", "prime", {}), (17, "back", None, {}))
    assert (state["position"], state["hold"], state["confirmed"], state["offered_s"]) == (1, None, [done("look", 10, None)], 17)


def test_a_limit_that_is_over_stops(run):
    """At its thirtieth second, however the clock came there."""
    for at_s, status in ((45.9, "running"), (46, "stopped")):
        state = after(run, *WAITED, (16, "hold", "prime", {}), (at_s, "tick", None, {}))
        assert state["status"] == status
    assert state["stopped"] == {"reason": "time_up", "step": "prime", "order": None, "at_s": 46}


@pytest.mark.parametrize(("event", "stopped"), [
    ((21, "not_seen", "say", {}), {"reason": "not_seen", "step": "say", "order": None, "at_s": 21}),
    ((21, "report", "say", {"hazard": "grinding"}), {"reason": "repeat", "step": "say", "order": "grinding", "at_s": 21}),
    ((21, "danger", None, {}), {"reason": "danger", "step": "say", "order": "moved", "at_s": 21, "by_touch": True}),
])
def test_why_it_stopped(run, event, stopped):
    assert after(run, *PRIMED, event)["stopped"] == stopped


@pytest.mark.parametrize(("look", "stopped"), [
    ({"order": "moved"}, {"reason": "danger", "order": "moved"}), ({"repeat": True, "order": "pump_fails"}, {"reason": "repeat", "order": "pump_fails"}),
    ({"order": "steam"}, {"reason": "not_seen", "order": "steam"})])
def test_what_it_means_that_a_sign_was_not_seen(run, look, stopped):
    """That the rig moved, that the shift failed and may be tried once more, or no more than that: each step says which, and its order."""
    sequence = {**SMALL, "steps": [{**SMALL["steps"][0], **look}, *SMALL["steps"][1:]]}
    assert after(run, (21, "not_seen", "look", {}), sequence=sequence)["stopped"] == {"step": "look", "at_s": 21, **stopped}


def test_a_long_noise_ends_it(run):
    """Teeth ground and it was no short noise: out of service, where and by what order it stopped."""
    state = after(run, *PRIMED, (21, "report", "say", {"hazard": "grinding"}))
    assert state["offer"]["can_say_long"]
    state = after(run, *PRIMED, (21, "report", "say", {"hazard": "grinding"}), (25, "not_short", None, {}))
    assert state["stopped"] == {"reason": "failed_twice", "step": "say", "order": "grinding", "at_s": 25}
    assert state["offer"]["is_out"]


def test_a_new_run_begins_at_the_first_step(run):
    state = after(run, *PRIMED, (25, "begin_again", None, {}))
    assert (state["position"], state["confirmed"], state["status"]) == (0, [], "running")


def test_danger_is_said_once(run):
    """The first time counts; where no step was shown it was no touch of the card's key."""
    first = after(run, *PRIMED, (21, "danger", None, {}))["stopped"]
    assert after(run, *PRIMED, (21, "danger", None, {}), (30, "danger", None, {}))["stopped"] == first
    assert after(run, *PRIMED, (21, "not_seen", "say", {}), (22, "danger", None, {}))["stopped"]["by_touch"] is False


@pytest.mark.parametrize("damage", [
    *[{"without": name} for name in ("sequence", "rig", "position", "status", "facts", "confirmed", "hold", "stopped", "repeats", "left_s", "offered_s")],
    {"sequence": {}}, {"sequence": {"steps": "look"}}, {"facts": "seen"}, {"confirmed": {}}, {"rig": []}, {"position": "1"}, {"position": -1}, {"position": 5}])
def test_a_state_that_lost_a_part_is_refused(run, damage):
    state = {**after(run), **damage}
    state.pop(state.pop("without", None), None)
    with pytest.raises(CalcError) as refusal:
        run.unheld("shift.card", "advance", state=state, event={"kind": "tick", "at_s": 1})
    assert (refusal.value.field, refusal.value.code) == ("state", "damaged")


@pytest.mark.parametrize("event", [None, [], {}, {"kind": ["seen"], "at_s": 1}, {"kind": "fly", "at_s": 1}])
def test_an_event_that_is_none_is_refused(run, event):
    with pytest.raises(CalcError) as refusal:
        run.unheld("shift.card", "advance", state=after(run), event=event)
    assert (refusal.value.field, refusal.value.code) == ("event", "unknown")


RIG_CARD = {**SMALL, "rig": {"drive": ["midship", "pto", "unknown"]}, "fits": {"drive": ["midship"]}}


@pytest.mark.parametrize(("rig", "code", "facts"), [
    ({"drive": "sail"}, "unknown_answer", {"question": "drive"}), ({"wheels": "six"}, "unknown_answer", {"question": "wheels"}), ({"drive": "pto"}, "other_card", {})])
def test_a_rig_of_another_card_is_refused(run, rig, code, facts):
    with pytest.raises(CalcError) as refusal:
        run.unheld("shift.card", "start", sequence=RIG_CARD, rig=rig)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("rig", code, facts)
    assert run.unheld("shift.card", "start", sequence=RIG_CARD, rig={"drive": "midship"})["rig"] == {"drive": "midship"}


@pytest.mark.parametrize("sequence", [None, [], "look"])
def test_what_is_no_card_is_refused(run, sequence):
    with pytest.raises(CalcError) as refusal:
        run.unheld("shift.card", "start", sequence=sequence, rig={})
    assert (refusal.value.field, refusal.value.code) == ("sequence", "damaged")
