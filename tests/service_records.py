"""Service tests as the phone keeps them, made up: a pass, a fail, an unfinished one, and years of them."""
import copy

from calc.service import page
from site_src.content import standards, units

US = units.fine("US")
BEGUN_MS = 1_790_000_000_000  # a day in September 2026
DAY_MS = 86_400_000
SITE = {"source": "draft", "flow_by": "pitot", "air_f": "70@US", "water_f": "60@US", "barometer_inhg": "29.9@US", "altitude_ft": "500@US",
        "lift_ft": "10@US", "depth_ft": "6@US", "strainer_ft": "3@US", "suction_size_in": "6@US", "suction_length_ft": "20@US",
        "suction_lines": "1", "tips_in": ["1.75@US", "2@US", "2.25@US"]}
RIG = {"drive": "midship", "pump_rated": "1250@US", "pump_stages": "1", "pump_ratio": "2", "governed": "2200", "tank": "750@US",
       "meters": "0", "gauges": "0", "auxiliary": "no", "pressure_control": "governor", "foam": "none", "new": {}, "last": {}}
VALUES = {"water_end_f": "65@US", "governed_rpm": "2210@US", "vacuum_reached_inhg": "24@US", "vacuum_after_inhg": "20@US",
          "prime_s": "20@US", "relief_set_psi": "125@US", "relief_setting_psi": "125@US", "tank_flow_gpm": "600@US", "hydrostatic_psi": "260@US", "closing_s": "5@US", "panel_rpm": "2200", "compound.reference_psi": "50@US", "compound.panel_psi": "52@US",
          "compound.reference_inhg": "10@US", "compound.panel_inhg": "10.5@US"}
SPEEDS = {"capacity": 1600, "overload": 1680, "seventy": 1720, "fifty": 1810}


def value_of(field):
    """A good reading of a field, as typed."""
    if field["kind"] == "check":
        return "yes"
    if field["id"] in VALUES:
        return VALUES[field["id"]]
    name = field["id"].split(".")[-1]
    if name in VALUES or name in SITE:
        return VALUES.get(name) or SITE[name]
    at = {"at_90": 90, "at_150": 150, "at_200": 200, "at_250": 250}[field["id"].split(".")[-2]]
    return f"{ {'set_psi': at, 'flow_gpm': {150: 1250, 250: 625}.get(at), 'peak_psi': at + 20, 'panel_psi': at + 4, 'reference_psi': at}[name] }@US"


def a_record(number=0, rig="rig-1", name="Tollgate Engine 1", kind="annual", begun_ms=BEGUN_MS, wear=0.0, **rig_changes):
    """A whole test with everything read and good; wear is by how much the engine turns faster than when new."""
    record = {
        "schema": 1, "id": f"test-{rig}-{number}", "revision": 9, "rig_id": rig, "rig_name": name, "rig": {**RIG, **rig_changes},
        "standard": standards.standard("us", kind), "conditions": dict(SITE), "accuracy": {},
        "equipment": [{"what": "Test gauge 0-400", "serial": "G-17", "calibrated": "2026-03-02"}, {"what": "Pitot", "serial": "", "calibrated": ""}],
        "people": {"tester": "A. Tester", "witness": ""}, "tests": {}, "events": [], "notes": "", "begun_ms": begun_ms,
        "finished_ms": begun_ms + 7_200_000, "result": None,
    }
    plan = page.answer(copy.deepcopy(record), US)["plan"]
    for test in plan["tests"]:
        if test["kind"] == "run":
            record["tests"][test["id"]] = {"attempts": [an_attempt(test, begun_ms, round(SPEEDS[test["id"]] * (1 + wear)), record)]}
        else:
            values = {field["id"]: value_of(field) for field in test["fields"]}
            record["tests"][test["id"]] = {"values": values}
            if test["hold_s"] is not None:
                record["tests"][test["id"]].update(clock_s=test["hold_s"], clock={"counted_s": test["hold_s"], "since": None, "events": []})
    return judged(record)


def an_attempt(test, begun_ms, engine_rpm, record):
    option = test["tips"][0]
    tip = {"tip_in": record["conditions"]["tips_in"][option["place"]], "count": option["count"]}
    sets = [
        {"at_s": at_s, "at_ms": begun_ms + at_s * 1000, "tip": tip,
         "values": {"discharge_psi": f"{test['gauge_psi'] + 2:.0f}@US", "pitot_psi": [f"{option['pitot_psi'] + 2:.0f}@US"] * tip["count"],
                    "engine_rpm": f"{engine_rpm}@US", "pump_rpm": f"{engine_rpm * 2}@US"}}
        for at_s in test["due_s"]
    ]
    clock = {"counted_s": test["hold_s"], "since": None, "events": [{"kind": "start", "at_s": 0, "wall": begun_ms}]}
    return {"tip": tip, "clock": clock, "clock_s": test["hold_s"], "stopped": None, "sets": sets}


def judged(record):
    """The record with its result, as finishing leaves it."""
    return {**record, "result": page.answer(copy.deepcopy(record), US)["summary"]}


def a_failed_record(**changes):
    """Vacuum lost, capacity short at higher speed, a pause, a stray, a reading taken back."""
    record = a_record(**changes)
    record["tests"]["vacuum"]["values"]["vacuum_after_inhg"] = "11@US"
    runs = record["tests"]["capacity"]["attempts"]
    stray = copy.deepcopy(runs[0])
    stray.update(stopped="flow_strayed", clock_s=300, sets=stray["sets"][:2])
    stray["sets"][1]["values"]["pitot_psi"] = ["90@US"]
    stray["clock"] = {"counted_s": 300, "since": None, "events": [
        {"kind": "start", "at_s": 0, "wall": BEGUN_MS}, {"kind": "pause", "at_s": 120, "wall": BEGUN_MS + 120_000, "reason": "look at a leak"},
        {"kind": "resume", "at_s": 120, "wall": BEGUN_MS + 300_000}, {"kind": "strayed", "at_s": 300, "wall": BEGUN_MS + 480_000}]}
    stray["taken_back"] = [{**stray["sets"][0], "back_ms": BEGUN_MS}]
    runs.insert(0, stray)
    for each in runs[1]["sets"]:
        each["values"].update(discharge_psi="135@US", engine_rpm="1800@US", pump_rpm="3600@US")
    record["rig"]["new"] = {"capacity": {"engine_rpm": 1600, "net_psi": 150}}
    record["events"] = [{"kind": "moved", "s": 3600, "counted_s": 0, "wall": BEGUN_MS + 500_000}]
    record["notes"] = "Packing weeps. =SUM(A1) left in the notes by a joker."
    return judged(record)


def a_run_in_hand(**changes):
    """An unfinished test whose checks before water are all answered yes, so that its run may go on."""
    record, whole = an_unfinished_record(**changes), a_record(**changes)
    record["tests"].update({name: whole["tests"][name] for name in ("interlock", "shift")})
    return record


def an_unfinished_record(**changes):
    """Site and two runs read, the rest not; overload cannot be done."""
    record = a_record(**changes)
    kept = ("conditions", "checks_dry", "governed", "vacuum", "capacity")
    record["tests"] = {name: given for name, given in record["tests"].items() if name in kept}
    record["tests"]["overload"] = {"not_done": "no time"}
    record["tests"]["capacity"]["attempts"][0]["sets"].pop()
    record["tests"]["capacity"]["attempts"][0].update(clock_s=930)
    return {**record, "finished_ms": None, "result": None, "equipment": []}
