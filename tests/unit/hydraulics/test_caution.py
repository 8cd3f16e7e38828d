"""Cautions: what a known limit calls for, and what an unknown one does not."""
import pytest

LIMITS = {"test_psi": 300, "least_usual_gpm": 95, "most_usual_gpm": 200, "crew": "2", "crew_limit_lbf": 75}


def a_line(**given_facts):
    """A line of a report well inside LIMITS, but for what is given."""
    usual = {"id": "A", "feeder": None, "flow_gpm": 150, "elevation_psi": 0,
             "nozzle": {"kind": "fog", "nozzle_psi": 100, "flow_gpm": 150, "reaction_lbf": 70}}
    return {**usual, **given_facts}


def found_in(run, *lines, limits=LIMITS, discharge_psi=150):
    """The cautions of a report of these lines, all with the same limits."""
    return run("hydraulics.caution", "cautions", lines={line["id"]: limits for line in lines},
               report={"discharge_psi": discharge_psi, "lines": list(lines)})


def pushing(reaction_lbf):
    """The same with this push at its nozzle."""
    return a_line(nozzle={"kind": "fog", "nozzle_psi": 100, "flow_gpm": 150, "reaction_lbf": reaction_lbf})


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        (a_line(), []),
        # a limit is allowed; past it is not
        (a_line(flow_gpm=200), []),
        (a_line(flow_gpm=201), [("caution", "flow_above_usual", 201, 200)]),
        (a_line(flow_gpm=95), []),
        (a_line(flow_gpm=94), [("caution", "flow_below_usual", 94, 95)]),
        # the crew's limit goes with Q/2, 1 % under the formula here: 2 % of slack, 75 x 1.02 = 76.5
        (pushing(76.4), []),
        (pushing(76.6), [("caution", "reaction_above_crew", 76.6, 75)]),
        # an inlet has no push that anyone holds, a wye has no nozzle
        (pushing(None), []),
        (a_line(nozzle=None), []),
    ],
)
def test_cautions(run, line, expected):
    """Each limit calls for its caution just past it, with the amount and the limit as they are known."""
    found = found_in(run, line)
    told = [(each["level"], each["code"], each["amount"], each["limit"]) for each in found]
    assert told == expected
    assert all((each["line"], each["crew"]) == ("A", "2") for each in found)


@pytest.mark.parametrize(
    ("discharge_psi", "lines", "stopped"),
    [
        (299, [a_line()], []),
        (300, [a_line()], [("A", 300)]),  # the test pressure itself is for the test
        # downhill the foot of the hose has more than its head: 290 + 11; uphill its head has the most
        (290, [a_line(elevation_psi=-11)], [("A", 301)]),
        (290, [a_line(elevation_psi=-9)], []),
        (290, [a_line(elevation_psi=11)], []),
        # behind a wye, with every nozzle shut, a branch sees the pump less the height climbed: 310, 310 - 20
        (310, [a_line(id="S", nozzle=None), a_line(id="B", feeder="S")], [("S", 310), ("B", 310)]),
        (310, [a_line(id="S", nozzle=None, elevation_psi=20), a_line(id="B", feeder="S")], [("S", 310)]),
    ],
)
def test_a_hose_is_judged_with_every_nozzle_shut(run, discharge_psi, lines, stopped):
    """What a hose can see is the pump's pressure and the height alone."""
    found = [each for each in found_in(run, *lines, discharge_psi=discharge_psi) if each["level"] == "stop"]
    assert [(each["line"], each["amount"]) for each in found] == stopped
    assert all((each["level"], each["code"], each["limit"]) == ("stop", "above_test_pressure", 300) for each in found)


@pytest.mark.parametrize(("seen_psi", "test_psi", "expected"), [
    # trade review: caution from nine tenths of the service-test pressure, stop at it
    (269.9, 300, None), (270, 300, ["caution", "working_pressure", 270]), (299.9, 300, ["caution", "working_pressure", 270]),
    (300, 300, ["stop", "test_pressure", 300]), (900, 300, ["stop", "test_pressure", 300]),
    (179.9, 200, None), (180, 200, ["caution", "working_pressure", 180]), (185, 200, ["caution", "working_pressure", 180]),
    (200, 200, ["stop", "test_pressure", 200]), (-5, 200, None), (5000, None, None),
])
def test_hose_is_worked_below_its_test(run, seen_psi, test_psi, expected):
    """A caution from the working pressure on, a stop from the test pressure on, nothing where none is known."""
    found = run("hydraulics.caution", "of_hose", seen_psi=seen_psi, limits={"test_psi": test_psi})
    assert (None if found is None else list(found)) == expected


@pytest.mark.parametrize(("discharge_psi", "codes"), [(269, []), (270, ["above_working_pressure"]), (300, ["above_test_pressure"])])
def test_one_caution_for_a_hose(run, discharge_psi, codes):
    """A hose is either past its working limit or past its test pressure, and says the one."""
    found = found_in(run, a_line(), discharge_psi=discharge_psi)
    assert [each["code"] for each in found] == codes
    assert all((each["limit"], each["amount"], each["kind"]) == ({269: 0, 270: 270, 300: 300}[discharge_psi], discharge_psi, "pressure") for each in found)


@pytest.mark.parametrize("limits", [{}, dict.fromkeys(LIMITS)], ids=["absent", "None"])
def test_unknown_limits(run, limits):
    """A limit that is not known raises no caution, however wild the layout."""
    wild = a_line(flow_gpm=9000, nozzle={"reaction_lbf": 900})
    assert found_in(run, wild, limits=limits, discharge_psi=1500) == []


