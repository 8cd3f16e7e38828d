"""Cautions: what a known limit calls for, and what an unknown one does not."""
import pytest

LIMITS = {"test_psi": 300, "least_usual_gpm": 95, "most_usual_gpm": 200, "crew": "2", "crew_limit_lbf": 75}


def a_line(**given_facts):
    """A line of a report well inside LIMITS, but for what is given."""
    usual = {"id": "A", "flow_gpm": 150, "inlet_psi": 150, "gate_psi": 0, "elevation_psi": 0,
             "nozzle": {"kind": "fog", "nozzle_psi": 100, "flow_gpm": 150, "reaction_lbf": 70}}
    return {**usual, **given_facts}


def pushing(reaction_lbf):
    """The same with this push at its nozzle."""
    return a_line(nozzle={"kind": "fog", "nozzle_psi": 100, "flow_gpm": 150, "reaction_lbf": reaction_lbf})


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        (a_line(), []),
        # a limit is allowed; past it is not
        (a_line(inlet_psi=300), []),
        (a_line(inlet_psi=301), [("stop", "above_test_pressure", 301, 300)]),
        (a_line(flow_gpm=200), []),
        (a_line(flow_gpm=201), [("caution", "flow_above_usual", 201, 200)]),
        (a_line(flow_gpm=95), []),
        (a_line(flow_gpm=94), [("caution", "flow_below_usual", 94, 95)]),
        # the gate shuts in the pressure of the joint when the nozzle shuts: 250 + 51
        (a_line(inlet_psi=250, gate_psi=51), [("stop", "above_test_pressure", 301, 300)]),
        # downhill the foot of the hose has more than its head: 290 + 11; uphill it has less
        (a_line(inlet_psi=290, elevation_psi=-11), [("stop", "above_test_pressure", 301, 300)]),
        (a_line(inlet_psi=290, elevation_psi=11), []),
        # the crew's limit goes with Q/2, 1 % under the formula here: 2 % of slack, 75 x 1.02 = 76.5
        (pushing(76.4), []),
        (pushing(76.6), [("caution", "reaction_above_crew", 76.6, 75)]),
        # an inlet has no push that anyone holds, a wye has no nozzle
        (pushing(None), []),
        (a_line(nozzle=None), []),
        # the most serious first
        (a_line(inlet_psi=301, flow_gpm=201),
         [("stop", "above_test_pressure", 301, 300), ("caution", "flow_above_usual", 201, 200)]),
    ],
)
def test_cautions(run, line, expected):
    """Each limit calls for its caution just past it, with the amount and the limit as they are known."""
    found = run("caution", "cautions", lines={"A": LIMITS}, report={"lines": [line]})
    told = [(each["level"], each["code"], each["amount"], each["limit"]) for each in found]
    assert told == expected
    assert all((each["line"], each["crew"]) == ("A", "2") for each in found)


@pytest.mark.parametrize("limits", [{}, dict.fromkeys(LIMITS)], ids=["absent", "None"])
def test_unknown_limits(run, limits):
    """A limit that is not known raises no caution, however wild the lay."""
    wild = a_line(inlet_psi=1500, flow_gpm=9000, nozzle={"reaction_lbf": 900})
    assert run("caution", "cautions", lines={"A": limits}, report={"lines": [wild]}) == []


@pytest.mark.parametrize(
    ("parallel", "codes"),
    [
        (1, ["flow_above_usual"]),
        (2, []),                    # 180 gpm each
        (4, ["flow_below_usual"]),  # 90 gpm each
    ],
)
def test_parallel_hoses(run, parallel, codes):
    """Usual flows are those of one hose, so the flow is shared first."""
    limits = {"least_usual_gpm": 95, "most_usual_gpm": 200, "parallel": parallel}
    found = run("caution", "cautions", lines={"A": limits}, report={"lines": [a_line(flow_gpm=360)]})
    assert [each["code"] for each in found] == codes


def test_stops_before_cautions(run):
    """A stop of a later line stands before a caution of an earlier one; otherwise lines keep their order."""
    report = {"lines": [a_line(id="A", flow_gpm=201), a_line(id="B", inlet_psi=301), a_line(id="C", inlet_psi=302,
                                                                                           flow_gpm=94)]}
    found = run("caution", "cautions", lines={"A": LIMITS, "B": LIMITS, "C": LIMITS}, report=report)
    assert [(each["line"], each["level"]) for each in found] == [
        ("B", "stop"), ("C", "stop"), ("A", "caution"), ("C", "caution")]


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        (a_line(inlet_psi=301), "pressure"),
        (pushing(90), "force"),
        (a_line(flow_gpm=500), "flow"),
    ],
)
def test_kind(run, line, kind):
    """The kind says which quantity amount and limit are, so that the page can convert them."""
    (found,) = run("caution", "cautions", lines={"A": LIMITS}, report={"lines": [line]})
    assert found["kind"] == kind
