"""One figure against its limits, and several together: margins, edges, bands, which of them decides. All by hand."""
import pytest

from calc.base.errors import CalcError

ACCURACY = {"discharge_psi": 3, "intake_psi": 2, "pitot_psi": 1, "meter_percent": 3, "tip_percent": 0.5, "lift_ft": 0.5, "loss_percent": 15, "vacuum_inhg": 0.5,
            "reference_psi": 1, "speed_rpm": 10}


def judged(run, value, least=None, most=None, band=None):
    return run("service.judge", "judged", name="x", kind="pressure", value=value, least=least, most=most, band=band)


@pytest.mark.parametrize(("value", "least", "most", "margin", "status"), [
    (100, 90, None, 10, "pass"), (100, None, 110, 10, "pass"), (100, 95, 110, 5, "pass"), (100, 80, 103, 3, "pass"), (89, 90, 110, -1, "fail"), (112, 90, 110, -2, "fail"),
    (100, 100, 100, 0, "pass"), (-5, -4, None, -1, "fail"), (100, None, None, None, "not_proven"), (None, 90, 110, None, "not_proven")])
def test_a_figure_and_its_margin(run, value, least, most, margin, status):
    assert judged(run, value, least, most) == {"id": "x", "kind": "pressure", "value": value, "least": least, "most": most, "band": None, "margin": margin,
                                               "status": status, "is_close": False}


@pytest.mark.parametrize(("value", "least", "status"), [
    (1000 - 5e-7, 1000, "pass"), (1000 - 2e-6, 1000, "fail"), (0.1 - 5e-10, 0.1, "pass"), (0.1 - 2e-9, 0.1, "fail"), (-1000 - 5e-7, -1000, "pass")])
def test_a_limit_through_other_units(run, value, least, status):
    """Met to nine figures, since 57 mm typed are not 57.00000001; past that it is missed."""
    assert judged(run, value, least)["status"] == status


@pytest.mark.parametrize(("value", "is_close"), [(153, True), (153.001, False), (147, True), (146.999, False), (150, True)])
def test_what_is_too_close_to_tell(run, value, is_close):
    """Within three psi of the limit, either way, an instrument that errs by three might say otherwise."""
    assert judged(run, value, 150, None, 3)["is_close"] is is_close
    assert judged(run, value, 150)["is_close"] is False


def test_a_figure_that_is_none(run):
    with pytest.raises(CalcError) as refused:
        judged(run, "much", 1)
    assert (refused.value.field, refused.value.code) == ("x", "not_a_number")


def figure(name, margin, least=None, most=None, value=0, status="pass", kind="pressure", is_close=False):
    return {"id": name, "kind": kind, "value": value, "least": least, "most": most, "band": None, "margin": margin, "status": status, "is_close": is_close}


CHECK = figure("check", None, kind="check", value="yes")


@pytest.mark.parametrize(("figures", "decides"), [
    ([], None), ([CHECK], "check"), ([CHECK, {**CHECK, "id": "later"}], "check"), ([CHECK, figure("a", 9, 10)], "a"), ([figure("a", 9, 10), CHECK], "a"),
    ([figure("tenth", 1, 10), figure("hundredth", 1, 100)], "hundredth"), ([figure("hundredth", 1, None, 100), figure("tenth", 1, 10)], "hundredth"),
    ([figure("a", 1, 100), figure("b", 1, 100)], "a"), ([figure("short", -1, 10), figure("shorter", -2, 10)], "shorter"),
    ([figure("a", 0.1, 0.5), figure("b", 5, 100)], "b"),  # a limit less than one counts as one: 0.1 and 0.05
    ([figure("a", 1, -10), figure("b", 0.05, 1)], "b"),
    ([figure("a", 3, 30, 1000), figure("b", 1, None, 20)], "b"),  # where both ends are there, the least: 0.1 and 0.05
])
def test_the_figure_that_decides(run, figures, decides):
    """Nearest to its limit for its size, or furthest past it; the first of two alike; a check only where there is no figure."""
    decided = run("service.judge", "deciding", figures=figures)
    assert (decided and decided["id"]) == decides


def summed(run, figures, missing=(), **code):
    told = run("service.judge", "summed", figures=figures, missing=list(missing), **code)
    assert told.pop("figures") == figures
    decided = told.pop("decided")
    return {**told, "decided": decided and decided["id"]}


BELOW, ABOVE = figure("below", -1, 10, 20, 9, "fail"), figure("above", -5, 10, 20, 25, "fail")
OPEN = figure("open", None, status="not_proven")


@pytest.mark.parametrize(("figures", "missing", "told"), [
    ([], [], ("not_proven", "blank", None, [], False)),
    ([figure("a", 1, 10)], [], ("pass", "met", "a", [], False)),
    ([figure("a", 1, 10), figure("b", 5, 10, is_close=True)], [], ("pass", "met", "a", [], True)),
    ([figure("a", 1, 10)], ["b"], ("not_proven", "blank", None, ["b"], False)),
    ([figure("a", 1, 10, is_close=True), OPEN], ["b"], ("not_proven", "blank", None, ["b", "open"], False)),
    ([OPEN], ["open"], ("not_proven", "blank", None, ["open"], False)),
    ([figure("a", 1, 10, is_close=True), BELOW, OPEN], ["b"], ("fail", "below", "below", ["b"], False)),
    ([BELOW, ABOVE], [], ("fail", "above", "above", [], False)),
    ([figure("a", -1, None, 20, 21, "fail")], [], ("fail", "above", "a", [], False)),
    ([{**CHECK, "value": "no", "status": "fail"}], [], ("fail", "no", "check", [], False)),
])
def test_several_figures_together(run, figures, missing, told):
    """A failed one outweighs whatever is missing; what is missing, a pass."""
    assert summed(run, figures, missing) == dict(zip(("status", "code", "decided", "missing", "is_close"), told))


