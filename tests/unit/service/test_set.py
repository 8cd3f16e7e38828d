"""One set of readings of a run, whole: 1,250 gpm from draft through 20 ft of 6 in hose, 10 ft of lift. By hand.

The hose loses 5.2 ft, so 145 psi on the gauge are 145 + 15.2 / 2.3 = 151.609 net; that is off by two standard deviations of 3 psi of gauge,
0.5 ft of lift and 15 percent of the loss: 2 x root((9 + (0.5 / 2.3)² + (0.78 / 2.3)²) / 3) = 3.4952 psi.
"""
import pytest

from calc.base.errors import CalcError
from tests.unit.service.made import a_plan, of

PLAN = a_plan()
READ = {"at_s": 300, "discharge_psi": 145, "meter_gpm": 1260, "engine_rpm": 1650, "pump_rpm": 3300}


def judged(run, tip=None, plan=PLAN, without=(), **values):
    read = {name: value for name, value in {**READ, **values}.items() if name not in without}
    return run("service.judge", "judged_set", test=of(plan, "capacity"), tip=tip, values=read, plan=plan)


def test_a_set_to_the_last_figure(run):
    """A flow meter errs by 3 percent: 37.8 of 1,260 gpm. The flow is nearer its limit for its size: 10 of 1,250, and 1.6 of 150 psi."""
    told = judged(run, plan=a_plan(flow_by="meter"), panel_rpm=1640)
    flow = {"id": "flow_gpm", "kind": "flow", "value": 1260, "least": 1250, "most": None, "band": pytest.approx(37.8), "margin": 10, "status": "pass", "is_close": True}
    net = {"id": "net_psi", "kind": "pressure", "value": pytest.approx(151.6087, abs=1e-4), "least": 150, "most": None, "band": pytest.approx(3.4952, abs=1e-4),
           "margin": pytest.approx(1.6087, abs=1e-4), "status": "pass", "is_close": True}
    assert told == {"status": "pass", "code": "met", "decided": flow, "missing": [], "figures": [flow, net], "is_close": True, "at_s": 300, "is_by_mean": False,
                    "engine_rpm": 1650, "pump_rpm": 3300, "panel_rpm": 1640, "is_strayed": False}


@pytest.mark.parametrize(("meter_gpm", "is_strayed"), [(1187.5, False), (1187.4, True), (1312.5, False), (1312.6, True), (None, False)])
def test_a_flow_in_its_band(run, meter_gpm, is_strayed):
    """Five percent of 1,250 gpm are 62.5; a flow that was not read has not strayed."""
    assert judged(run, meter_gpm=meter_gpm)["is_strayed"] is is_strayed


TIP = {"tip_in": 2.25, "count": 1}


@pytest.mark.parametrize(("tip", "pitot_psi", "missing"), [
    (TIP, [70], []), (TIP, None, ["pitot_psi", "flow_gpm"]), (TIP, [None], ["pitot_psi", "flow_gpm"]), (TIP, [35, 35], ["pitot_psi", "flow_gpm"]), (TIP, 70, ["pitot_psi", "flow_gpm"]),
    (None, [70], ["pitot_psi", "flow_gpm"]), ({**TIP, "count": 2}, [70], ["pitot_psi", "flow_gpm"]), ({**TIP, "count": 2}, [70, None], ["pitot_psi", "flow_gpm"])])
def test_a_flow_that_was_not_read(run, tip, pitot_psi, missing):
    """One reading a tip, each of them, and the tips known: else the flow is missing, once."""
    told = judged(run.unheld if pitot_psi == 70 else run, tip, meter_gpm=None, pitot_psi=pitot_psi)
    assert (told["missing"], told["figures"][0]["value"] is None) == (missing, bool(missing))


def test_a_meter_that_was_not_read(run):
    """Where a meter is to be read, nobody is asked for a pitot."""
    assert judged(run, plan=a_plan(flow_by="meter"), meter_gpm=None)["missing"] == ["meter_gpm", "flow_gpm"]


@pytest.mark.parametrize(("values", "field", "code"), [
    ({"at_s": -1}, "at_s", "negative"), ({"engine_rpm": "fast"}, "engine_rpm", "not_a_number"), ({"oil_psi": "much"}, "oil_psi", "not_a_number"), ({"meter_gpm": -1}, "meter_gpm", "negative"),
    ({"discharge_psi": -1}, "discharge_psi", "negative"), ({"meter_gpm": None, "pitot_psi": [-1]}, "pitot_psi", "negative")])
def test_refused(run, values, field, code):
    with pytest.raises(CalcError) as refused:
        judged(run, TIP, **values)
    assert (refused.value.field, refused.value.code) == (field, code)


def test_two_tips(run):
    """The sum of both; one gauge reads them, so their errors add: 1 psi of 70 is 0.714 percent of each flow, and half a percent is the rule's."""
    told = judged(run, {"tip_in": 1.75, "count": 2}, meter_gpm=None, pitot_psi=[70, 70])
    one = judged(run, {"tip_in": 1.75, "count": 1}, meter_gpm=None, pitot_psi=[70])
    flow_gpm = told["figures"][0]["value"]
    assert flow_gpm == pytest.approx(2 * one["figures"][0]["value"])
    assert told["figures"][0]["band"] == pytest.approx(flow_gpm * min(0.0071429 + 0.005, 2 * ((0.0071429 ** 2 + 0.005 ** 2) / 3) ** 0.5), rel=1e-4)


@pytest.mark.parametrize(("source", "more", "net_psi"), [("pressurised", {"intake_psi": 50}, 95), ("pressurised", {}, None), ("draft", {"discharge_psi": None}, None)])
def test_the_net_pressure(run, source, more, net_psi):
    """From a hydrant less what comes in; two gauges of 3 and 2 psi err together by 2 x root(13 / 3). Without either it is not known."""
    net = judged(run, plan=a_plan(source=source), **more)["figures"][1]
    assert (net["value"], net["band"]) == (net_psi, None if net_psi is None else pytest.approx(2 * (13 / 3) ** 0.5))


@pytest.mark.parametrize("site", [{"lift_ft": None}, {"suction_size_in": None}])
def test_a_site_that_is_not_known_leaves_no_net_pressure(run, site):
    told = judged(run, plan=a_plan(**site))
    assert told["figures"][1]["value"] is None and "net_psi" in told["missing"]
