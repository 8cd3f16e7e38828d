"""The made-up rig with its gauges: one answer holds what practice says of a run."""
from site_src.content import units
from tests.unit.teaching.test_practice import LIGHTS, PARAMETERS

SHOWN_IN = units.shown_in("SI")


def test_an_act_comes_with_its_gauges(run):
    """Begun and after an act, the gauges are those of the run they come with."""
    begun = run("teaching.bench", "begin", task="to_pump", parameters=PARAMETERS, lights=LIGHTS, faults=[], units=SHOWN_IN)
    assert begun["run"] == run("teaching.practice", "begin", task="to_pump", parameters=PARAMETERS, lights=LIGHTS, faults=[])
    event = {"kind": "throttle", "to": "raised"}
    after = run("teaching.bench", "advance", run=begun["run"], event=event, units=SHOWN_IN)
    assert after["run"] == run("teaching.practice", "advance", run=begun["run"], event=event)
    for answer in (begun, after):
        assert answer["gauges"] == run("teaching.practice", "gauges", run=answer["run"], units=SHOWN_IN)
