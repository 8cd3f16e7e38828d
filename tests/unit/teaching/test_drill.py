"""The drill: every question has one right answer, worked out here from what the question says and the handbook's own formulas."""
import math

import pytest

from calc.base.errors import CalcError
from calc.teaching import drill_line
from site_src.content import catalogue, data, fleet, units
from site_src.routes import drill as drill_routes
from tests.sampling import seeds

SEEDS = {"cpython": 10000, "micropython": 200}
RIGS = fleet.load()
PSI = {"US": 1, "imperial": 1, "SI": 6.894757, "bar": 0.06894757}  # of a unit in one psi: NIST SP 811
GPM = {"US": 1, "imperial": 0.832674, "SI": 3.785412, "bar": 3.785412}
FEET = {"US": 1, "imperial": 1, "SI": 0.3048, "bar": 0.3048}
INHG_PSI = 0.4912  # psi in one inch of mercury: NIST SP 811
# what lights a lamp, as the trade teaches it: written from the words of the lights page, not from the data
LAMPS = {
    "engaged": lambda switch, gear, brake: switch,
    "ok": lambda switch, gear, brake: switch and gear == "pump_gear" and brake,
    "throttle": lambda switch, gear, brake: brake and (gear == "neutral" or (switch and gear == "pump_gear")),
}
NAMES = {(): "none", ("throttle",): "throttle", ("engaged",): "engaged", ("engaged", "throttle"): "engaged_throttle",
         ("engaged", "ok", "throttle"): "engaged_ok_throttle"}


def ground_of(run, name, system):
    profile = RIGS[name]
    at_hand = run.unheld("rig.profile", "at_hand", profile=profile, shelf=catalogue.shelf(), units=units.shown_in(system))
    return {**{key: at_hand[key] for key in ("shelf", "rig", "beds")}, **drill_routes.tables(),
            "tips": [tip for tip in catalogue.tip_choices() if tip["family"] == units.family(system)]}


def number(text):
    return float(text.replace(",", ""))


def psi(text, system):
    return number(text) / PSI[system]


def gpm(text, system):
    return number(text) / GPM[system]


def feet(text, system):
    return number(text) / FEET[system]


def bed_of(ground, name):
    return next(bed for bed in ground["beds"] if bed["name"] == name)


def friction(ground, hose, flow, length):
    """C Q^2 L, or the department's own: 2Q^2 + Q, gpm x N / 10 - 10, by hand from the study cards."""
    figures = ground["shelf"]["hoses"][hose]
    return figures["coefficient"] * (flow / 100) ** 2 * length / 100


def by_hand(question, ground, system):
    """The answer in psi, gpm, minutes or inHg, by the formula of the handbook, from the question's own words."""
    facts, kind = question["facts"], question["kind"]
    if kind == "pump":
        bed = bed_of(ground, facts["bed"])
        lost = friction(ground, bed["hose"], gpm(facts["flow"], system), feet(facts["length"], system)) if bed.get("hose") else 0
        added = sum(psi(facts[name], system) for name in ("added", "device") if facts[name])
        return psi(facts["nozzle"], system) + lost + 0.434 * int(facts["floors"]) * feet(facts["floor"], system) + added
    if kind == "friction":
        hose = next(name for name, figures in ground["shelf"]["hoses"].items() if figures["label"] == facts["hose"])
        return friction(ground, hose, gpm(facts["flow"], system), feet(facts["length"], system))
    if kind == "gauges":
        return psi(facts["first_needs" if facts["gauge"] == "master" else "second_needs"], system)
    if kind == "tank":
        flow = sum(number(facts[name]) for name in ("first_flow", "second_flow") if facts[name])
        return number(facts["tank"]) / flow
    if kind == "tip":
        listed = [row["id"] for row in ground["tips"] if row["label"] == facts["tip"]]
        amount, _, unit = (listed or [f"{facts['tip']}@{'US' if units.family(system) == 'customary' else 'SI'}"])[0].partition("@")
        inches = float(amount) / (1 if unit == "US" else 25.4)
        return 29.7 * inches ** 2 * math.sqrt(psi(facts["pressure"], system))  # the fireground's form of 29.84 c d^2 sqrt(p)
    if kind == "floors":
        return 0.434 * (int(facts["floor"]) - 1) * feet(facts["height"], system)
    if kind == "net":
        discharge, intake = psi(facts["discharge"], system), number(facts["intake"])
        if facts["place"] == "hydrant":
            return discharge - intake / PSI[system]
        return discharge + (intake * INHG_PSI if system in ("US", "imperial") else intake / PSI[system])
    if kind == "vacuum":
        return feet(facts["lift"], system) * 0.434 / INHG_PSI
    if kind == "rated":
        return number(facts["rated"]) / GPM[system] * (0.7 if 190 < psi(facts["net"], system) < 215 else 0.5)
    raise AssertionError(kind)