def test_why_it_is_not_proven(run):
    assert summed(run, [OPEN], code="strayed")["code"] == "strayed"
    assert summed(run, [BELOW], ["b"], code="strayed")["code"] == "below"


def of_limit(run, limit, values, accuracy=ACCURACY):
    """The one figure of a part that has one limit."""
    part = {"id": "part", "kind": "figures", "fields": [], "missing": [], "hold_s": None,
            "limits": [{"id": "x", "least": None, "most": None, **limit}]}
    told = run("service.verdict", "verdict", plan={"tests": [part], "conditions": {}, "accuracy": accuracy}, readings={"part": {"values": values}})
    (found,) = told["tests"][0]["figures"]
    assert (found["id"], found["kind"]) == ("x", limit["kind"])
    return found["value"], found["band"], found["status"]


BOTH = 2 * (18 / 3) ** 0.5  # 3 psi twice, either may err: two standard deviations


@pytest.mark.parametrize(("limit", "values", "told"), [
    ({"how": "value", "kind": "pressure", "of": ["a"], "least": 10}, {"a": 12}, (12, 3, "pass")),
    ({"how": "value", "kind": "vacuum", "of": ["a"], "most": 10}, {"a": 12}, (12, 0.5, "fail")),
    ({"how": "value", "kind": "speed", "of": ["a"], "least": 10}, {"a": 12}, (12, 10, "pass")),
    ({"how": "value", "kind": "seconds", "of": ["a"], "least": 10}, {"a": 12}, (12, None, "pass")),
    ({"how": "value", "kind": "flow", "of": ["a"], "least": 1000}, {"a": 1200}, (1200, 36, "pass")),  # 3 percent
    ({"how": "value", "kind": "flow", "of": ["a"], "least": 1000}, {}, (None, None, "not_proven")),
    ({"how": "loss", "kind": "vacuum", "of": ["a", "b"], "most": 10}, {"a": 24, "b": 20}, (4, pytest.approx(2 * (0.5 / 3) ** 0.5), "pass")),
    ({"how": "loss", "kind": "vacuum", "of": ["a", "b"], "most": 10}, {"a": 24, "b": 24}, (0, pytest.approx(2 * (0.5 / 3) ** 0.5), "pass")),
    ({"how": "rise", "kind": "pressure", "of": ["a", "b"], "most": 30}, {"a": 150, "b": 181}, (31, pytest.approx(BOTH), "fail")),
    ({"how": "rise", "kind": "pressure", "of": ["a", "b"], "most": 30}, {"a": 150, "b": 150}, (0, pytest.approx(BOTH), "pass")),
    ({"how": "error", "kind": "pressure", "of": ["a", "b"], "most": 10}, {"a": 150, "b": 161}, (11, 1, "fail")),  # the test gauge's alone
    ({"how": "error", "kind": "vacuum", "of": ["a", "b"], "most": 1}, {"a": 11, "b": 10}, (1, 0.5, "pass")),
    ({"how": "error", "kind": "speed", "of": ["a", "b"], "most": 50}, {"a": 2200, "b": 2251}, (51, 10, "fail")),
    ({"how": "percent_error", "kind": "percent", "of": ["a", "b"], "most": 10}, {"a": 1100, "b": 1000}, (10, None, "pass")),
    ({"how": "percent_error", "kind": "percent", "of": ["a", "b"], "most": 10}, {"a": 890, "b": 1000}, (11, None, "fail")),
    ({"how": "percent_error", "kind": "percent", "of": ["a", "b"], "most": 10}, {"a": 0, "b": 0}, (None, None, "not_proven")),
    ({"how": "percent_error", "kind": "percent", "of": ["a", "b"], "most": 10}, {"a": 0, "b": 1}, (100, None, "fail")),
    ({"how": "percent_error", "kind": "percent", "of": ["a", "b"], "most": 200}, {"a": 1, "b": -1}, (200, None, "pass")),
    ({"how": "between", "kind": "ratio", "of": ["a", "b", "c"]}, {"a": 0.5, "b": 0.4, "c": 0.6}, (0.5, None, "pass")),
    ({"how": "between", "kind": "ratio", "of": ["a", "b", "c"]}, {"a": 0.5, "b": 0.5, "c": 0.5}, (0.5, None, "pass")),
    ({"how": "between", "kind": "ratio", "of": ["a", "b", "c"]}, {"a": 0.5, "b": 0.4}, (None, None, "not_proven")),
])
def test_a_figure_from_its_readings(run, limit, values, told):
    """Value and band of each way a figure is worked: what is read twice may err twice."""
    value, band, status = of_limit(run, limit, values)
    assert (value, band, status) == (told[0] if told[0] is None else pytest.approx(told[0]), *told[1:])


@pytest.mark.parametrize(("how", "values", "field"), [
    ("loss", {"a": 20, "b": 20.1}, "b"), ("rise", {"a": 20, "b": 19.9}, "b"), ("between", {"a": 1, "b": 2, "c": 1.9}, "c")])
def test_readings_the_wrong_way_round(run, how, values, field):
    with pytest.raises(CalcError) as refused:
        of_limit(run, {"how": how, "kind": "ratio" if how == "between" else "pressure", "of": list(values)}, values)
    assert (refused.value.field, refused.value.code, refused.value.facts) == (field, "wrong_way", {"test": "part"})


def test_a_reading_of_a_figure_that_is_no_number(run):
    with pytest.raises(CalcError) as refused:
        of_limit(run, {"how": "error", "kind": "speed", "of": ["a", "b"]}, {"a": 1, "b": "fast"})
    assert (refused.value.field, refused.value.code) == ("b", "not_a_number")