@pytest.mark.parametrize(
    ("parallel", "codes"),
    [
        (1, ["flow_above_usual"]),
        (2, []),                    # 180 gpm each
        (4, ["flow_below_usual"]),  # 90 gpm each
    ],
)
def test_parallel_hoses(run, parallel, codes):
    """Usual flows are those of one hose, so the flow is shared first."""
    limits = {"least_usual_gpm": 95, "most_usual_gpm": 200, "parallel": parallel}
    found = found_in(run, a_line(flow_gpm=360), limits=limits)
    assert [each["code"] for each in found] == codes


def test_stops_before_cautions(run):
    """A stop of a later line stands before a caution of an earlier one; otherwise lines keep their order."""
    found = found_in(run, a_line(id="A", flow_gpm=201, elevation_psi=1), a_line(id="B", elevation_psi=-1),
                     a_line(id="C", flow_gpm=94, elevation_psi=-2), discharge_psi=299.5)
    assert [(each["line"], each["level"]) for each in found] == [
        ("B", "stop"), ("C", "stop"), ("A", "caution"), ("A", "caution"), ("C", "caution")]  # A past its working limit, and its flow


@pytest.mark.parametrize(
    ("line", "discharge_psi", "kind"),
    [
        (a_line(), 301, "pressure"),
        (pushing(90), 150, "force"),
        (a_line(flow_gpm=500), 150, "flow"),
        (a_line(flow_gpm=50), 150, "flow"),
    ],
)
def test_kind(run, line, discharge_psi, kind):
    """The kind says which quantity amount and limit are, so that the page can convert them."""
    (found,) = found_in(run, line, discharge_psi=discharge_psi)
    assert found["kind"] == kind


@pytest.mark.parametrize(("device", "own", "codes"), [
    ("standpipe", False, ["regulated_outlets"]), ("standpipe", True, ["regulated_outlets"]),
    ("aerial", False, ["waterway_usual"]), ("aerial", True, []), ("master", False, []), ("wye", False, []), ("none", False, []),
])
def test_what_a_device_calls_for(run, device, own, codes):
    """A waterway's loss is its builder's to give until it is typed; outlets of a standpipe may hold their own pressure."""
    limits = {**LIMITS, "device": device, **({"has_own_loss": True} if own else {})}
    found = found_in(run, a_line(appliance_psi=25), limits=limits)
    assert [(each["level"], each["code"], each["amount"]) for each in found] == [("caution", code, 25) for code in codes]


def test_what_a_device_calls_for_comes_last(run):
    """What goes with a device whatever it sees stands after what this layout brings about."""
    lines = [a_line(id="S", nozzle=None, appliance_psi=25), a_line(id="A", feeder="S", nozzle={"reaction_lbf": 90})]
    found = run("hydraulics.caution", "cautions", lines={"S": {"device": "standpipe"}, "A": LIMITS}, report={"discharge_psi": 150, "lines": lines})
    assert [each["code"] for each in found] == ["reaction_above_crew", "regulated_outlets"]


@pytest.mark.parametrize(("limits", "codes"), [
    ({"bore_in": 3}, [("monitor_hold", "force", 282)]), ({}, []),
    ({"bore_in": 3, "has_own_loss": True}, [("monitor_hold", "force", 282)]),
])
def test_a_monitor_on_hose_is_held_down(run, limits, codes):
    """A portable monitor is anchored whatever it flows (a city's training pages, a maker's manual); one that is plumbed to the rig has no hose and needs none."""
    line = a_line(appliance_psi=25, nozzle={"kind": "smooth", "nozzle_psi": 80, "flow_gpm": 598, "reaction_lbf": 282})
    found = found_in(run, line, limits={"device": "master", **limits})
    assert [(row["code"], row["kind"], row["amount"]) for row in found] == codes


@pytest.mark.parametrize(("discharge_psi", "limits", "codes"), [
    (499, {"bore_in": 1}, []), (500, {"bore_in": 1}, ["high_pressure"]), (1400, {"bore_in": 1}, ["high_pressure"]),
    (1400, {"bore_in": 1, "work_psi": 1500}, []), (1400, {"bore_in": 1, "test_psi": 2000}, []), (1400, {}, []),
])
def test_high_pressure_is_not_for_hose_of_no_known_limit(run, discharge_psi, limits, codes):
    """From 500 psi on (a fire apparatus magazine) hose is its maker's to rate; with a limit of its own that one holds, and piping is no hose."""
    found = found_in(run, a_line(), limits=limits, discharge_psi=discharge_psi)
    assert [row["code"] for row in found] == codes
    assert all(row["level"] == "stop" and row["limit"] == 500 for row in found)


@pytest.mark.parametrize(("flow_gpm", "codes"), [(800, []), (800 * (1 + 1e-12), []), (801, ["device_over"])])
def test_a_device_has_its_own_limit(run, flow_gpm, codes):
    """More than its maker has it made for is a stop, with what the stream pushes back, by the flow through it: its own hose's and what comes in beside it.

    Portable monitors flow about 400 to 1,000 gpm (a city's training page); the maker's figure comes first.
    """
    line = a_line(flow_gpm=400, end_gpm=flow_gpm, nozzle={"kind": "smooth", "nozzle_psi": 80, "flow_gpm": flow_gpm, "reaction_lbf": 378})
    found = found_in(run, line, limits={"device": "master", "device_most_gpm": 800})
    assert [row["code"] for row in found] == codes
    assert all((row["level"], row["amount"], row["limit"], row["reaction"]) == ("stop", flow_gpm, 800, 378) for row in found)
