"""A water page's answer by hose as it was measured, beside the handbook's own; worked by hand."""
import pytest

from site_src.content import reckoners, units
from tests.unit.supply.reckoned import row

POOL = {"coefficient": 11.1, "least": 10, "most": 12, "readings": 7, "rigs": 3, "left_out": 1}


def whole(run, page, pool=None, own=None, is_modern=True, **changes):
    """The page's whole answer at its opening entries but for the changes; own: what a rig's profile makes of a hose, by its name; is_modern: whether hose of late was measured."""
    shelf = reckoners.shelf(page, pool)
    if pool and not is_modern:
        shelf["hoses"] = {name: {key: value for key, value in figures.items() if key != "modern"} for name, figures in shelf["hoses"].items()}
    for name, figures in (own or {}).items():
        shelf["hoses"][name] = {**shelf["hoses"][name], **figures}
    return run("supply.page", "answer", page=page, entries={**reckoners.opening(page, "customary"), **changes}, shelf=shelf, units=units.shown_in("US"), texts=[])["answer"]


def test_the_departments_hose(run):
    """11.1 x 0.95^2 x 1.5 = 15.03 psi behind the eductor, 115 of 130; 30 psi are lost in 30 / 10.018 = 299 ft, where the handbook's 15.5 has 214. The handbook's own answer stands as it was."""
    answer = whole(run, "foam", {"attack-1.75": POOL})
    assert (row(answer, "behind")["text"], row(answer, "back")["text"], answer["facts"]["longest"]) == ("21", "121", "214")
    measured = answer["measured"]
    assert measured["whose"] == "department"
    assert measured["hoses"] == {"attack-1.75": {"coefficient": "11.1", "least": "10", "most": "12", "readings": "7", "rigs": "3"}}
    [other] = measured["answers"]
    assert other["rows"] == {"behind": "15", "back": "115", "longest": "299"}
    assert (other["figure"]["text"], other["facts"]["longest"]) == (answer["figure"]["text"], "299")


def test_it_may_say_another_thing(run):
    """At 250 ft the handbook's hose stops the eductor, 100 + 34.97 of 130, and the department's does not: 125. Its time stands beside, 30 / (95 x 3 %) = 10.5 min."""
    answer = whole(run, "foam", {"attack-1.75": POOL}, length="250@US")
    assert (answer["figure"]["text"], answer["sum"]) == (None, "foam_none")
    [other] = answer["measured"]["answers"]
    assert (other["figure"]["text"], other["sum"]) == ("10.5", "foam")


def test_of_late(run):
    """5 in hose was measured at C 0.06 to 0.0667 (see hoses.toml): 3,000 ft at 1,000 gpm lose 180 to 200 psi, by the handbook's 0.08 240: each of two legs 120, and 90 to 100, besides 20."""
    answer = whole(run, "relay", distance="3000@US", flow="1000@US")
    assert answer["figure"]["text"] == "140"
    measured = answer["measured"]
    assert (measured["whose"], measured["hoses"]) == ("modern", {"supply-5": None})
    for other, legs in zip(measured["answers"], (2, 2), strict=True):
        assert int(row(answer, "pumpers")["text"]) == legs + 1
        assert "pumpers" not in other["rows"] or other["rows"]["pumpers"] == "3"
    assert [other["figure"]["text"] for other in measured["answers"]] == ["110", "120"]


def test_the_departments_comes_first(run):
    """Where both are known a department's own is the one that is said."""
    assert whole(run, "relay", {"supply-5": {**POOL, "coefficient": 0.07}})["measured"]["whose"] == "department"


@pytest.mark.parametrize("own", [{"origin": "measured", "coefficient": 12}, {"origin": "declared"}, {"origin": "typed"}, {"origin": "pooled", "coefficient": 11.1}])
def test_a_rigs_own_figure_has_none_beside_it(run, own):
    """Whose figure it is then stands with the entries."""
    assert whole(run, "foam", {"attack-1.75": POOL}, {"attack-1.75": own})["measured"] is None


def test_nothing_where_it_reads_the_same(run):
    """Of hose that the page does not take, on a page without hose, and where no figure of it would change: 100 ft of 5 in at 500 gpm lose 2 psi by 0.08, and by 0.0801."""
    assert whole(run, "foam", {"attack-2": POOL})["measured"] is None
    assert whole(run, "tank")["measured"] is None
    assert whole(run, "joint", {"supply-5": {**POOL, "coefficient": 0.0801}}, is_modern=False)["measured"] is None


def test_a_refusal_by_the_other_says_nothing(run):
    """A hose that would lose hundreds of psi a length leaves a relay no answer: none is made up."""
    assert whole(run, "relay", {"supply-5": {**POOL, "coefficient": 8000}}, is_modern=False)["measured"] is None


def test_rows_of_a_page_whose_number_takes_no_hose(run):
    """What a hydrant gives hangs on no hose; what comes through its supply hose does: 4 hundreds of gpm more by less friction. Its number and sentence stand."""
    answer = whole(run, "hydrant", {"supply-5": {**POOL, "coefficient": 0.04}})
    [other] = answer["measured"]["answers"]
    assert (other["figure"], other["facts"]) == (answer["figure"], answer["facts"])
    assert set(other["rows"]) <= {each["name"] for each in answer["rows"]} and "at_pump" in other["rows"]
