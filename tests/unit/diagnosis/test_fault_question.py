"""Several signs asked for at once: when, with which answers, and what such a look tells."""
import pytest

from tests.unit.diagnosis.dialogue import BASE

GLANCE = {"role": "operator", "engine": ["idle"], "effort": 1, "danger": 0}
QUESTION = {"id": "needle", "answers": [{"id": "low", "seen": ["low"]}, {"id": "usual", "seen": []}, {"id": "high", "seen": ["high"]}]}


def base(**changed):
    """Three causes of one weight: two told by the needle, one by a lamp."""
    shows = {"one": ["low"], "two": ["high"], "three": ["lamp"]}
    return {"signs": [{"id": name, **GLANCE, **changed.get(name, {})} for name in ("lamp", "low", "high")],
            "causes": [{"id": name, "likelihood": "common", "shows": signs} for name, signs in shows.items()],
            "questions": [QUESTION], "excludes": [], "facts": {}}


def next_check(run, knowledge, signs=None, engine="idle"):
    return run("diagnosis.fault", "next_check", knowledge=knowledge, signs=signs or {}, role="operator", engine=engine, questions=0)


@pytest.mark.parametrize(
    ("shares", "odds", "bits"),
    [
        # by hand: 1 bit in the answer, of which H(1/4) = 0.811278 is left with either cause
        ([1, 1], [[3, 1], [1, 3]], 0.188722),
        # three causes, three answers that all but name them: log2(3) = 1.584963
        ([2, 2, 2], [[1, 1e-12, 1e-12], [1e-12, 1, 1e-12], [1e-12, 1e-12, 1]], 1.584963),
        ([5, 1], [[1, 1, 2], [2, 2, 4]], 0),  # answers in the same shares tell nothing
    ],
)
def test_what_a_question_tells(run, shares, odds, bits):
    """Mutual information of the answer and the cause, by its definition."""
    assert run("diagnosis.likelihood", "answer_gain_bits", shares=shares, odds=odds) == pytest.approx(bits, abs=1e-5)


def test_one_question_for_two_signs(run):
    """The question tells two causes apart at once and comes before the lamp, which tells one."""
    told = next_check(run, base())
    assert (told["question"], told["sign"], told["answers"]) == ("needle", "low", ["low", "usual", "high"])
    told = next_check(run, base(low={"effort": 3, "danger": 3}, high={"effort": 3, "danger": 3}))  # 0.57 bits dearer
    assert (told["question"], told["sign"], told["answers"]) == (None, "lamp", [])


@pytest.mark.parametrize(
    ("signs", "question", "answers"),
    [
        ({"low": "not_seen"}, "needle", ["usual", "high"]),
        ({"low": "not_seen", "high": "not_seen"}, None, []),
        ({"low": "unknown"}, None, []),  # it was asked, and nobody could tell
    ],
)
def test_what_is_known_is_not_asked_again(run, signs, question, answers):
    """An answer that is ruled out is not offered; where one is given, the question is done."""
    told = next_check(run, base(lamp={"effort": 2}), signs)
    assert (told["question"], told["answers"]) == (question, answers)
    assert told["sign"] not in signs


def test_seen_ends_its_question(run):
    """With one of its signs seen the others are not asked for: one alone can be true."""
    knowledge = base()
    knowledge["causes"] = [{"id": "one", "likelihood": "common", "shows": ["low", "lamp"]}, {"id": "two", "likelihood": "common", "shows": ["high", "lamp"], "may": ["low"]}]
    assert next_check(run, knowledge, {"low": "seen"})["sign"] == "lamp"
    assert next_check(run, knowledge, {"low": "seen", "lamp": "unknown"})["sign"] is None


def test_a_rig_gives_the_answers_it_can(run):
    """What a rig cannot show is no answer of it; a question that is left with one answer is none."""
    knowledge = base(low={"applies": {"drive": ["midship"]}})
    knowledge["questions"] = [QUESTION, {"id": "lamps", "answers": [{"id": "lit", "seen": ["lamp"]}, {"id": "low", "seen": ["low"]}]}]
    questions = run("diagnosis.fault", "for_rig", knowledge=knowledge, rig={"drive": "pto"})["questions"]
    assert [(each["id"], [answer["id"] for answer in each["answers"]]) for each in questions] == [("needle", ["usual", "high"])]


def test_one_question_is_done_and_another_is_asked(run):
    """What the first settled, or leaves one answer of, takes nothing from the next."""
    pair = {"id": "sound", "answers": [{"id": "hum", "seen": ["hum"]}, {"id": "quiet", "seen": []}]}
    knowledge = base(low={}, hum={})
    knowledge["signs"].append({"id": "hum", **GLANCE})
    knowledge["causes"].append({"id": "four", "likelihood": "common", "shows": ["low", "hum"]})
    told = next_check(run, {**knowledge, "questions": [QUESTION, pair]}, {"low": "seen"})
    assert (told["question"], told["sign"], told["answers"]) == ("sound", "hum", ["hum", "quiet"])
    one_left = {**knowledge, "questions": [{**QUESTION, "answers": [QUESTION["answers"][0], QUESTION["answers"][2]]}]}
    told = next_check(run, {**one_left, "causes": one_left["causes"][1:2]}, {"low": "not_seen"})
    assert (told["question"], told["sign"], told["answers"]) == (None, "high", [])  # a sign by itself


def test_questions_stay_without_looks_that_shift(run):
    assert run("diagnosis.fault", "without_shifts", knowledge=base())["questions"] == [QUESTION]


def test_engine_wanted_for_a_question(run):
    """A question waits for the engine as its signs do."""
    knowledge = base(**{name: {"engine": ["off"]} for name in ("lamp", "low", "high")})
    told = next_check(run, knowledge)
    assert (told["kind"], told["engine"], told["question"]) == ("engine", ["off"], None)


def test_possible_shrinks(run):
    """Of the causes that could show what it began with, those that nothing speaks against; the likeliest come by name."""
    def after(signs):
        return run("diagnosis.look", "after", knowledge=BASE, signs=signs, began=["tank_overflows"], again=[], role="operator", engine="idle", questions=0, may_shift=True)["possible"]

    # two causes of the base show a tank that overflows, its fill and its check valve; the fill is closed, and one is left
    began = after({"tank_overflows": "seen"})
    assert (began["left"], began["of"], sorted(each["id"] for each in began["likeliest"])) == (2, 2, ["fill_left_open", "tank_check_leaks"])
    later = after({"tank_overflows": "seen", "fill_not_shut": "not_seen"})
    assert (later["left"], later["of"], [each["id"] for each in later["likeliest"]]) == (1, 2, ["tank_check_leaks"])
    assert later["likeliest"][0]["share"] > began["likeliest"][0]["share"] >= began["likeliest"][1]["share"]


@pytest.mark.parametrize(("seen", "odds"), [(["a"], 0.9 * 0.97), (["b"], 0.1 * 0.03), (["a", "b"], 0.9 * 0.03), ([], 0.1 * 0.97)])
def test_how_often_an_answer_is_given(run, seen, odds):
    """By hand, of two signs seen in nine of ten and in three of a hundred: those it says are seen, and the others are not."""
    assert run("diagnosis.likelihood", "of_answer", chances={"a": 0.9, "b": 0.03}, seen=seen) == pytest.approx(odds)
