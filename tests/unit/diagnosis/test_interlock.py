"""The truth tables of the lights, forward and backward."""
import itertools

import pytest

from calc.base.errors import CalcError
from calc.diagnosis import interlock
from site_src.content import data

TABLES = data.by_id(data.load("diagnose/interlocks")["table"])
SPLIT = TABLES["split"]


def behind(run, table="split", **lights):
    return run("diagnosis.interlock", "behind", table=TABLES[table], lights=lights)


def test_split_truth_table(run):
    """Sixteen states less the four that are in gear and in neutral at once; the lights by hand."""
    rows = run("diagnosis.interlock", "rows", table=SPLIT)
    assert len(rows) == 12
    for row in rows:
        inputs, lights = row["inputs"], row["lights"]
        assert lights["engaged"] == inputs["collar"]
        assert lights["ok"] == (inputs["collar"] and inputs["pump_gear"] and inputs["brake"])
        assert lights["throttle"] == (lights["ok"] or (inputs["neutral"] and inputs["brake"]))


@pytest.mark.parametrize(
    ("lights", "states", "missing", "perhaps"),
    [
        # engaged lit, OK dark: gear or brake, and the collar is not in question
        ({"engaged": "lit", "ok": "dark"}, {"collar": "true"}, [], ["pump_gear", "brake"]),
        # and throttle-ready lit: that is neutral with the brake set, so the gear is what is missing
        ({"engaged": "lit", "ok": "dark", "throttle": "lit"}, {"neutral": "true", "brake": "true", "pump_gear": "false"},
         ["pump_gear"], []),
        ({"engaged": "dark", "ok": "dark"}, {"collar": "false"}, ["collar"], ["pump_gear", "brake"]),
    ],
)
def test_behind(run, lights, states, missing, perhaps):
    """What is missing for OK-to-pump, given the lights."""
    told = behind(run, **lights)
    assert states.items() <= {row["id"]: row["is"] for row in told["inputs"]}.items()
    assert [row["id"] for row in told["dark"]] == [light for light in ("engaged", "ok", "throttle") if lights.get(light) == "dark"]
    [ok] = [row for row in told["dark"] if row["id"] == "ok"]
    assert (ok["missing"], ok["perhaps"]) == (missing, perhaps)


def test_lights_that_cannot_be(run):
    """OK lit with engaged dark comes from no state of the inputs."""
    told = behind(run, engaged="dark", ok="lit", throttle="dark")
    assert (told["possible"], told["dark"]) == (0, [])  # and so nothing can be said of what is missing for a dark one


@pytest.mark.parametrize("name", TABLES)
def test_backward_agrees_with_forward(name):
    """Every state of the inputs is among those that its own lights allow."""
    table = TABLES[name]
    for row in interlock.rows(table):
        lights = {light: "lit" if lit else "dark" for light, lit in row["lights"].items()}
        told = interlock.behind(table, lights)
        assert told["possible"] > 0
        for state in told["inputs"]:
            assert state["is"] == "open" or (state["is"] == "true") == row["inputs"][state["id"]]


def test_throttle_ready_never_proves_pump():
    """With throttle-ready alone, collar and gear stay open."""
    for name, others in itertools.product(TABLES, [{}, {"engaged": "unknown"}]):
        if any(light["id"] == "throttle" for light in TABLES[name]["lights"]):
            told = interlock.behind(TABLES[name], {"throttle": "lit", **others})
            assert told["inputs"][0]["is"] == "open"


def test_refusal(run):
    """A light that the table does not have, or one that is neither lit nor dark, is refused by its name, cut to sixty letters."""
    for lights, name in (({"hazard": "lit"}, "hazard"), ({"x" * 61: "lit"}, "x" * 60), ({"ok": "green"}, "ok")):
        with pytest.raises(CalcError) as refusal:
            behind(run, **lights)
        assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("lights", "unknown", {"light": name})


def test_too_many_inputs(run):
    """Eight inputs are 256 states; a ninth is refused before they are counted out."""
    table = {"inputs": [str(place) for place in range(8)], "never_both": [], "lights": []}
    assert len(run("diagnosis.interlock", "rows", table=table)) == 256
    with pytest.raises(CalcError) as refusal:
        run("diagnosis.interlock", "rows", table={**table, "inputs": [*table["inputs"], "8"]})
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("table", "too_large", {"most": 8})
