"""A wildland hose layout, against what is printed of its rules and by hand."""
import pytest

from calc.base.errors import CalcError
from tests.unit.supply.reckoned import ask, called_to_mind, row

# one 1 1/2 in line of 1,000 ft with a fog nozzle at its end and no lateral hose
SIMPLE = {"laterals": "1", "spacing": "0", "lateral_length": "0", "tip": "fog", "flow": "60", "fog": "100", "wyes": "0", "rise": "150", "gives": "600"}
TRUNK = {"coefficient": 24, "length_ft": 1000, "spacing_ft": 0, "laterals": 1, "lateral_gpm": 50, "rise_ft": 0, "fittings": 0}


def test_uphill(run):
    """By hand, C 24: 24 x 0.6^2 x 10 = 86.4; 150 ft are 65.1 psi, by NWCG's field rule 75; with a 100 psi nozzle 251.5 and 261.4."""
    answer = ask(run, "hoselay", **SIMPLE)
    assert (answer["sum"], answer["figure"]["text"], row(answer, "hoselay_field")["text"]) == ("hoselay", "252", "261")
    assert row(answer, "hoselay_pump")["terms"] == {"nozzle": "100", "lateral": "0", "trunk": "86.4", "wyes": "0", "elevation": "65.1", "pump": "251.5"}
    assert called_to_mind(answer) == []


@pytest.mark.parametrize(("laterals", "spacing_ft", "loss_psi"), [
    (1, 0, 13.8), (3, 0, 124.4),  # by hand, C 24: 24 and 72 gpm through 1,000 ft
    (3, 200, 88.5),  # 72 gpm for 600 ft, 48 for 200, 24 for 200: 74.65 + 11.06 + 2.76
    (6, 200, 152.06),  # the first at the pump: 120, 96, 72, 48, 24 gpm for 200 ft each: 69.12 + 44.24 + 24.88 + 11.06 + 2.76
])
def test_trunk(run, laterals, spacing_ft, loss_psi):
    """What each stretch carries is what leaves beyond it."""
    loss = run("supply.hoselay", "trunk_loss_psi", coefficient=24, length_ft=1000, spacing_ft=spacing_ft, laterals=laterals, lateral_gpm=24)
    assert loss == pytest.approx(loss_psi, abs=0.05)


@pytest.mark.parametrize(("rise", "elevation", "field"), [("100", "43.4", "50"), ("-100", "-43.4", "-50"), ("0", "0", "0"), ("400", "173.6", "200")])
def test_height_both_ways(run, rise, elevation, field):
    """NWCG, Firefighter Math 3.4: half a psi a foot up or down, beside 0.434 psi; 400 ft are 200 and 173.6."""
    answer = ask(run, "hoselay", rise=rise)
    assert (row(answer, "hoselay_pump")["terms"]["elevation"], row(answer, "hoselay_field")["terms"]["elevation"]) == (elevation, field)


def test_five_wyes(run):
    """NWCG, Firefighter Math 3.4: five wyes take 25 psi."""
    assert row(ask(run, "hoselay", wyes="5"), "hoselay_wyes")["text"] == "25"


@pytest.mark.parametrize(("tip", "flow"), [("0.1875", "7.38"), ("0.25", "13.13"), ("0.3125", "20.51"), ("0.375", "29.53"), ("0.5", "52.5")])
def test_small_tips(run, tip, flow):
    """By hand, 29.7 d^2 sqrt(50); trade tables, from memory, print 7, 13, 21 and 30 for the first four."""
    assert row(ask(run, "hoselay", tip=tip, laterals="1"), "hoselay_tip")["terms"]["flow"] == flow


def test_laterals_have_their_own_hose(run):
    """By hand: 30 gpm in 100 ft of 1 in take 150 x 0.09 = 13.5 psi, of 3/4 in 99, of 1 1/2 in 2.16."""
    for hose, loss in (("booster-1", "13.5"), ("booster-0.75", "99"), ("attack-1.5", "2.16")):
        assert row(ask(run, "hoselay", tip="fog", flow="30", lateral=hose), "hoselay_lateral")["terms"]["friction"] == loss


def test_unlined(run):
    """Wildland teaching, from memory: about twice the loss, 172.8 for 86.4; it says that it is rough."""
    answer = ask(run, "hoselay", **SIMPLE, lining="unlined", limit="800")
    assert row(answer, "hoselay_trunk")["terms"]["friction"] == "172.8"
    assert called_to_mind(answer) == ["unlined"]


def test_downhill(run):
    """By hand: 100 + 86.4 - 0.434 x 100 = 143 psi at the pump, 186 with the nozzle shut at the bottom; past 430 ft the slope feeds it."""
    answer = ask(run, "hoselay", **{**SIMPLE, "rise": "-100"})
    assert (answer["figure"]["text"], row(answer, "hoselay_shut")["text"]) == ("143", "186")
    assert [(each["code"], each["amount"], each["limit"]) for each in answer["cautions"]] == [("downhill", "186", "43")]
    fed = ask(run, "hoselay", **{**SIMPLE, "rise": "-440"})  # 186.4 - 190.96 = -4.56
    assert (fed["figure"]["text"], fed["cautions"][0]["code"], fed["cautions"][0]["amount"]) == ("0", "gravity_feeds", "5")
    assert fed["cautions"][0]["limit"] == "191"  # nozzles shut, all of the fall stands at the low end
    # wide open: 60 x root (190.96 / 186.4) = 60.73, and 100 x 1.0245 at the nozzle
    for pump in ("figure", "high"):  # no number of pumps is enough where none is needed
        fed = ask(run, "hoselay", **{**SIMPLE, "rise": "-440", "pump": pump})
        assert (fed["sum"], fed["facts"]) == ("hoselay_gravity", {"spare": "5", "flow": "60", "nozzle": "100", "open": "61", "open_nozzle": "102"})


