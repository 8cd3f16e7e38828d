"""What takes a rig out of service: each row whole, and what is taken where sources differ is what the rows of the project have."""
import pytest

from calc.bay import records
from site_src.content import checks, data

ROWS = data.by_id(checks.rows())
DUE = data.by_id(checks.due())
CONDITIONS = data.by_id(checks.conditions())


@pytest.mark.parametrize("name", CONDITIONS)
def test_a_condition_is_whole(name):
    """It has its class, what it applies to, its sources, and items of checks that there are; what is restricted says what it may not do."""
    row = CONDITIONS[name]
    assert row["class"] in records.CLASSES and row["scope"] in records.SCOPES
    assert row["source"] and set(row["source"]) <= set(checks.sources()) and row["basis"] in data.words("site")["basis"]
    assert set(row["checks"]) <= set(ROWS)
    assert row["what"] and (row["note"] or row["class"] != "restricted")


def test_words():
    """Rows and words are the same; no language says a condition twice."""
    for language in data.languages():
        words = data.words("conditions", language)
        assert list(words["condition"]) == list(CONDITIONS)
        assert list(words["differ"]) == [row["id"] for row in checks.differing()]
        assert len({said["what"] for said in words["condition"].values()}) == len(CONDITIONS)
    assert len(CONDITIONS) >= 78 and len(checks.differing()) == 17


def test_a_pump_that_stays_in_is_the_whole_rigs():
    """Such a rig cannot be driven (the order of a shift to road that fails, common practice); one that does not go in has no pump, and drives."""
    assert (CONDITIONS["pump_stays_in"]["scope"], CONDITIONS["pump_engage"]["scope"]) == ("apparatus", "pump")
    assert ROWS["shift_out"]["scope"] == "apparatus"


def test_from_memory_is_never_published():
    """Where the standard's own text is the only source, its wording was not seen."""
    assert all(row["basis"] != "published" for row in CONDITIONS.values() if set(row["source"]) <= {"nfpa_1911", "memory", "practice"})


def limit(name):
    return {key: ROWS[name]["limit"][key] for key in ("kind", "value", "to")}


# what is taken, by the words of data/words/en/conditions.toml, beside the rows that have it
TAKEN = {
    "packing": lambda: limit("packing_drip") == {"kind": "range", "value": 8, "to": 120},
    "gear_oil": lambda: (DUE["gear_oil"]["months"], DUE["gear_oil"]["hours"]) == (12, 500),
    "prime": lambda: limit("prime_pull") == {"kind": "min", "value": 22, "to": None},
    "vacuum_loss": lambda: limit("prime_hold") == {"kind": "max", "value": 10, "to": None},
    "valve_cycle": lambda: "weekly" in ROWS["valve_cycle"]["lists"],
    "backflush": lambda: "after_use" in ROWS["backflush"]["lists"],
    "thermal": lambda: limit("valve_thermal") == {"kind": "target", "value": 120, "to": None},
    "winter": lambda: {"care_frost_drain"} <= {name for name, row in ROWS.items() if row["after"] == "frost"},
    "cut_out": lambda: limit("air_cut_out") == {"kind": "range", "value": 110, "to": 140},
    "low_air": lambda: limit("air_low_warning") == {"kind": "min", "value": 60, "to": None},
    "tread": lambda: (limit("walk_tread_steer")["value"], limit("walk_tread_drive")["value"]) == (4, 2),
    "tire_age": lambda: CONDITIONS["tire_age"]["class"] == ROWS["walk_tire_age"]["class"] == "report",
    "inspection": lambda: DUE["complete_inspection"]["months"] == 6,
    "overload": lambda: data.by_id(data.load("service/us")["run"])["overload"]["from_gpm"] == 750,
}


@pytest.mark.parametrize("name", TAKEN)
def test_what_is_taken(name):
    """The figure that the page says is taken is the one that the checks go by."""
    assert TAKEN[name]()


def test_the_others_are_no_figure():
    assert {row["id"] for row in checks.differing()} - set(TAKEN) == {"relief_set", "t2p_hydrant", "who"}
