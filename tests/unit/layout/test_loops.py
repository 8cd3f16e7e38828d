"""Lines that come in at the end of another: how they share the flow, what they ask of the pump, and what flows, by hand and by the laws that tie them."""
import pytest

from calc.base.errors import CalcError
from tests.peers.random_layouts import random_network

MONITOR = {"kind": "fog", "rated_gpm": 600, "rated_psi": 100}
HANDLINE = {"kind": "fog", "rated_gpm": 100, "rated_psi": 100}


def line(name, coefficient, length_ft, end, **more):
    return {"id": name, "coefficient": coefficient, "length_ft": length_ft, "end": end, **more}


def two_into_one():
    """2 1/2 in of 200 ft and 3 in of 125 ft into a monitor that takes 25 psi: their losses at 100 gpm are 4 and 1 psi."""
    return [line("A", 2, 200, MONITOR, appliance_psi=25), line("B", 0.8, 125, {"into": "A"})]


def report_of(run, lines, discharge_psi=None):
    asked = {"layout": {"lines": lines}}
    report = run("layout.pressure", "discharge_pressure", **asked) if discharge_psi is None else run("layout.pressure", "flows", **asked, discharge_psi=discharge_psi)
    return report, {row["id"]: row for row in report["lines"]}


def test_unlike_hoses_share_as_the_roots_of_their_losses(run):
    """By hand: losses of 4 and 1 at 100 gpm are shared 1 to 2, 200 and 400 gpm, 16 psi each; the pump shows 100 + 25 + 16."""
    report, by_id = report_of(run, two_into_one())
    assert report["discharge_psi"] == pytest.approx(141)
    assert (by_id["A"]["flow_gpm"], by_id["B"]["flow_gpm"]) == (pytest.approx(200), pytest.approx(400))
    assert (by_id["A"]["friction_psi"], by_id["B"]["friction_psi"]) == (pytest.approx(16), pytest.approx(16))
    assert (by_id["A"]["nozzle"]["flow_gpm"], by_id["B"]["nozzle"], by_id["B"]["into"]) == (600, None, "A")
    assert by_id["B"]["outlet_psi"] == pytest.approx(125)  # before the device, that takes 25 of all that flows
    assert report["flow_gpm"] == pytest.approx(600)


def test_a_wye_joined_again(run):
    """By hand: 100 ft of C 0.2 before the two lose 0.2 x 6^2 = 7.2 more."""
    report, _ = report_of(run, [line("S", 0.2, 100, {"lines": two_into_one()})])
    assert report["discharge_psi"] == pytest.approx(148.2)


def test_a_siamese_before_one_hose(run):
    """By hand: the joint takes what 200 ft of C 0.34 behind it asks, 0.34 x 6^2 x 2 = 24.48, beside 16 and 100."""
    lines = [line("A", 2, 200, {"lines": [line("C", 0.34, 200, MONITOR)]}), line("B", 0.8, 125, {"into": "A"})]
    assert report_of(run, lines)[0]["discharge_psi"] == pytest.approx(140.48)


def test_devices_take_by_all_that_is_behind_them(run):
    """By hand, in psi and hundreds of gpm: C 2 x 200 ft takes 4 Q^2 by A; by B a device of 45 at the 300 behind it 5 more, so 9 Q^2: as 3 to 2, 180 and 120 gpm.

    Before them 100 ft of C 0.2 take 1.8, and a device of 30 at 300 gpm, each nozzle counted once though two ways lead there, 30.
    """
    nozzles = [line(name, 1, 0, {"kind": "fog", "rated_gpm": flow, "rated_psi": 100}) for name, flow in (("X", 100), ("Y", 200))]
    lines = [line("S", 0.2, 100, {"lines": [line("A", 2, 200, {"lines": nozzles}), line("B", 2, 200, {"into": "A"}, appliance_psi=45)]}, appliance_psi=30)]
    report, by_id = report_of(run, lines)
    assert [by_id[name]["flow_gpm"] for name in "AB"] == [pytest.approx(180), pytest.approx(120)]
    assert [by_id[name]["appliance_psi"] for name in "SB"] == [pytest.approx(30), pytest.approx(7.2)]
    assert report["discharge_psi"] == pytest.approx(100 + 12.96 + 1.8 + 30)


def test_equal_hoses_are_runs_side_by_side(run):
    """Two of the same into one are one line of two runs, as it always was."""
    beside = report_of(run, [line("A", 2, 200, MONITOR), line("B", 2, 200, {"into": "A"})])[0]
    assert beside["discharge_psi"] == pytest.approx(report_of(run, [line("A", 2, 200, MONITOR, parallel=2)])[0]["discharge_psi"])