def right_option(question, system):
    """The option that is right, by the rule as the trade says it."""
    facts, kind = question["facts"], question["kind"]
    if kind == "lines":
        percent = 100 * (number(facts["static"]) - number(facts["residual"])) / number(facts["static"])
        return "3" if percent <= 10 else "2" if percent <= 15 else "1" if percent <= 25 else "0"
    if kind == "colors":
        flow = gpm(facts["flow"], system)
        return "AA" if flow >= 1500 else "A" if flow >= 1000 else "B" if flow >= 500 else "C"
    if kind == "lamps":
        state = (facts["switch"] == "closed", facts["gear"], facts["brake"] == "set")
        return NAMES[tuple(lamp for lamp, is_lit in LAMPS.items() if is_lit(*state))]
    if kind == "proves":
        return {"engaged": "switch", "ok": "switch_gear_brake", "throttle": "gear_brake_or_neutral"}[facts["lamp"]]
    if kind == "first_look":  # trade articles: master as it was, the hose; low or gone with the intake gone too, supply; else the pump
        assert not (facts["master"] == "none" and facts["line"] == "above"), "water runs from the pump to the line: without pressure there it has none"
        if facts["master"] == "usual":
            return "discharge"
        if facts["line"] == "below":
            return "line"
        return "pump" if facts["intake"] == "steady" else "supply"
    raise AssertionError(kind)


def judge(run, question, reply, system="US"):
    return run("teaching.drill", "judged", question=question, reply=reply, boxes={}, card="x", on_ms=0, offset_min=0, units=units.shown_in(system))


def check(run, question, ground, system):
    answer = question["answer"]
    if answer["way"] == "chosen":
        assert answer["right"] == right_option(question, system), question
        assert len(set(answer["options"])) == len(answer["options"]) and answer["right"] in answer["options"]
        return
    off = abs(by_hand(question, ground, system) - answer["value"])
    assert off <= 0.6 * answer["within"], (off, question)
    for habit in question["habits"]:
        assert abs(habit["value"] - answer["value"]) > answer["within"], question


@pytest.mark.parametrize("system", ["US", "SI", "bar", "imperial"])
def test_every_question_has_one_right_answer(run, python, system):
    """Ten thousand seeds on the desk, a part of them a run, and two hundred on the phone's Python: the answer is the handbook's within what the question allows, and no habit's."""
    names = ["tollgate-engine-1", "northmere-pumper-4", "quarry-hill-tanker-3"]
    seen = set()
    for name in names:
        ground = ground_of(run, name, system)
        cards = run.unheld("teaching.drill", "cards", ground=ground, units=units.shown_in(system))
        count = SEEDS[python] // (4 * len(names))
        for seed in seeds(count) if python == "cpython" else range(count):
            card = cards[seed % len(cards)]
            question = run.unheld("teaching.drill", "question", ground=ground, card=card, seed=seed, units=units.shown_in(system))
            seen.add(question["kind"])
            check(run, question, ground, system)
    assert seen >= {"pump", "friction", "tip", "floors", "lines", "colors", "net", "vacuum", "rated", "first_look"}


@pytest.mark.parametrize(("rule", "rows"), [
    # study cards: 2Q^2 + Q by the 100 ft of 2 1/2 in: at 250 gpm 2 x 6.25 + 2.5 = 15 psi; at 300 gpm 21
    ("two_q_squared_plus_q", {250: 15, 300: 21}),
    # gpm x 1 / 10 - 10 for 2 1/2 in: at 250 gpm 15, at 300 gpm 20
    ("gpm_times_n", {250: 15, 300: 20}),
])
def test_friction_by_the_departments_rule(run, rule, rows):
    """Where the department has a rule of its own, a question asks for that rule's figure and its working says so."""
    ground = ground_of(run, "tollgate-engine-1", "US")
    ground["shelf"]["rule"] = rule
    met = set()
    for seed in range(60):
        question = run.unheld("teaching.drill", "question", ground=ground, card="friction:attack-2.5", seed=seed, units=units.shown_in("US"))
        flow = number(question["facts"]["flow"])
        if flow in rows:
            met.add(flow)
            assert question["working"][0]["code"] == f"friction_{rule}"
            assert question["answer"]["value"] == pytest.approx(rows[flow] * number(question["facts"]["length"]) / 100)
    assert met


