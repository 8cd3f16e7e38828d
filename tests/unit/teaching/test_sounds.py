"""What the made-up rig is heard to do: by what moves in it, never by its lamps."""
import pytest

# collar in road, neutral, all still: the state of a rig that has just stopped
STILL = {
    "engine_rpm": 700, "pump_rpm": 0, "shaft_rpm": 0, "throttle": "idle", "gear": "neutral", "selector": "road", "valve": "road", "collar": "road",
    "road_air": 1, "pump_air": 0, "pushed_s": 0, "grinding": False, "brake_set": True, "moved": False, "circulating": False, "rise_f": 0,
}


@pytest.mark.parametrize(
    ("changes", "raised", "pressure_psi", "heard"),
    [  # each by what a machine of this kind does (common practice)
        ({}, False, 0, ["clunk_road"]),
        ({"valve": "centre"}, False, 0, ["exhaust", "clunk_road"]),  # the old side empties
        ({"valve": "centre", "road_air": 0.05}, False, 0, ["clunk_road"]),  # almost empty: silent
        ({"valve": "centre", "road_air": 0.1}, False, 0, ["clunk_road"]),
        ({"pump_rpm": 1}, False, 0, ["clunk_road"]),  # as good as still
        ({"circulating": True}, False, 1, ["clunk_road", "water"]),
        ({"selector": "pump"}, False, 0, ["clunk_road"]),  # a stuck valve: the lever moved and nothing is heard
        ({"valve": "pump", "pump_air": 1, "road_air": 0, "collar": "between"}, False, 0, []),
        ({"valve": "pump", "road_air": 0, "collar": "between", "grinding": True}, False, 0, ["grinding"]),
        ({"valve": "pump", "road_air": 0, "collar": "pump"}, False, 0, ["clunk_pump"]),
        ({"valve": "pump", "road_air": 0, "collar": "pump", "gear": "drive", "pump_rpm": 1500}, False, 50, ["clunk_pump", "loads", "pump"]),
        ({"valve": "pump", "road_air": 0, "collar": "pump", "gear": "drive", "pump_rpm": 3000, "circulating": True}, True, 150,
         ["clunk_pump", "loads", "pump", "raised", "water"]),
        ({"valve": "pump", "road_air": 0, "collar": "pump", "gear": "drive", "pump_rpm": 1500, "circulating": True}, False, 0, ["clunk_pump", "loads", "pump"]),  # dry
        ({"gear": "drive"}, False, 0, ["clunk_road", "leans"]),
        ({"valve": "pump", "road_air": 0, "collar": "between", "gear": "drive"}, False, 0, ["free"]),
        ({"gear": "drive", "moved": True}, True, 0, ["clunk_road", "leans", "raised", "moves"]),
    ],
)
def test_sounds(run, changes, raised, pressure_psi, heard):
    """Air, collar, gears, pump, engine and water are heard where they move, and only then."""
    assert run("teaching.sounds", "sounds", train={**STILL, **changes}, raised=raised, pressure_psi=pressure_psi) == heard
