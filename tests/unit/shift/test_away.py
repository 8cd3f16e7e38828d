"""A shift card out of sight: a glance, twenty minutes, two hours; and answers faster than the eye. Times are common practice."""
import pytest

from calc.base.errors import CalcError
from site_src.content import data
from tests.unit.shift.hand import RIG, Hand

MINUTE_S = 60


def left(run, minutes, card="scene", step="pump"):
    """A card that was left at a step and is in sight again after so many minutes."""
    hand = Hand(run, card).see_until(step)
    gone_s = hand.at_s
    hand.at_s += minutes * MINUTE_S
    return hand.send("resume", left_s=gone_s)


@pytest.mark.parametrize("minutes", [0, 0.05, 5, 19.9])
def test_whoever_looked_away_looks_again(run, minutes):
    """However short it was, idle, neutral, brake and zero are asked for before the selector moves."""
    hand = left(run, minutes)
    assert (hand.offer["wanted"], hand.offer["step"], hand.offer["again"]) == ("pump", "idle", True)
    asked = []
    while hand.offer["again"]:
        asked.append(hand.offer["step"])
        hand.see()
    assert asked == ["idle", "neutral", "brake", "zero"]


def test_no_foot_comes_off_before_the_brake_is_seen(run):
    """Who was away from the step that takes the foot off sees the parking brake set first (common practice)."""
    hand = left(run, 10, step="speedometer")
    assert (hand.offer["wanted"], hand.offer["again"]) == ("speedometer", True)
    asked = []
    while hand.offer["again"]:
        asked.append(hand.offer["step"])
        hand.see()
    assert "brake" in asked and hand.offer["step"] == "speedometer"


@pytest.mark.parametrize("minutes", [20.1, 119, -1])
def test_after_twenty_minutes_it_asks_first(run, minutes):
    """Nothing can be confirmed until a person has chosen: a new run, or this one. A clock that was set back tells nothing."""
    hand = left(run, minutes)
    assert hand.offer["step"] is None and hand.offer["can_go_on"] and hand.offer["can_begin_again"]
    for kind in ("look_again", "start_over", "back"):
        with pytest.raises(CalcError):
            hand.send(kind)
    with pytest.raises(CalcError):
        hand.send("seen", step="pump")
    assert hand.send("go_on").offer["wanted"] == "pump"
    assert hand.offer["again"] and hand.offer["step"] == "idle"


def test_after_twenty_minutes_what_was_put_in_place_is_asked_too(run):
    """Chocks, crews and a source that was shut may be others by then."""
    for minutes, stand in ((5, True), (21, False)):
        hand = left(run, minutes, "road", "centre_back")
        assert {"wheels_chocked", "crews_told", "source_shut", "intakes_closed"} <= set(hand.state["facts"]) or not stand
        assert not stand or hand.offer["step"] == "idle_cab"
        if not stand:
            assert not {"wheels_chocked", "crews_told", "source_shut", "intakes_closed", "bleeders_open"} & set(hand.state["facts"])
            assert hand.send("go_on").offer["step"] == "tell"


@pytest.mark.parametrize("minutes", [1, 30, 180])
def test_a_card_that_was_not_begun_asks_nothing(run, minutes):
    """Nothing was seen yet that may be another by now."""
    hand = Hand(run, "scene")
    hand.at_s += minutes * MINUTE_S
    hand.send("resume", left_s=1000)
    assert hand.offer["step"] == "full_stop" and not hand.offer["can_go_on"]


def test_the_other_answer_is_a_new_run(run):
    """The offered act begins at the first step."""
    hand = left(run, 30).send("begin_again")
    assert hand.offer["step"] == "full_stop" and hand.state["confirmed"] == []


def test_after_two_hours_it_is_a_new_run(run):
    """Nothing of another day's run is taken up."""
    hand = left(run, 121)
    assert hand.offer["step"] == "full_stop" and hand.state["confirmed"] == [] and hand.state["facts"] == []


