"""The steps of a call, each worked by hand for a rig of two lines: Crosslay asks 169.75 psi of the pump, Rear 2 x 2.5^2 x 2 = 25 psi and 75."""
import pytest

from calc.base.errors import CalcError
from calc.teaching import call
from site_src.content import units
from tests.unit.teaching import lines
from tests.unit.teaching.lines import CROSSLAY, ground

US = units.shown_in("US")
REAR = {**CROSSLAY, "name": "Rear", "hose": "attack-2.5", "end": {"kind": "fog", "flow": "250@US", "pressure": "75@US"}}
NEEDS = {"Crosslay": 169.75, "Rear": 100}
FLOWS = {"Crosslay": 150, "Rear": 250}
FLOOR_PSI = 4.34
SEEDS = 240


@pytest.fixture(scope="module")
def calls():
    """Calls of the rig, each as its steps by kind and the names of kinds in their order."""
    here = ground(CROSSLAY, REAR, tank="750@US", drive="midship")
    made = [call.steps(here, seed, US) for seed in range(SEEDS)]
    return [({step["question"]["kind"]: step for step in steps}, [step["question"]["kind"] for step in steps]) for steps in made]


def asked(calls, kind):
    return [(steps[kind], steps) for steps, _ in calls if kind in steps]


def codes(rows, *more):
    return [tuple(row[name] for name in ("code", *more)) for row in rows]


def dial(step, gauge):
    return next(dial for dial in step["dials"] if dial["gauge"] == gauge)


def test_the_order_of_a_call(calls):
    """Into pump, the first line, its supply, a change that this supply can have, a fault; each of them met."""
    assert {tuple(kinds) for _, kinds in calls} == {
        ("proof", "pump", supply, change, "look")
        for supply, change in (("lines", "second"), ("lines", "intake"), ("tank", "second"), ("tank", "tank_low"))
    }


@pytest.mark.parametrize(("right", "psi", "dark"), [("engaged", 50, ["engaged"]), ("ok", 50, ["ok", "throttle"]), ("gauge", 0, []), ("agree", 50, [])])
def test_into_pump(calls, right, psi, dark):
    """A dark engaged lamp beside a lit OK is a bulb; without pump gear OK and throttle are dark; a gauge at zero outweighs the lamps; else nothing contradicts."""
    steps = [step for step, _ in asked(calls, "proof") if step["question"]["answer"]["right"] == right]
    assert len(steps) > SEEDS / 8
    for step in steps:
        assert step["lamps"] == {lamp: lamp not in dark for lamp in ("engaged", "ok", "throttle")}
        assert [(each["gauge"], each["value"]) for each in step["dials"]] == [("master", psi)]
        assert step["question"]["facts"] == {} and step["question"]["answer"]["options"] == ["engaged", "ok", "gauge", "agree"]
        assert step["question"]["working"] == [{"code": f"proof_{right}", "facts": {}}]
        assert codes(step["question"]["habits"], "value") == ([] if right == "agree" else [("one_outweighs", "agree")])


def test_the_first_line(calls):
    """Two floors up or three, set on the master: one would be lost in the 5 psi that count as right."""
    for step, _ in asked(calls, "pump"):
        facts = step["question"]["facts"]
        assert step["question"]["answer"]["value"] == pytest.approx(NEEDS[facts["bed"]] + FLOOR_PSI * int(facts["floors"]))
        assert [(each["gauge"], each["value"]) for each in step["dials"]] == [("master", None)] and step["lamps"] is None
    assert {(step["question"]["facts"]["bed"], step["question"]["facts"]["floors"]) for step, _ in asked(calls, "pump")} == {
        (bed, floors) for bed in NEEDS for floors in "23"}


def test_its_supply(calls):
    """From a hydrant, its residual on the intake; from the tank, full."""
    for step, _ in asked(calls, "lines"):
        assert [(each["gauge"], each["text"]) for each in step["dials"]] == [("intake", step["question"]["facts"]["residual"])] and step["lamps"] is None
    for step, steps in asked(calls, "tank"):
        assert step["dials"][0]["value"] == 4 and len(step["dials"]) == 1
        assert step["question"]["facts"]["first"] == steps["pump"]["question"]["facts"]["bed"] and step["question"]["facts"]["second"] == ""


def test_a_second_line(calls):
    """To the same floor: the pump serves the one that needs more, the other is gated; the habits are those of two lines."""
    for step, steps in asked(calls, "second"):
        facts, first = step["question"]["facts"], steps["pump"]["question"]
        other = next(name for name in NEEDS if name != first["facts"]["bed"])
        up_psi = FLOOR_PSI * int(first["facts"]["floors"])
        low, high = sorted(psi + up_psi for psi in NEEDS.values())
        assert facts == {"first": first["facts"]["bed"], "second": other, "needs": str(round(NEEDS[other] + up_psi))}
        assert step["question"]["answer"]["value"] == pytest.approx(high)
        wrong = {"pressures_added": low + high, "pressures_averaged": (low + high) / 2, "other_line": low}
        assert {row["code"]: row["value"] for row in step["question"]["habits"]} == pytest.approx(wrong)
        assert [row["code"] for row in step["question"]["working"]] == ["gauge_master"]
        terms = step["question"]["working"][0]["facts"]
        assert (terms["first"], terms["second"]) == ("Crosslay", "Rear")
        assert (float(terms["first_needs"]), float(terms["second_needs"])) == (pytest.approx(high, abs=0.5), pytest.approx(low, abs=0.5))
        gauges = [("master", None)] if "tank" in steps else [("intake", steps["lines"]["dials"][0]["value"]), ("master", None)]
        assert [(each["gauge"], each["value"]) for each in step["dials"]] == gauges


