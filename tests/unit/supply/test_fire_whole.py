"""A fire flow by each rule and a wildland hose layout: the whole answer, worked by hand."""
import pytest

from tests.unit.supply.reckoned import ask
from tests.unit.supply.test_fireflow import ROOM
from tests.unit.supply.test_hoselay_pumps import BY_CURVE
from tests.unit.supply.test_source_whole import figure


def held(supply, flow, text):
    return figure("held", "percent", text, ["handlines"], supply=supply, flow=flow)


def test_by_area(run):
    """1,500 ft2 / 3 on three floors, three quarters of it, and a quarter more: 1,406.25 gpm. 150 gpm a line: 9.4. Four fifths of 750 gal: 0.427 and 4 min."""
    assert ask(run, "fireflow", **ROOM, involved="75", floors="3", exposures="1", line="150", supply="400", tank="750") == {
        "sum": "fireflow_area", "figure": {"kind": "flow", "text": "1406"}, "facts": {"lines": "10", "line": "150"},
        "rows": [
            figure("by_area", "flow", "1406", ["fire_area"], area="1500", floors="3", percent="75", exposures="1", gpm="1406"),
            figure("handlines", None, "10", ["handlines"], flow="1406.25", line="150", lines="10"), held("400", "1406.25", "28.4"),
            figure("tank_asked", "time", "0.4", ["usable", "tank"], usable="600", flow="1406.25", minutes="0.427"),
            figure("tank_line", "time", "4.0", ["usable", "tank"], usable="600", flow="150", minutes="4")],
        "cautions": [
            {"level": "stop", "code": "supply_short", "amount": "400", "limit": "1406", "needed": "1006"},
            {"level": "caution", "code": "area_over", "amount": "1406", "limit": "1000"}, {"level": "caution", "code": "past_half", "amount": "75", "limit": "50"},
            {"level": "caution", "code": "tank_alone", "amount": "0.4", "flow": "150", "wanted": "4.0"}],
        "picture": {"asked": {"share": 1, "text": "1406"}, "supply": {"share": pytest.approx(400 / 1406.25), "text": "400"}}}


def test_by_volume(run):
    """1,500 ft2 by 8 ft: 12,000 ft3 / 100 for half a minute."""
    assert ask(run, "fireflow", **ROOM, by="volume", height="8", line="50", supply="150") == {
        "sum": "fireflow_volume", "figure": {"kind": "flow", "text": "120"}, "facts": {"lines": "3", "line": "50"},
        "rows": [
            figure("by_volume", "flow", "120", ["fire_volume"], volume="12000", gpm="120"), figure("half_minute", "volume", "60", ["fire_volume"], gpm="120"),
            figure("handlines", None, "3", ["handlines"], flow="120", line="50", lines="3"), held("150", "120", "125.0")],
        "cautions": [{"level": "caution", "code": "a_floor"}],
        "picture": {"asked": {"share": pytest.approx(0.8), "text": "120"}, "supply": {"share": 1, "text": "150"}}}


def test_by_store(run):
    """30,000 ft3 / 4 x 0.75, half as much again beside another building: 8,437.5 gal, delivered at 500 gpm from 2,500 gal on."""
    assert ask(run, "fireflow", **ROOM, by="store", height="20", hazard="4", construction="0.75", exposures="1", line="150", supply="300") == {
        "sum": "fireflow_store", "figure": {"kind": "flow", "text": "500"}, "facts": {"lines": "4", "line": "150"},
        "rows": [
            figure("store", "volume", "8438", ["fire_store"], volume="30000", hazard="4", construction="0.75", gal="8438"),
            figure("delivery", "flow", "500", ["fire_delivery"], stored="8437.5"),
            figure("handlines", None, "4", ["handlines"], flow="500", line="150", lines="4"), held("300", "500", "60.0")],
        "cautions": [{"level": "stop", "code": "supply_short", "amount": "300", "limit": "500", "needed": "200"}],
        "picture": {"asked": {"share": 1, "text": "500"}, "supply": {"share": pytest.approx(0.6), "text": "300"}}}