def test_two_hours_do_not_clear_a_failed_shift(run):
    """What failed before still counts in the new run."""
    hand = Hand(run, "scene").see_until("pump").send("not_seen", step="pump")
    gone_s, hand.at_s = hand.at_s, hand.at_s + 3 * 3600
    hand.send("resume", left_s=gone_s).see_until("pump").send("not_seen", step="pump")
    assert hand.state["stopped"]["reason"] == "failed_twice"


def test_danger_is_there_while_it_asks(run):
    """A rig that moves stops the card also before anybody has chosen."""
    hand = left(run, 30).send("danger")
    assert hand.state["stopped"]["reason"] == "danger" and hand.offer["is_out"] and not hand.offer["can_go_on"]


def test_a_first_step_asks_nothing(run):
    """Where nothing was confirmed, nothing is asked, whatever the age."""
    hand = Hand(run, "scene")
    hand.at_s += 86400
    assert hand.send("resume", left_s=hand.at_s - 86400).offer["step"] == "full_stop"


@pytest.mark.parametrize("left_s", [None, "noon", [1]])
def test_a_time_that_is_none_is_refused(run, left_s):
    """Whoever was away says since when."""
    with pytest.raises(CalcError) as refused:
        Hand(run, "scene").see_until("idle").send("resume", left_s=left_s)
    assert (refused.value.field, refused.value.code) == ("left_s", "not_a_time")


@pytest.mark.parametrize(("wall_s", "steady_s", "is_sleep"), [
    (1, 1, False), (4.9, 4.9, False), (5.1, 5.1, True),  # timers stood still
    (600, 1, True), (1, 600, True),  # a clock that sleeps with the phone, and one that does not
    (-4, 1, False), (-3600, 1, True),  # the clock was set back: nobody knows
])
def test_a_screen_that_slept(run, wall_s, steady_s, is_sleep):
    """Two beats of a page that part by over five seconds, on either clock, mean that nobody saw the card."""
    assert run("shift.away", "slept", wall_s=wall_s, steady_s=steady_s) is is_sleep


@pytest.mark.parametrize(("took_s", "words", "quick"), [
    (1.9, 20, ["brake"]), (2, 20, []), (0.1, 20, ["brake"]), (None, 20, []), (0.1, 0, []),  # by hand: 20 words at 10 a second
])
def test_faster_than_it_can_be_read(run, took_s, words, quick):
    """Skimmed at 600 words a minute, a step of 20 words takes two seconds."""
    records = [{"step": "brake", "took_s": took_s}, {"step": "idle", "took_s": 60}]
    assert run("shift.pace", "too_quick", records=records, words={"brake": words, "idle": 20}) == quick


@pytest.mark.parametrize(("status", "took_s", "unseen"), [
    ("done", [None, 60, 0.1], True), ("done", [None, 60, 60], False),  # the card's own rule: one step that was not read, and it does not count
    ("running", [None, 0.1, 0.1], True), ("running", [None, 0.1, 60], False),  # left before its end: nothing was read, or something was
    ("running", [None], False), ("running", [], False), ("stopped", [None, 0.1, 0.1], False),  # a stop is a stop however quickly it came
])
def test_a_run_in_which_nothing_could_have_been_seen(run, status, took_s, unseen):
    """A finished run wants every step read; one that was left is marked where none was."""
    records = [{"step": f"s{place}", "took_s": each} for place, each in enumerate(took_s)]
    quick = run("shift.pace", "too_quick", records=records, words={record["step"]: 20 for record in records})
    assert run("shift.pace", "is_unseen", status=status, records=records, quick=quick) is unseen


def test_a_run_that_was_hurried_names_its_steps(run):
    """The time from a step's being shown to its answer is written down; a second look does not make a read step quick."""
    hand = Hand(run, "scene").see()
    hand.at_s += 30
    hand.see().send("back")
    hand.at_s += 0.2
    hand.send("seen", step=hand.offer["step"])
    took = {record["step"]: record["took_s"] for record in hand.state["confirmed"]}
    assert took["full_stop"] is None, "the first step was shown before any clock"
    assert took["retarder"] == pytest.approx(0.2), "stepping back takes the answer away, and the time with it"
    hand.see().send("resume")
    hand.at_s += 60
    while hand.offer["again"]:
        hand.see()
    assert all(record["took_s"] is None or record["took_s"] >= 0 for record in hand.state["confirmed"])


