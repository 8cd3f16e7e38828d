"""A worse reading never makes a verdict better: properties of the judging, under CPython."""
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from calc.service import verdict
from tests.unit.service.made import an_attempt, changed, of
from tests.unit.service.test_verdict import GOOD, PLAN, with_attempts

RANK = {"fail": 0, "not_proven": 1, "pass": 2}
FIGURES = [(test["id"], field["id"]) for test in PLAN["tests"] if test["kind"] == "figures" for field in test["fields"] if field["kind"] != "check"]


@settings(max_examples=150, deadline=None)
@given(data=st.data())
def test_worse_never_mends(data):
    """Making any reading worse never turns a fail into a pass, nor raises any verdict of a run."""
    run_id = data.draw(st.sampled_from(["capacity", "overload", "seventy", "fifty"]))
    test = of(PLAN, run_id)
    tip = test["tips"][0]
    attempts = []
    for _ in range(data.draw(st.integers(1, 3))):
        attempt = an_attempt(test)
        for each in attempt["sets"]:
            each["discharge_psi"] += data.draw(st.integers(-8, 4))
            each["pitot_psi"] = [tip["pitot_psi"] * data.draw(st.sampled_from([0.9, 0.99, 1, 1.02]))] * tip["count"]
        attempt["clock_s"] -= data.draw(st.sampled_from([0, 0, 30]))
        attempts.append(attempt)
    before = of(verdict.verdict(PLAN, with_attempts(*attempts, test=run_id)), run_id)
    attempt = data.draw(st.sampled_from(attempts))
    each = data.draw(st.sampled_from(attempt["sets"]))
    if data.draw(st.booleans()):
        each["discharge_psi"] -= data.draw(st.floats(0, 50))
    else:
        each["pitot_psi"] = [psi * data.draw(st.floats(0, 1)) for psi in each["pitot_psi"]]
    after = of(verdict.verdict(PLAN, with_attempts(*attempts, test=run_id)), run_id)
    assert not (before["status"] == "fail" and after["status"] == "pass")
    assert len(attempts) > 1 or RANK[after["status"]] <= RANK[before["status"]]


# which way is worse, by field's last part. A lower vacuum reached with the same vacuum left would be a smaller loss, no worse.
WORSE = {"vacuum_after_inhg": -1, "prime_s": 1, "peak_psi": 1, "tank_flow_gpm": -1}


@settings(max_examples=100, deadline=None)
@given(data=st.data())
def test_worse_figures_never_mend(data):
    """The same for every figure that has a worse direction, from wherever it stands."""
    test, field = data.draw(st.sampled_from([pair for pair in FIGURES if pair[1].split(".")[-1] in WORSE]))
    way = WORSE[field.split(".")[-1]]
    start = GOOD[test]["values"][field] * data.draw(st.floats(0.7, 1.3))
    worse = start + way * data.draw(st.floats(0, 1)) * start
    try:
        ranks = [RANK[of(verdict.verdict(PLAN, changed(GOOD, test, field, value)), test)["status"]] for value in (start, worse)]
    except CalcError as refused:
        assert refused.code == "wrong_way"  # the peak of a rise below its start: no such reading is judged
    else:
        assert ranks[1] <= ranks[0]


@settings(max_examples=100, deadline=None)
@given(reached=st.floats(5, 29), loss=st.floats(0, 5), lower=st.floats(0, 5), more=st.floats(0, 20))
def test_worse_vacuum_never_mends(reached, loss, lower, more):
    """Less vacuum reached, with as much lost or more, is never better."""
    ranks = []
    for start, lost in ((reached, loss), (reached - lower, loss + more)):
        readings = changed(GOOD, "vacuum", "vacuum_reached_inhg", start)
        readings["vacuum"]["values"]["vacuum_after_inhg"] = start - lost
        ranks.append(RANK[of(verdict.verdict(PLAN, readings), "vacuum")["status"]])
    assert ranks[1] <= ranks[0]
