"""What to set for each bed of a rig, as the start page shows it."""
import pytest

from site_src.content import catalogue, fleet, units

RIG = fleet.load()["tollgate-engine-1"]  # of our own invention; every figure below is worked by hand from it


def rows(run, profile=RIG, system="US"):
    told = run("rig.beds_page", "answer", profile=profile, shelf=catalogue.shelf(), units=units.shown_in(system))
    return {row["name"]: row for row in told["rows"]}


# C 11.4 at 150 gpm, 25.65 psi per 100 ft: 25.65 + 75 = 100.65; 2.5 x 25.65 + 100 = 164.1
@pytest.mark.parametrize(("name", "pressure", "length", "flow"), [("Front bumper", "101", "100", "150"), ("Crosslay 2", "164", "250", "150")])
def test_beds(run, name, pressure, length, flow):
    """A bed has the number to set, not rounded to the panel's step, with what it follows from."""
    row = rows(run)[name]
    assert (row["pressure"], row["length"], row["flow"], row["code"]) == (pressure, length, flow, "hose")


# by hand: 100.65 and 164.1 to the step; to 2 psi, 164 stands here too
@pytest.mark.parametrize(("bed", "step", "card"), [("Front bumper", "5@US", "100"), ("Crosslay 2", "5@US", "165"), ("Crosslay 2", "2@US", None), ("Front bumper", "", None)])
def test_the_panel_card(run, bed, step, card):
    """A bed says what the panel card has for it where the card's step makes that another number."""
    assert rows(run, {**RIG, "panel_step": step})[bed].get("card") == card


def test_units(run):
    """100.65 psi is 694 kPa, at 6.894757 kPa a psi, and a kPa gauge is set to 10."""
    row = rows(run, system="SI")["Front bumper"]
    assert (row["pressure"], row["length"]) == ("690", "30")  # 100 ft are 30.48 m


def test_a_fault_leaves_no_number(run):
    """A bed with a fault has no number; each bed keeps its place in the profile, where its page finds it again."""
    beds = [{**RIG["beds"][0], "length": "1,5,0@US"}, *RIG["beds"][1:]]
    found = rows(run, {**RIG, "beds": beds})
    assert (found["Front bumper"]["code"], found["Front bumper"]["pressure"], found["Front bumper"]["is_over"]) == ("faulty_bed", None, False)
    assert run("rig.beds_page", "answer", profile={**RIG, "beds": beds}, shelf=catalogue.shelf(), units=units.shown_in("US"))["is_faulty"] is True
    assert [found[bed["name"]]["place"] for bed in beds] == list(range(len(beds)))


def test_no_beds(run):
    """A rig without beds has no rows, and no fault."""
    assert run("rig.beds_page", "answer", profile={**RIG, "beds": []}, shelf=catalogue.shelf(), units=units.shown_in("US")) == {"rows": [], "is_faulty": False}


GUN = {"name": "Deck gun", "device": "master", "device_most": "800@US", "end": {"kind": "fog", "flow": "1000@US", "pressure": "100@US"}}
STACK = {**GUN, "end": {"kind": "smooth", "tip": "1.5@US", "pressure": "80@US"}}


@pytest.mark.parametrize(("bed", "code", "pressure"), [
    (GUN, "device_over", None),  # 1,000 gpm through what its maker made for 800: common practice, the maker's limit comes first
    ({**GUN, "device_most": "1000@US"}, "piped", "125"),  # just made for it: 100 and the handbook's 25 for the appliance
    (STACK, "piped", "105"),  # 29.7 x 2.25 x 8.944 = 597.7 gpm
    ({**STACK, "tips": ["2@US"]}, "device_over", None),  # its other tip: 29.7 x 4 x 8.944 = 1062.6 gpm
    ({**STACK, "tips": ["1.375@US"]}, "piped", "105"),  # 502 gpm
])
def test_a_stop_leaves_no_number(run, bed, code, pressure):
    """What Pressure stops has no number on the start page, with any tip that the rig has for it."""
    row = rows(run, {**RIG, "beds": [bed]})["Deck gun"]
    assert (row["code"], row["pressure"], row["is_over"], row.get("tip")) == (code, pressure, False, bed["end"].get("tip"))


def test_each_tip_on_hose_is_judged_by_itself(run):
    """A gun on hose stands once for each tip: 597.7 gpm are within what it is made for, 1,062.6 are not."""
    gun = {**STACK, "hose": "attack-2.5", "length": "50@US", "tips": ["2@US"]}
    told = run("rig.beds_page", "answer", profile={**RIG, "beds": [gun]}, shelf=catalogue.shelf(), units=units.shown_in("US"))["rows"]
    assert [row["code"] for row in told] == ["hose", "device_over"]


# by hand: 100.65 and 164.1 psi, see above; an annual test at 160 stops the second, and its working limit of 144 is clear of the first
def test_past_its_test_pressure_no_number(run):
    """A line that could see its hose's service-test pressure is stopped, the shorter one is not."""
    near = rows(run, {**RIG, "hoses": [{**RIG["hoses"][0], "test_pressure": "170@US"}]})["Crosslay 2"]
    assert (near["pressure"], near["is_over"]) == ("164", True)  # past nine tenths of 170, which is 153
    found = rows(run, {**RIG, "hoses": [{**RIG["hoses"][0], "test_pressure": "160@US"}]})
    assert (found["Crosslay 2"]["code"], found["Crosslay 2"]["pressure"]) == ("above_test_pressure", None)
    assert (found["Front bumper"]["pressure"], found["Front bumper"]["is_over"]) == ("101", False)


def test_a_reel_of_ultra_high_pressure(run):
    """A fire apparatus magazine, undated: 1,100 psi at the nozzle took 1,400 at the pump, some 300 in the reel's hose; at 20 gpm through 200 ft that is C 3,750. Hose is tested at a tenth more than
    it is run at (NFPA 1962): 1,540. Without a test pressure of the hose's own, 1,400 psi is stopped as high pressure.
    """
    reel = {"name": "Reel", "hose": "booster-0.75", "length": "200@US", "end": {"kind": "fog", "flow": "20@US", "pressure": "1100@US"}}
    hose = {"hose": "booster-0.75", "coefficient": "3750@US", "origin": "measured"}
    own = rows(run, {**RIG, "beds": [reel], "hoses": [{**hose, "test_pressure": "1540@US"}]})["Reel"]
    assert (own["pressure"], own["code"]) == ("1400", "hose")
    unknown = rows(run, {**RIG, "beds": [reel], "hoses": [hose]})["Reel"]
    assert (unknown["pressure"], unknown["code"]) == (None, "high_pressure")