def test_the_intake_falls(calls):
    """Handbooks: 20 psi stays at the intake. 5 to 15 is too low, 30 to 40 holds."""
    seen = set()
    for step, _ in asked(calls, "intake"):
        psi, question = dial(step, "intake")["text"], step["question"]
        right = "hold" if float(psi) >= 20 else "down"
        seen.add(psi)
        assert question["facts"] == {"limit": "20"} and question["answer"] == {"way": "chosen", "options": ["hold", "down", "up", "shut"], "right": right}
        assert question["working"] == [{"code": "intake_holds" if right == "hold" else "intake_low", "facts": {"intake": psi, "limit": "20"}}]
        more = ("gives_away", "down") if right == "hold" else ("main_collapses", "hold")
        assert codes(question["habits"], "value") == [("more_from_main", "up"), ("shut_untold", "shut"), more]
        assert len(step["dials"]) == 1
    assert seen == {"5", "10", "15", "30", "35", "40"}


def test_the_tank_runs_low(calls):
    """A quarter of 750 gal at 150 gpm is 1.25 minutes, at 250 gpm 0.75: a hydrant in seven tenths of it is reached, in half as much again it is not."""
    seen = set()
    for step, steps in asked(calls, "tank_low"):
        question, first = step["question"], steps["pump"]["question"]["facts"]["bed"]
        minutes = 187.5 / FLOWS[first]
        right = "reaches" if float(question["facts"]["needed"]) < minutes else "tell"
        assert question["facts"] == {"first": first, "flow": str(FLOWS[first]), "tank": "750", "needed": f"{minutes * (0.7 if right == 'reaches' else 1.5):.1f}"}
        assert question["answer"] == {"way": "chosen", "options": ["reaches", "tell", "shut_now"], "right": right}
        [row] = question["working"]
        terms = {name: row["facts"][name] for name in ("tank", "flow", "needed")}
        assert row["code"] == "tank_low" and terms == {name: question["facts"][name] for name in terms}
        assert float(row["facts"]["minutes"]) == pytest.approx(minutes, abs=0.051)
        assert codes(question["habits"], "value") == [("shut_untold", "shut_now")] + ([("whole_tank", "reaches")] if right == "tell" else [])
        assert [(each["gauge"], each["value"]) for each in step["dials"]] == [("tank", 1)]
        seen.add((first, right))
    assert len(seen) == 4


def test_the_fault_goes_on_from_there(calls):
    """Before it the gauges stood as the steps left them: 20 psi where the intake had fallen under it, else what it showed; the master at the second line's need."""
    for steps, kinds in calls:
        facts, first = steps["look"]["question"]["facts"], steps["pump"]["question"]
        held = dial(steps["intake"], "intake")["value"] if "intake" in steps else dial(steps["lines"], "intake")["value"] if "lines" in steps else 0
        intake_psi = 20 if "intake" in steps and held < 20 else held
        master = steps["second"]["question"]["answer"]["value"] if "second" in steps else first["answer"]["value"]
        assert facts["bed"] == first["facts"]["bed"]
        assert [float(facts[name]) for name in ("intake", "master", "line")] == [
            pytest.approx(psi, abs=0.51) for psi in (intake_psi, master, first["answer"]["value"])]


def test_half_the_calls_are_from_the_tank(calls):
    """Where the rig has one: 120 of 240, give or take four deviations of 7.7; and half of each have a change of their own."""
    counts = {kind: len(asked(calls, kind)) for kind in ("tank", "lines", "second", "intake", "tank_low")}
    assert abs(counts["tank"] - 120) < 31 and counts["lines"] == SEEDS - counts["tank"]
    assert abs(counts["second"] - 120) < 31
    lows = sum(step["question"]["answer"]["right"] == "down" for step, _ in asked(calls, "intake"))
    assert abs(lows - counts["intake"] / 2) < 4 * (counts["intake"] / 4) ** 0.5


def kinds(here, seed):
    return [step["question"]["kind"] for step in call.steps(here, seed, US)]


def test_a_rig_without_a_tank():
    """Is always on a hydrant."""
    assert {kinds(ground(CROSSLAY, REAR), seed)[2] for seed in range(40)} == {"lines"}


@pytest.mark.parametrize("beds", [[CROSSLAY], [CROSSLAY, {**CROSSLAY, "name": "Two", "length": "170@US"}], [CROSSLAY, {**REAR, "name": "Crosslay"}], [CROSSLAY, lines.GUN]])
def test_no_second_line(beds):
    """One bed alone, one that asks the same within 15 psi (10.5 less by 30 ft), one bed under two tips, or a gun that is piped to the pump and goes up no stairs: no change to another line."""
    assert all("second" not in kinds(ground(*beds, tank="750@US"), seed) for seed in range(60))


@pytest.mark.parametrize(("bed", "is_made"), [
    ({**CROSSLAY, "end": {**CROSSLAY["end"], "pressure": "155.25@US"}}, True), ({**CROSSLAY, "end": {**CROSSLAY["end"], "pressure": "155.3@US"}}, False), (lines.GUN, False),
])
def test_a_line_past_what_is_trained_on(bed, is_made):
    """225 psi is the most, here 155.25 and 69.75; and a call is of a line of hose."""
    here = ground(bed)
    if is_made:
        assert kinds(here, 3)
        return
    with pytest.raises(CalcError) as refusal:
        call.steps(here, 3, US)
    assert (refusal.value.field, refusal.value.code) == ("beds", "empty")
