"""A rig's own hose figures beside the handbook's."""
import pytest

from tests.unit.rig.test_profile import SHELF, US, a_rig


def figures(run, hoses):
    """The figures of a rig's hoses, as its page shows them."""
    return run("rig.page", "answer", profile=a_rig(hoses=hoses), shelf=SHELF, units=US, parts={"figures": True}, texts=[])["figures"]


@pytest.mark.parametrize(
    ("row", "told"),
    [
        # handbook C 15.5 of 1 3/4 in and 0.2 of 4 in (hydraulics handout); shares by hand
        ({"hose": "attack-1.75", "coefficient": "1.55@US", "origin": "measured"}, ("1.55", "15.5", "measured", "90", True, True)),
        ({"hose": "attack-1.75", "coefficient": "11.4@US", "origin": "measured"}, ("11.4", "15.5", "measured", "26", True, False)),
        ({"hose": "attack-1.75", "coefficient": "20.7@US", "origin": "declared"}, ("20.7", "15.5", "declared", "34", False, True)),
        ({"hose": "attack-1.75", "coefficient": "20.6@US", "origin": "declared"}, ("20.6", "15.5", "declared", "33", False, False)),
        ({"hose": "supply-4", "coefficient": "", "origin": "handbook"}, ("0.2", "0.2", "handbook", "0", False, False)),
        ({"hose": "supply-4", "coefficient": "0.19@US", "origin": "handbook"}, ("0.19", "0.2", "typed", "5", True, False)),
    ],
)
def test_beside_the_handbook(run, row, told):
    """A figure stands beside the handbook's with the difference; one past a third is marked."""
    names = ("coefficient", "handbook", "origin", "percent", "is_lower", "is_large")
    assert figures(run, [row]) == [
        {"hose": row["hose"], "readings": None, "department": None, **dict(zip(names, told, strict=True))}]


@pytest.mark.parametrize(("origin", "readings", "told"), [("measured", "3", "3"), ("measured", "", None), ("declared", "3", None)])
def test_a_measured_figure_says_of_how_many_readings_it_is(run, origin, readings, told):
    """The count goes with what was measured; of a maker's figure it says nothing, and older profiles have none."""
    row = {"hose": "attack-1.75", "coefficient": "11.4@US", "origin": origin, "readings": readings}
    assert [figure["readings"] for figure in figures(run, [row])] == [told]


def test_rows_with_a_fault_are_left_out(run):
    """Of a row that cannot be used there is nothing to compare."""
    hoses = [{"hose": "attack-1.75", "coefficient": "x"}, {"hose": "attack-2.5", "coefficient": "2@US"}]
    assert [row["hose"] for row in figures(run, hoses)] == ["attack-2.5"]
    supply = [{"hose": "attack-2.5", "length": "600@US", "limit": "much"}]  # a fault of the same hose at another place
    rig = a_rig(hoses=[hoses[1], {"hose": "attack-1.75", "coefficient": "11@US"}], supply=supply)
    told = run("rig.page", "answer", profile=rig, shelf=SHELF, units=US, parts={"figures": True}, texts=[])["figures"]
    assert [row["hose"] for row in told] == ["attack-1.75"]


@pytest.mark.parametrize(("row", "typed"), [
    ({"origin": "handbook", "coefficient": ""}, "11.95@US"), ({"origin": "measured", "coefficient": "11.95@US"}, "11.95@US"),
    ({"origin": "pooled", "coefficient": "11.95@US"}, None), ({"origin": "pooled", "coefficient": "12.5@US"}, "11.95@US"),  # pooled anew since
])
def test_a_departments_figure_is_offered(run, row, typed):
    """With its readings, its rigs and its spread; where the rig goes by it there is nothing to take."""
    own = {"coefficient": 11.95, "least": 11, "most": 12.9, "readings": 4, "rigs": 2, "left_out": 1}
    shelf = {**SHELF, "hoses": {**SHELF["hoses"], "attack-1.75": {**SHELF["hoses"]["attack-1.75"], "department": own}}}
    answer = run("rig.page", "answer", profile=a_rig(hoses=[{"hose": "attack-1.75", **row}]), shelf=shelf, units=US, parts={"figures": True}, texts=[])
    assert [figure["department"] for figure in answer["figures"]] == [
        {"coefficient": "11.95", "least": "11", "most": "12.9", "readings": "4", "rigs": "2", "typed": typed}]