def test_a_hose_layout(run):
    """Two 1/4 in tips at 50 psi, 29.7 x 0.0625 x root 50 = 13.126 gpm each, on unlined 1 1/2 in, C 2 x 24, by 200 ft of 1 in, C 150, down 50 ft.

    26.25 gpm for 600 ft and 13.126 for 400 take 19.85 + 3.31 psi, the laterals 5.17, three wyes 15: 71.62 with 21.7 psi of height, 68.32 with 25.
    Two pumps of 35.81: 15.81 psi are gone at 0.0331 - 0.0067 psi a foot after 599.4 ft. 9.2 gal in 100 ft of trunk and 4.1 of lateral: 108.
    """
    entries = {"laterals": "2", "spacing": "400", "tip": "0.25", "nozzle": "50", "wyes": "3", "rise": "-50", "lining": "unlined", "lateral_length": "200",
               "limit": "200", "gives": "50", "length": "1000"}
    assert ask(run, "hoselay", **entries) == {
        "sum": "hoselay_series", "figure": {"kind": "pressure", "text": "72"}, "facts": {"field": "68", "flow": "26", "pumps": "2", "each": "36"},
        "rows": [
            figure("hoselay_pump", "pressure", "72", ["trunk", "elevation"], nozzle="50", lateral="5.17", trunk="23.15", wyes="15", elevation="-21.7", pump="71.62"),
            figure("hoselay_field", "pressure", "68", ["field_height"], elevation="-25", rise="-50"),
            figure("hoselay_flow", "flow", "26", ["trunk"], laterals="2", flow="13.13"),
            figure("hoselay_tip", "flow", "13", ["smooth_flow"], tip="0.25", nozzle="50", flow="13.13"),
            figure("hoselay_trunk", "pressure", "23", ["trunk", "friction", "unlined"], coefficient="48", most="26.25", least="13.13", spacing="400", friction="23.15"),
            figure("hoselay_lateral", "pressure", "5", ["friction"], coefficient="150", flow="13.13", hundreds_length="2", friction="5.17"),
            figure("hoselay_wyes", "pressure", "15", ["fittings"], wyes="3", each="5", loss="15"),
            figure("hoselay_each", "pressure", "36", ["pump_series"], pump="71.62", pumps="2", each="35.81"),
            figure("hoselay_next", "length", "599", ["pump_series"], each="35.81", intake="20", distance="599.42"),
            figure("hoselay_shut", "pressure", "93", ["elevation"], pump="71.62", elevation="21.7"),
            figure("hoselay_fill", "volume", "108", ["hose_water"])],
        "cautions": [
            {"level": "caution", "code": "unlined"}, {"level": "caution", "code": "downhill", "amount": "93", "limit": "22"},
            {"level": "stop", "code": "hoselay_past_pump", "amount": "72", "limit": "50", "needed": "2", "longest": "599"}],
        "picture": {"pump": "72", "wye": "55", "nozzle": "50", "flow": "26", "length": "1000", "rise": "-50", "laterals": 2, "slope": -1,
                    "next": pytest.approx(0.59942, rel=1e-4)}}


def test_a_hose_layout_by_a_curve(run):
    """As test_two_in_series has it: 39.46 gpm at 340.5 psi leave 100 x (39.46 / 30) squared = 173 at the nozzle; the rest as for one figure."""
    told = ask(run, "hoselay", **{**BY_CURVE, "rise": "300", "flow": "30", "arranged": "series", "pumps": "2", "limit": "500"})
    assert told["facts"] == {"needed": "2", "way": "series", "full": "39", "full_pump": "341", "full_nozzle": "173"}
    assert told["rows"][6:] == [
        figure("hoselay_gives_series", "pressure", "450", ["pump_curve"], pumps="2", each="225", flow="30", gives="450"),
        figure("hoselay_full", "flow", "39", ["pump_curve"], fixed="130.2", lost="121.6", wanted="30", pump="340.54", flow="39.46"),
        figure("hoselay_each", "pressure", "126", ["pump_series"], pump="251.8", pumps="2", each="125.9"),
        figure("hoselay_next", "length", "697", ["pump_series"], each="125.9", intake="20", distance="697.63"),
        figure("hoselay_shut", "pressure", "600", ["elevation"], pump="600", elevation="0"), figure("hoselay_fill", "volume", "92", ["hose_water"])]
    assert told["cautions"] == [{"level": "stop", "code": "hose_over", "amount": "600", "limit": "500"}]