def test_every_zero_is_held():
    """Whatever says that the speedometer stands at zero waits for at least four seconds (a pump maker's manual)."""
    for step in data.steps().values():
        if "speed_zero" in step.get("proves", ()):
            assert step["kind"] == "hold" and step["hold_s"] >= 4, step["id"]


def test_every_shift_to_road_needs_a_dead_source():
    """Whatever moves a rig toward road waits for its source, intakes and bleeders; a selector for the gauges too."""
    for name in ("centre_back", "road", "road_electric", "road_lever"):
        assert {"source_shut", "intakes_closed", "bleeders_open", "pressure_zero"} <= set(data.steps()[name]["needs"])
    for name in ("pto_off", "front_out"):
        assert {"source_shut", "intakes_closed", "bleeders_open"} <= set(data.steps()[name]["needs"])


def test_every_into_pump_card_sets_what_holds_the_pressure():
    """Governor, relief valve or a hand: each card that ends in pump asks and sets it, and the tank fill is shut to prime."""
    for card in ("scene", "bay"):
        names = [step["id"] for step in data.card_steps(card)]
        assert {"which_pressure_control", "governor", "relief_ready", "by_hand", "relief_set"} <= set(names)
        assert names.index("prime") < names.index("circulate")
    scene = [step["id"] for step in data.card_steps("scene")]
    assert scene.index("line_told") < scene.index("charge") < scene.index("keep_moving")


@pytest.mark.parametrize(("card", "control", "slow"), [
    ("scene", "air", ["wheels_chocked", "crews_told", "pump_light", "ok_light", "throttle_ready", "pressure_seen", "air_up"]),
    ("scene", "electric", ["volts_up"]),
    ("hydrant", "air", ["air_bled"]),
    ("road", "air", ["source_shut", "intakes_closed", "bleeders_open", "lines_bled", "pump_lights_out"]),
])
def test_what_may_be_another_after_twenty_minutes(run, card, control, slow):
    """Chocks, valves, crews, lamps and gauges: they stand after a short look away, and are seen again after twenty minutes, at whatever step it was (common practice)."""
    hand, met = Hand(run, card, {**RIG, "shift_control": control}), set()
    while hand.offer["step"]:
        stood = {fact for fact in slow if fact in hand.state["facts"]}
        if stood - met or not hand.state["facts"]:
            for minutes, is_left in ((20, True), (20.02, False)):
                away = Hand(run, card)
                away.state, away.at_s = hand.state, hand.at_s + minutes * MINUTE_S
                assert {fact for fact in stood if fact in away.send("resume", left_s=hand.at_s).state["facts"]} == (stood if is_left else set())
        met |= stood
        hand.see()
    assert met == set(slow)


@pytest.mark.parametrize(("away_s", "asks"), [
    (-5, "look"), (-5.1, "ask"), (0, "look"), (1200, "look"), (1200.1, "ask"), (7200, "ask"), (7200.1, "new_run"),
])
def test_how_long_is_long(run, away_s, asks):
    """Twenty minutes and two hours are still the shorter; a clock that went back by the five seconds that two clocks may part is none."""
    assert run("shift.away", "kind", at_s=10000, left_s=10000 - away_s) == asks


@pytest.mark.parametrize(("wall_s", "steady_s", "has_slept"), [(5, 5, False), (5.1, 1, True), (1, 5.1, True), (-5, 1, False), (-5.1, 1, True)])
def test_a_page_that_slept(run, wall_s, steady_s, has_slept):
    """More than five seconds between two beats, by either clock; a clock that was set back by more counts too."""
    assert run("shift.away", "slept", wall_s=wall_s, steady_s=steady_s) is has_slept
