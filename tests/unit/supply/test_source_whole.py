"""A hydrant and a draft as their pages open: the whole answer, worked by hand."""
import pytest

from calc.base.errors import CalcError
from site_src.content import reckoners
from tests.unit.supply.reckoned import ask, row


def figure(name, kind, text, sources, **terms):
    return {"name": name, "kind": kind, "text": text, "terms": terms, "sources": sources}


def test_a_hydrant(run):
    """65 psi that fall to 58 at 250 gpm. To 20 psi: 250 x (45 / 7)^0.54 = 682.8 gpm; at 500 gpm 65 - 7 x 2^1.852 = 39.73 psi are left.

    5 in hose loses 0.08 x (gpm / 100)² in 100 ft: 2 psi at 500, so 37.73 come in, and 19.73 psi reach 987 ft; it holds 102 gal, filled in 0.204 min.
    Where both losses take 45 psi: 654.27 gpm (41.58 + 3.42); through two lines, a quarter of the hose's loss, 675.34 (44.09 + 0.91).
    Of the three rules: 7 of 65 psi are 10.8 percent, which is up to two times more, two times more, and once more.
    """
    drop = {"static": "65", "residual": "58", "drop": "7", "percent": "10.8"}
    told = ask(run, "hydrant")
    picture = told.pop("picture")
    assert told == {
        "sum": "hydrant",
        "figure": {"kind": "flow", "text": "683"},
        "facts": {"class": "B", "safe": "1", "floor": "20", "test": "250"},
        "rows": [
            figure("available", "flow", "683", ["hydrant_flow"], flow="250", static="65", floor="20", residual="58", available="682.84"),
            figure("class", None, "B", ["hydrant_class"], at="20", flow="682.84"),
            figure("more", None, "1", ["percentage", "first_digit", "squaring", "hydrant_flow"], percentage="2", first_digit="2", squaring="1", by_flow="1", test="250", floor="20"),
            figure("percentage", None, "2", ["percentage"], **drop), figure("first_digit", None, "2", ["first_digit"], **drop), figure("squaring", None, "1", ["squaring"], **drop),
            figure("at_pump", "flow", "654", ["hydrant_flow", "friction"], floor="20"),
            figure("one_more", "flow", "675", ["hydrant_flow", "friction", "parallel"], lines="2", both="675.34", most="654.27", more="21.06"),
            figure("reverse", "flow", "683", ["hydrant_flow", "friction", "working_pressure"], limit="180", floor="20"),
            figure("reach", "length", "987", ["hydrant_flow", "friction"], hydrant="39.73", floor="20", elevation="0", rate="2", reach="986.63"),
            figure("fill", "time", "0.2", ["relay_fill"], held="102", flow="500", minutes="0.204"),
            figure("intake", "pressure", "38", ["hydrant_flow", "friction", "elevation"], hydrant="39.73", friction="2", elevation="0", flow="500", intake="37.73")],
        "cautions": [],
    }
    curve = picture.pop("curve")
    # to nothing it would give 250 x (65 / 7)^0.54 = 832.84 gpm, the end of the picture
    assert curve == [[pytest.approx(step / 16), pytest.approx(1 - (step / 16) ** (1 / 0.54), abs=1e-3)] for step in range(17)]
    assert picture == {
        "line": {"hydrant": "40", "intake": "38", "flow": "500", "length": "100", "hoses": 1}, "static": "65",
        "test": {"x": pytest.approx(250 / 832.84, rel=1e-4), "y": pytest.approx(58 / 65), "flow": "250", "pressure": "58"},
        "floor": {"x": pytest.approx(682.84 / 832.84, rel=1e-4), "y": pytest.approx(20 / 65), "flow": "683", "pressure": "20"}}


@pytest.mark.parametrize(("shown", "least"), [("US", "2"), ("SI", "14")])
def test_a_pitot_below_the_table_of_large_outlets(run, shown, least):
    """It begins at 2 psi (NFPA 291, from memory), 13.8 kPa."""
    with pytest.raises(CalcError) as refusal:
        ask(run, "hydrant", shown, known="pitot", outlet="4.5@US", pitot="1@US", static="65@US", residual="58@US", floor="20@US")
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("pitot", "below_table", {"least": least})


def test_a_hose_by_its_own_working_pressure(run):
    """Where the rig's own hose says what it works at, that counts, not nine tenths of its test."""
    shelf = reckoners.shelf("hydrant")
    hoses = {name: {**hose, "work_psi": 150} for name, hose in shelf["hoses"].items()}
    assert row(ask(run, "hydrant", shelf={**shelf, "hoses": hoses}), "reverse")["terms"]["limit"] == "150"


def test_a_draft(run):
    """10 ft of lift and 3.4 ft of hose at 1,000 gpm, of 33.34 ft that air lifts water of 60 F at sea level: two thirds are practical, 19.94 to spare.

    An inch of mercury lifts 1.13 ft (study cards): 13.4 ft are 11.86 inHg. A second hose takes half the flow at a quarter of the loss.
    """
    told = ask(run, "draft")
    picture = told.pop("picture")
    assert told == {
        "sum": "draft",
        "figure": {"kind": "flow", "text": "1250"},
        "facts": {"percent": "100", "lift": "10", "expected": "12", "flow": "1000", "counted": "10.0", "practical": "22.2"},
        "rows": [
            figure("left", "flow", "1250", ["lift_share"], rated="1250", percent="100", counted="10", left="1250"),
            figure("counted", "lift", "10.0", ["counted_lift", "max_lift"], lift="10", lost="0", counted="10"),
            figure("practical", "lift", "22.2", ["practical_lift", "max_lift"], max="33.34"),
            figure("max", "lift", "33.3", ["max_lift"]),
            figure("loss", "lift", "3.4", ["suction_loss"], each="1000", length="20", loss="3.4"),
            figure("expected", "vacuum", "12", ["vacuum"], lift="10", loss="3.4", max="33.34", vacuum="11.86"),
            figure("spare", "lift", "19.9", ["max_lift", "suction_loss"], lift="10", loss="3.4", max="33.34", spare="19.94"),
            figure("suction_size", "diameter", "6.00", ["suction_size"], rated="1250", hoses="1", size="6"),
            figure("one_more_suction", "lift", "0.9", ["suction_loss"], hoses="2", each="500", loss="0.85")],
        "cautions": [],
    }
    assert picture == {
        "lift": {"share": pytest.approx(10 / 33.34, rel=1e-4), "text": "10"}, "loss": {"share": pytest.approx(13.4 / 33.34, rel=1e-4), "text": "3.4"},
        "marks": [{"name": "practical", "share": pytest.approx(2 / 3), "text": "22.2"}, {"name": "max", "share": 1, "text": "33.3"}]}


def test_two_supply_hoses_hold_twice_as_much(run):
    """By hand, as above: 100 ft of 5 in hold 102 gal, two of them 204, filled in 0.408 min at 500 gpm."""
    assert row(ask(run, "hydrant", lines="2"), "fill")["terms"] == {"held": "204", "flow": "500", "minutes": "0.408"}