@pytest.mark.parametrize(("limit", "codes"), [("251.6", []), ("251.5", ["hose_over"]), ("", []), ("200", ["hose_over"])])
def test_the_hose_by_its_stencil(run, limit, codes):
    """A typed limit is held; left empty, the class of 1 1/2 in hose: 0.9 of 300 psi."""
    assert called_to_mind(ask(run, "hoselay", **SIMPLE, limit=limit)) == codes


def test_the_hose_by_its_class(run):
    """By hand: 200 ft up are 86.8 psi, 273.2 in all: past 270."""
    assert called_to_mind(ask(run, "hoselay", **{**SIMPLE, "rise": "200"})) == ["trunk_above_working_pressure"]


def test_pumps_in_series(run):
    """By hand: 251.5 psi from pumps of 150 each is two, 125.75 each. 0.1515 psi a foot leave 20 after 698 ft."""
    answer = ask(run, "hoselay", **{**SIMPLE, "gives": "150"})
    assert (answer["sum"], answer["facts"]["pumps"], answer["facts"]["each"]) == ("hoselay_series", "2", "126")
    assert row(answer, "hoselay_next")["text"] == "698"
    assert [(each["code"], each["level"], each["amount"], each["limit"], each["needed"], each["longest"]) for each in answer["cautions"]] == [
        ("hoselay_past_pump", "stop", "252", "150", "2", "698")]
    assert ask(run, "hoselay", **{**SIMPLE, "gives": "252"})["sum"] == "hoselay"  # exactly enough is one pump


@pytest.mark.parametrize(("changes", "pump_psi", "next_ft"), [
    ({}, 80, 1000),  # 6 psi a hundred feet: 20 left just at the end
    ({}, 50, 500), ({}, 20, 0), ({}, 10, 0), ({}, 300, 1000),
    ({"rise_ft": 100}, 50, 290.1),  # 0.06 + 0.0434 psi a foot
    ({"fittings": 8}, 50, 300),  # 0.06 + 0.04
    ({"laterals": 2, "spacing_ft": 500, "lateral_gpm": 50}, 170, 1000),  # 24 psi a hundred feet, then 6: 150 gone at the end
    ({"laterals": 2, "spacing_ft": 500, "lateral_gpm": 50}, 155, 750),  # 120 of 155 in the first half, 15 more in 250 ft
    ({"rise_ft": -300}, 50, 1000),  # it falls more than it loses
])
def test_where_the_next_pump_stands(run, changes, pump_psi, next_ft):
    """By hand: where 20 psi is left along an even slope."""
    assert run("supply.hoselay", "next_pump_ft", trunk={**TRUNK, **changes}, pump_psi=pump_psi) == pytest.approx(next_ft, abs=0.1)


@pytest.mark.parametrize(("needed_psi", "each_psi", "pumps"), [(300, 150, 2), (300.1, 150, 3), (150, 150, 1), (0, 150, 1), (-20, 150, 1)])
def test_pumps_for(run, needed_psi, each_psi, pumps):
    """By hand: pressures in series add."""
    assert run("supply.hoselay", "pumps_for", needed_psi=needed_psi, each_psi=each_psi) == pumps


def test_laterals_past_the_trunk(run):
    """Six laterals 200 ft apart just fit a trunk of 1,000 ft; 201 do not, and the spacing is what is marked."""
    assert ask(run, "hoselay", laterals="6")["rows"]
    with pytest.raises(CalcError) as refusal:
        ask(run, "hoselay", laterals="6", spacing="201")
    assert (refusal.value.field, refusal.value.code) == ("spacing", "past_trunk")
    with pytest.raises(CalcError) as refusal:
        run("supply.hoselay", "trunk_loss_psi", coefficient=24, length_ft=1000, spacing_ft=0, laterals=21, lateral_gpm=5)
    assert (refusal.value.field, refusal.value.code) == ("laterals", "too_many")
    with pytest.raises(CalcError) as refusal:
        run("supply.hoselay", "trunk_loss_psi", coefficient=24, length_ft=1000, spacing_ft=600, laterals=3, lateral_gpm=5)
    assert (refusal.value.field, refusal.value.code) == ("spacing_ft", "past_trunk")


def test_water_to_fill(run):
    """NWCG, Firefighter Math 3.2: 9.2 gal in 100 ft of 1 1/2 in, 4 in 1 in: 92 of trunk and 3 x 4.1 of laterals."""
    assert row(ask(run, "hoselay"), "hoselay_fill")["text"] == "104"


def test_what_is_drawn(run):
    """The slope by its sign, and the next pump as a share of the trunk."""
    picture = ask(run, "hoselay", **{**SIMPLE, "gives": "150"})["picture"]
    assert (picture["slope"], picture["next"], picture["laterals"], picture["wye"], picture["nozzle"]) == (1, pytest.approx(0.698, abs=1e-3), 1, "100", "100")
    assert [ask(run, "hoselay", rise=rise)["picture"]["slope"] for rise in ("-1", "0")] == [-1, 0]