def test_the_height_of_the_end_is_that_of_the_line_it_comes_in_at(run):
    """By hand: both rise with the monitor, 100 ft x 0.433 or so, once; a rise typed for the second is not read."""
    lines = two_into_one()
    lines[0]["rise_ft"], lines[1]["rise_ft"] = 100, 7
    report, by_id = report_of(run, lines)
    assert by_id["B"]["elevation_psi"] == by_id["A"]["elevation_psi"] == pytest.approx(43.4, abs=0.2)
    assert report["discharge_psi"] == pytest.approx(141 + by_id["A"]["elevation_psi"])


def test_one_of_two_that_is_shut_leaves_the_other_all(run):
    """Half the hose of an equal pair loses four times as much (a master-stream handout): by hand 2 x 6^2 x 2 = 144 for 36."""
    lines = [line("A", 2, 200, MONITOR), line("B", 2, 200, {"into": "A"}, shut=True)]
    _, by_id = report_of(run, lines)
    assert by_id["A"]["friction_psi"] == pytest.approx(144)
    assert (by_id["B"]["shut"], by_id["B"]["flow_gpm"]) == (True, 0)


def test_a_valve_as_it_stands_asks_for_nothing(run):
    """What a valve takes is of what flows alone: the two ask the same 141 psi with one."""
    first, second = two_into_one()
    assert report_of(run, [{**first, "gate_psi": 30}, second])[0]["discharge_psi"] == pytest.approx(141)


def test_a_wye_beside_two_into_one_is_gated_as_ever(run):
    """By hand: behind 100 ft of C 2 for 200 gpm, 8, the harder of 115.5 and 131 makes 139; 54 of 193 are taken at the wye and 15.5 at the easier."""
    wye = line("W", 2, 100, {"lines": [line("X", 15.5, 100, HANDLINE), line("Y", 15.5, 200, HANDLINE)]})
    _, by_id = report_of(run, [*two_into_one(), line("C", 15.5, 600, HANDLINE), wye])
    assert [by_id[name]["gate_psi"] for name in "CWXY"] == [pytest.approx(psi, abs=1e-9) for psi in (0, 54, 15.5, 0)]


def test_a_way_round_alone_is_gated_with_its_joint(run):
    """By hand: 115.5 and 0.2 for 100 ft of C 0.2 are 77.3 under 193; a ring behind the joint that feeds nothing takes nothing more off."""
    ring = [line("A", 2, 100, {"lines": [line("X", 2, 50, HANDLINE, shut=True)]}), line("B", 0.8, 100, {"into": "A"})]
    joint = line("S", 0.2, 100, {"lines": [*ring, line("N", 15.5, 100, HANDLINE)]})
    _, by_id = report_of(run, [joint, line("C", 15.5, 600, HANDLINE)])
    assert [by_id[name]["gate_psi"] for name in "SABN"] == [pytest.approx(psi, abs=1e-3) for psi in (77.3, 0, 0, 0)]


def test_two_into_one_are_gated_alike_beside_a_line_that_needs_more(run):
    """By hand: a handline of 100 + 15.5 x 1 x 6 = 193 leaves 52 psi to take off both."""
    report, by_id = report_of(run, [*two_into_one(), line("C", 15.5, 600, HANDLINE)])
    assert report["discharge_psi"] == pytest.approx(193)
    assert [by_id[name]["gate_psi"] for name in "ABC"] == [pytest.approx(52), pytest.approx(52), pytest.approx(0)]


def test_all_behind_a_shut_end_is_shut(run):
    """A monitor that is shut takes nothing by either hose."""
    lines = two_into_one()
    lines[0]["shut"] = True
    report, by_id = report_of(run, [*lines, line("C", 15.5, 600, HANDLINE), line("J", 2, 100, {"lines": [line("X", 2, 50, HANDLINE, shut=True)]})], 150)
    assert [by_id[name]["shut"] for name in "ABCJ"] == [True, True, False, True]  # and a joint whose only nozzle is shut
    assert by_id["B"]["outlet_psi"] == 150
    assert report["flow_gpm"] == by_id["C"]["flow_gpm"] > 0