def test_habits_are_named(run):
    """By hand, 1 in tip at 50 psi, 29.7 x 1 x 7.07 = 210 gpm: an answer by another way names the habit; a near one is right; a far one is just wrong."""
    ground = ground_of(run, "tollgate-engine-1", "US")
    question = next(question for seed in range(200) for question in [run(
        "teaching.drill", "sitting", ground=ground, boxes={}, on_ms=0, offset_min=0, seed=seed, units=units.shown_in("US"))["questions"]] for question in question
        if question["kind"] == "tip" and question["facts"]["tip"] == "1 1/8")
    # 29.7 x 1.125^2 x sqrt 50 = 265.8; without the square 29.7 x 1.125 x 7.07 = 236.3; without the root 29.7 x 1.266 x 50 = 1879
    assert [judge(run, question, text)["habit"] for text in ("266", "236", "1880", "500")] == [None, "diameter_not_squared", "no_root", None]
    assert [judge(run, question, text)["is_right"] for text in ("266", "260", "236", "500")] == [True, True, False, False]


@pytest.mark.parametrize(("reply", "code"), [("", "empty"), ("much", "not_a_number")])
def test_what_is_no_answer_is_refused(run, reply, code):
    """A slip of the thumb is no wrong answer: it is refused, and nothing moves."""
    ground = ground_of(run, "tollgate-engine-1", "US")
    question = run.unheld("teaching.drill", "question", ground=ground, card="tip", seed=1, units=units.shown_in("US"))
    with pytest.raises(CalcError) as refusal:
        judge(run, question, reply)
    assert (refusal.value.field, refusal.value.code) == ("reply", code)


def test_same_seed_same_question_on_both(run, phone):
    """A sitting is the same on the desk and on the phone."""
    ground = ground_of(run, "tollgate-engine-1", "US")
    sitting = run("teaching.drill", "sitting", ground=ground, boxes={}, on_ms=1.7e12, offset_min=-300, seed=77, units=units.shown_in("US"))
    assert len(sitting["cards"]) == len(set(sitting["cards"])) == 5
    assert len({card.split(":")[0] for card in sitting["cards"]}) == 5  # a kind each, the first evening
    again = run("teaching.drill", "sitting", ground=ground, boxes={}, on_ms=1.7e12, offset_min=-300, seed=77, units=units.shown_in("US"))
    assert again == sitting
    with pytest.raises(CalcError):
        run.unheld("teaching.drill", "question", ground=ground, card="pump:99", seed=1, units=units.shown_in("US"))


def test_every_habit_and_working_has_its_words(run):
    """Whatever a question may say there are words for, in both languages."""
    ground = ground_of(run, "tollgate-engine-1", "US")
    cards = run.unheld("teaching.drill", "cards", ground=ground, units=units.shown_in("US"))
    for language in data.languages():
        words = data.load(f"words/{language}/drill")
        for seed in range(120):
            question = run.unheld("teaching.drill", "question", ground=ground, card=cards[seed % len(cards)], seed=seed, units=units.shown_in("US"))
            assert question["kind"] in words["kind"]
            assert {row["code"] for row in question["habits"]} <= set(words["habit"])
            assert {row["code"] for row in question["working"]} <= set(words["working"])


@pytest.mark.parametrize(("most", "test_psi", "is_asked"), [("", None, True), ("500@US", None, True), ("499@US", None, False), ("1900@SI", None, True), ("", 300, True), ("", 90, False)])
def test_a_stopped_line_is_not_asked_about(most, test_psi, is_asked):
    """A gun of 500 gpm at 100 psi on no hose: asked unless it is over its device's limit (500 gpm is 1,893 L/min), or its hose's test pressure is reached.

    By hand; the stops are those of Pressure, "its maker's limit comes first".
    """
    shelf = {"hoses": {"piped": {"label": "", "coefficient": 1, "size_in": None, "test_psi": test_psi}}, "crews": {"2": {"limit_lbf": 60}}, "appliances": {"master": []}}
    bed = {"name": "Gun", "device": "master", "end": {"kind": "fog", "flow": "500@US", "pressure": "100@US"}, "device_most": most}
    found = drill_line.usable({"shelf": shelf, "rig": {}, "beds": [bed], "tips": []}, units.shown_in("US"))
    assert [place for place, _ in found] == ([0] if is_asked else [])