def test_a_loop_with_nothing_behind_it_passes_water_on(run):
    """A joint whose only nozzle is shut stands in a ring: what comes in by one hose leaves by the other, back along the first."""
    ring = line("A", 2, 100, {"lines": [line("X", 2, 50, HANDLINE, shut=True)]}, parallel=2)
    lines = [line("S", 8, 300, {"lines": [ring, line("N", 15.5, 100, MONITOR)]}), line("B", 0.8, 100, {"into": "A"})]
    _, by_id = report_of(run, lines, 200)
    assert by_id["B"]["flow_gpm"] == pytest.approx(-by_id["A"]["flow_gpm"]) and by_id["B"]["flow_gpm"] > 50
    assert by_id["A"]["friction_psi"] == pytest.approx(-2 * (by_id["B"]["flow_gpm"] / 200) ** 2)  # half in each of its two hoses
    asked, by_id = report_of(run, lines)
    assert by_id["A"]["outlet_psi"] == pytest.approx(by_id["B"]["outlet_psi"])
    assert asked["discharge_psi"] == pytest.approx(by_id["B"]["inlet_psi"])


def test_a_ring_that_feeds_nothing_stands(run):
    """Both ways to a shut joint hold the pump's pressure, and nothing flows."""
    lines = [line("A", 2, 100, {"lines": [line("X", 2, 50, HANDLINE, shut=True)]}), line("B", 0.8, 100, {"into": "A"}), line("N", 2, 100, HANDLINE)]
    report, by_id = report_of(run, lines)
    assert report["flow_gpm"] == 100
    assert [abs(by_id[name]["flow_gpm"]) < 0.01 for name in "AB"] == [True, True]
    assert by_id["A"]["outlet_psi"] == pytest.approx(report["discharge_psi"], abs=1e-3)
    assert report_of(run, lines[:2])[0]["discharge_psi"] == 0  # nothing is asked of the pump


@pytest.mark.parametrize("seed", range(0, 60, 3))
def test_what_is_asked_is_what_flows_once_gated(run, seed):
    """On random layouts with unlike hoses side by side: at the pressure asked for, with every valve as it says, each nozzle has what it is rated for."""
    layout, _ = random_network(seed, 0)
    asked = run("layout.pressure", "discharge_pressure", layout=layout)
    gates = {row["id"]: row for row in asked["lines"]}

    def gated(lines, before=""):
        return [{**each, "gate_psi": max(gates[f"{before}{place}"]["gate_psi"], 0) if not gates[f"{before}{place}"]["shut"] else 0,
                 "gate_gpm": abs(gates[f"{before}{place}"]["flow_gpm"]) or 1,
                 "end": {"lines": gated(each["end"]["lines"], f"{before}{place}.")} if "lines" in each["end"] else each["end"]}
                for place, each in enumerate(lines, 1)]

    flowing = run("layout.pressure", "flows", layout={"lines": gated(layout["lines"])}, discharge_psi=asked["discharge_psi"])
    for row in flowing["lines"]:
        if row["nozzle"] and not row["shut"]:
            assert row["nozzle"]["flow_gpm"] == pytest.approx(gates[row["id"]]["nozzle"]["flow_gpm"], rel=1e-6), row["id"]


@pytest.mark.parametrize(
    ("into", "code"),
    [("Z", "unknown"), (7, "unknown"), ("B", "not_an_end"), ("S", "not_an_end"), ("C", "not_an_end")],
)
def test_what_it_goes_into_has_an_end_of_its_own(run, into, code):
    """Not a line there is none of, not itself, not what feeds it, not one that goes into another."""
    lines = [line("S", 0.2, 100, {"lines": [*two_into_one()[:1], line("C", 2, 100, {"into": "A"}), line("B", 2, 100, {"into": into})]})]
    with pytest.raises(CalcError) as refused:
        report_of(run, lines)
    assert (refused.value.field, refused.value.code, refused.value.facts["line"]) == ("into", code, "B")


def test_too_many_are_refused(run):
    """Twelve at most: each adds to every step of the search."""
    lines = [line("A", 2, 200, MONITOR), *[line(f"B{count}", 2, 200, {"into": "A"}) for count in range(13)]]
    with pytest.raises(CalcError) as refused:
        report_of(run, lines)
    assert (refused.value.field, refused.value.code, refused.value.facts) == ("lines", "too_many_loops", {"most": 12})
    assert report_of(run, lines[:-1])[0]["discharge_psi"] == pytest.approx(100 + 2 * 2 * 36 / 169)  # by hand: thirteen hoses share it


def test_another_friction_rule_does_not_share(run):
    """A rule with a term in Q says nothing of two unlike hoses: refused, not guessed."""
    with pytest.raises(CalcError) as refused:
        run("layout.pressure", "discharge_pressure", layout={"lines": two_into_one()}, rule="two_q_squared_plus_q")
    assert (refused.value.field, refused.value.code, refused.value.facts["line"]) == ("rule", "not_of_loops", "B")
