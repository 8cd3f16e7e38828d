"""Layouts: the pressure at the pump and at every joint, worked by hand and by law on random trees."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from calc.layout import pressure

FOG = {"kind": "fog", "rated_gpm": 100, "rated_psi": 100}


def a_line(**given_facts):
    """A line of 2 1/2 in hose, 100 ft, to a 100 gpm fog nozzle at 100 psi, but for what is given."""
    return {**{"coefficient": 2, "length_ft": 100, "end": FOG}, **given_facts}


def a_chain(depth):
    """Lines of 5 in hose, each feeding the next, with a fog nozzle at the end."""
    end = FOG
    for _ in range(depth):
        end = {"lines": [a_line(coefficient=0.08, end=end)]}
    return end


nozzles = st.one_of(
    st.fixed_dictionaries({"kind": st.just("smooth"), "tip_in": st.floats(0.5, 2), "nozzle_psi": st.floats(30, 100)}),
    st.fixed_dictionaries({"kind": st.just("fog"), "rated_gpm": st.floats(10, 500), "rated_psi": st.floats(40, 120)}),
    st.fixed_dictionaries({"kind": st.just("automatic"), "min_gpm": st.floats(10, 60), "max_gpm": st.floats(60, 300),
                           "rated_psi": st.floats(40, 120)}),
    st.fixed_dictionaries({"kind": st.just("open"), "pressure_psi": st.floats(5, 150), "flow_gpm": st.floats(20, 900)}),
)


def lines(ends):
    """Lines with any of these ends."""
    must = {"coefficient": st.floats(0.05, 30), "length_ft": st.floats(0, 800), "end": ends}
    may = {"rise_ft": st.floats(-80, 200), "parallel": st.integers(1, 3), "appliance_psi": st.floats(0, 30),
           "bore_in": st.floats(1, 6)}
    return st.fixed_dictionaries(must, optional=may)


def branching(ends):
    """A wye, or the pump itself, with one to four such lines."""
    return st.fixed_dictionaries({"lines": st.lists(lines(ends), min_size=1, max_size=4)})


wyes = st.recursive(nozzles, branching, max_leaves=8)
layouts = branching(wyes)


def near(expected):
    """Equal to nine figures, or to a millionth of a psi where large terms cancel."""
    return pytest.approx(expected, rel=1e-9, abs=1e-6)


@pytest.mark.parametrize(
    ("line", "expected_psi", "expected_gpm"),
    [
        (a_line(), 102, 100),                          # 100 + 2 x 1^2 x 1
        (a_line(end={**FOG, "rated_gpm": 0.5}), 100.00005, 0.5),  # 2 x 0.005^2: however little
        (a_line(length_ft=0), 100, 100),               # no hose: the nozzle on the pump
        (a_line(rise_ft=50), 123.7, 100),              # + 50 x 0.434
        (a_line(rise_ft=-50), 80.3, 100),              # the hill does part of the work
        (a_line(appliance_psi=25), 127, 100),          # + a master stream device
        (a_line(parallel=2), 100.5, 100),              # a quarter of the friction
        # automatic, reckoned at its greatest flow: 75 + 15.5 x 2^2 x 2
        (a_line(coefficient=15.5, length_ft=200,
                end={"kind": "automatic", "min_gpm": 70, "max_gpm": 200, "rated_psi": 75}), 199, 200),
        # an inlet: the next pumper wants 20 psi at 1000 gpm; 20 + 0.08 x 10^2 x 15 + 40 x 0.434
        (a_line(coefficient=0.08, length_ft=1500, rise_ft=40,
                end={"kind": "open", "pressure_psi": 20, "flow_gpm": 1000}), 157.36, 1000),
        # 2 in tip at 100 psi: 29.7 x 4 x 10 = 1188 gpm; 100 + 0.5 x 11.88^2 x 1
        (a_line(coefficient=0.5, end={"kind": "smooth", "tip_in": 2, "nozzle_psi": 100}), 170.5672, 1188),
    ],
)
def test_single_line(run, line, expected_psi, expected_gpm):
    """The pump shows nozzle, friction, elevation and appliance together, each by hand."""
    report = run("layout.pressure", "discharge_pressure", layout={"lines": [line]})
    assert (report["discharge_psi"], report["flow_gpm"]) == pytest.approx((expected_psi, expected_gpm), rel=1e-9)


def test_unequal_wye(run):
    """The pump serves the branch that needs most; the other is gated by the difference, and all is reported."""
    near_branch = a_line(id="near", coefficient=24, length_ft=100, bore_in=1.5)
    far_branch = a_line(id="far", coefficient=24, length_ft=200, rise_ft=10, bore_in=1.5)
    supply = a_line(id="supply", length_ft=300, appliance_psi=10, parallel=2, bore_in=2.5,
                    end={"lines": [near_branch, far_branch]})
    report = run("layout.pressure", "discharge_pressure", layout={"lines": [supply]})
    feeding, easy, hard = report["lines"]
    assert [line["id"] for line in report["lines"]] == ["supply", "near", "far"]
    assert [line["feeder"] for line in report["lines"]] == [None, "supply", "supply"]
    # by hand: near 100 + 24 = 124; far 100 + 48 + 4.34 = 152.34; supply 2 x 1^2 x 3 = 6 at 100 gpm a hose, + 10
    assert (easy["inlet_psi"], hard["inlet_psi"]) == pytest.approx((124, 152.34), rel=1e-9)
    assert (easy["gate_psi"], hard["gate_psi"]) == pytest.approx((28.34, 0), rel=1e-9)
    assert (feeding["friction_psi"], feeding["friction_per_100_ft_psi"]) == pytest.approx((6, 2), rel=1e-9)
    assert (feeding["outlet_psi"], report["discharge_psi"]) == pytest.approx((152.34, 168.34), rel=1e-9)
    assert (feeding["flow_gpm"], feeding["nozzle"]) == (200, None)
    # by hand: 0.0505 x 100 x sqrt 100
    assert hard["nozzle"] == {"kind": "fog", "nozzle_psi": 100, "flow_gpm": 100, "reaction_lbf": near(50.5)}
    # by hand: 100 gpm in 4.9087 in2 is 385 in3/s, 6.536 ft/s; two hoses of 300 ft hold 2 x 76.50 gal
    assert feeding["velocity_ft_per_s"] == pytest.approx(6.536, abs=0.0005)
    assert feeding["water_gal"] == pytest.approx(153, abs=0.05)


def test_unknown_bore(run):
    """Where the bore is not known, speed and water held are missing, not guessed."""
    (line,) = run("layout.pressure", "discharge_pressure", layout={"lines": [a_line()]})["lines"]
    assert (line["velocity_ft_per_s"], line["water_gal"], line["id"]) == (None, None, "1")


@settings(deadline=None)
@given(layout=layouts)
def test_any_lay(run, layout):
    """In any layout each line's pressures add up, and each joint passes on what its neediest branch asks."""
    report = run("layout.pressure", "discharge_pressure", layout=layout)
    joints = {None: (report["discharge_psi"], report["flow_gpm"])}
    fed = {}
    pending = list(layout["lines"])
    for line in report["lines"]:
        asked = pending.pop(0)
        pending[:0] = asked["end"].get("lines", [])  # the report goes down each branch before the next
        assert line["feeder"] in joints  # each after the line that feeds it
        joints[line["id"]] = (line["outlet_psi"], line["flow_gpm"])
        fed.setdefault(line["feeder"], []).append(line)
        hundreds_gpm = line["flow_gpm"] / asked.get("parallel", 1) / 100
        friction_psi = asked["coefficient"] * hundreds_gpm**2 * asked["length_ft"] / 100
        lost_psi = friction_psi + 0.434 * asked.get("rise_ft", 0) + asked.get("appliance_psi", 0)
        assert line["inlet_psi"] == near(line["outlet_psi"] + lost_psi)
        if line["nozzle"]:
            rated = [asked["end"].get(field) for field in ("nozzle_psi", "rated_psi", "pressure_psi")]
            assert line["outlet_psi"] == line["nozzle"]["nozzle_psi"] == near(next(psi for psi in rated if psi))
    for feeder, branches in fed.items():
        joint_psi, joint_gpm = joints[feeder]
        assert joint_psi == max(branch["inlet_psi"] for branch in branches)
        assert joint_gpm == near(sum(branch["flow_gpm"] for branch in branches))
        assert min(branch["gate_psi"] for branch in branches) == 0
        for branch in branches:
            assert branch["inlet_psi"] + branch["gate_psi"] == near(joint_psi)


@settings(deadline=None)
@given(line=lines(wyes), share=st.floats(0, 1))
def test_series(run, line, share):
    """A run cut in two, one part feeding the other, wants the same pressure."""
    parts = [dict(line, length_ft=line["length_ft"] * part, rise_ft=line.get("rise_ft", 0) * part)
             for part in (share, 1 - share)]
    parts[0].pop("appliance_psi", None)
    parts[0]["end"] = {"lines": [parts[1]]}
    whole, cut = (run("layout.pressure", "discharge_pressure", layout={"lines": [each]}) for each in (line, parts[0]))
    assert cut["discharge_psi"] == near(whole["discharge_psi"])


@settings(deadline=None)
@given(line=lines(wyes))
def test_parallel(run, line):
    """Two equal hoses side by side are one hose of a quarter of the coefficient."""
    pair = dict(line, parallel=2)
    one = dict(line, parallel=1, coefficient=line["coefficient"] / 4)
    psi = [run("layout.pressure", "discharge_pressure", layout={"lines": [each]})["discharge_psi"] for each in (pair, one)]
    assert psi[0] == near(psi[1])


BAD_NUMBERS = ((True, "not_a_number"), ("2", "not_a_number"), (None, "not_a_number"), ([2], "not_a_number"),
               (1e300, "too_large"))
BAD_LINES = [("coefficient", 0, "not_positive"), ("length_ft", -1, "negative"), ("appliance_psi", -1, "negative"),
             ("bore_in", 0, "not_positive"), ("gate_psi", -1, "negative"), ("gate_gpm", 0, "not_positive"), ("end", None, "missing"), ("end", [FOG], "missing")]
BAD_LINES += [("parallel", value, "out_of_range") for value in (0, -1, 13, 1.5, True, None, "2", [2], 1e300)]
BAD_LINES += [(field, value, code) for field in ("coefficient", "length_ft", "rise_ft", "appliance_psi", "bore_in")
              for value, code in BAD_NUMBERS if not (field == "bore_in" and value is None)]


@pytest.mark.parametrize(("field", "value", "code"), BAD_LINES)
def test_bad_line(run, field, value, code):
    """A bad fact of a line deep in the layout is refused by its name and the line's."""
    layout = {"lines": [a_line(id="feeder", end={"lines": [a_line(), a_line(**{"id": "bad", field: value})]})]}
    with pytest.raises(CalcError) as refusal:
        run("layout.pressure", "discharge_pressure", layout=layout)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts["line"]) == (field, code, "bad")


@pytest.mark.parametrize(
    ("end", "field", "code"),
    [
        ({}, "kind", "unknown"),
        ({"kind": "sprinkler"}, "kind", "unknown"),
        ({"kind": ["fog"]}, "kind", "unknown"),
        ({"kind": "fog", "rated_gpm": 100}, "rated_psi", "missing"),
        ({"kind": "fog", "rated_gpm": 0, "rated_psi": 100}, "rated_gpm", "not_positive"),
        ({"kind": "smooth", "tip_in": "1", "nozzle_psi": 50}, "tip_in", "not_a_number"),
        ({"kind": "open", "pressure_psi": -1, "flow_gpm": 500}, "pressure_psi", "not_positive"),
        ({"kind": "automatic", "min_gpm": 200, "max_gpm": 70, "rated_psi": 100}, "min_gpm", "above_max"),
        ({"lines": []}, "lines", "missing"),
        ({"lines": {"1": {}}}, "lines", "missing"),
        ({"lines": ["hose"]}, "lines", "not_a_line"),
    ],
)
def test_bad_end(run, end, field, code):
    """A bad nozzle or wye is refused by the name of what is wrong, and the line's."""
    with pytest.raises(CalcError) as refusal:
        run("layout.pressure", "discharge_pressure", layout={"lines": [a_line(end=end)]})
    assert (refusal.value.field, refusal.value.code, refusal.value.facts["line"]) == (field, code, "1")


@pytest.mark.parametrize(
    ("layout", "field", "code"),
    [
        (None, "lines", "missing"),
        (True, "lines", "missing"),
        ("hose", "lines", "missing"),
        ([a_line()], "lines", "missing"),
        ({}, "lines", "missing"),
        ({"lines": []}, "lines", "missing"),
        ({"lines": "hose"}, "lines", "missing"),
        ({"lines": [None]}, "lines", "not_a_line"),
        ({"lines": [[]]}, "lines", "not_a_line"),
        ({"lines": [{}]}, "end", "missing"),
        ({"lines": [{"length_ft": 100, "end": FOG}]}, "coefficient", "missing"),
        ({"lines": [{"coefficient": 2, "end": FOG}]}, "length_ft", "missing"),
        ({"lines": [a_line(id="")]}, "id", "not_a_name"),
        ({"lines": [a_line(id=7)]}, "id", "not_a_name"),
        ({"lines": [a_line(id="A"), a_line(id="A")]}, "id", "duplicate"),
        ({"lines": [a_line(), a_line(id="1")]}, "id", "duplicate"),  # the first has it from its place
        ({"lines": [a_line()] * 1000}, "lines", "too_many"),
        ({"lines": [a_line(end={"lines": [a_line()] * 300})] * 2}, "lines", "too_many"),
    ],
)
def test_bad_lay(run, layout, field, code):
    """What is no layout, or too much of one, is refused."""
    with pytest.raises(CalcError) as refusal:
        run("layout.pressure", "discharge_pressure", layout=layout)
    assert (refusal.value.field, refusal.value.code) == (field, code)


@pytest.mark.parametrize("branches", [1, 3])
def test_cyclic_lay(branches):
    """A layout that feeds itself ends in a refusal (it cannot be written as JSON, so on the desk only)."""
    layout = {"lines": []}
    layout["lines"] += [a_line(end=layout) for _ in range(branches)]
    with pytest.raises(CalcError) as refusal:
        pressure.discharge_pressure(layout)
    assert (refusal.value.field, refusal.value.code) == ("lines", "too_many")


def test_deep_lay():
    """Four hundred lines in a row are worked out, without recursion; the limit is 500."""
    # by hand: 400 x 0.08 x 1^2 x 1 = 32
    assert pressure.discharge_pressure(a_chain(400))["discharge_psi"] == pytest.approx(132, rel=1e-9)
    with pytest.raises(CalcError) as refusal:
        pressure.discharge_pressure(a_chain(501))
    assert (refusal.value.field, refusal.value.code) == ("lines", "too_many")


def test_deep_lay_on_both(run):
    """Sixty lines in a row come through JSON on both Pythons."""
    report = run("layout.pressure", "discharge_pressure", layout=a_chain(60))
    assert report["discharge_psi"] == pytest.approx(104.8, rel=1e-9)  # by hand: 100 + 60 x 0.08


@pytest.mark.parametrize(
    ("layout", "facts"),
    [
        ({"lines": [a_line(id="A"), a_line(id="A")]}, {"line": "A"}),
        ({"lines": [a_line()] * 501}, {"most": 500}),
        ({"lines": [a_line(id="S", end={"lines": [a_line()] * 501})]}, {"most": 500, "line": "S"}),
        ({"lines": [a_line(end={"lines": [a_line()] * 300})] * 2}, {"most": 500}),
        ({"lines": [a_line(), "hose"]}, {"place": 2}),
        ({"lines": [a_line(end={"lines": [a_line(), "hose"]})]}, {"place": 2, "line": "1"}),
        ({"lines": [a_line(), a_line(id=7)]}, {"place": 2}),
        ({"lines": [a_line(id="S", end={"lines": [a_line(id="")]})]}, {"place": 1, "line": "S"}),
        ({"lines": [a_line(end={"lines": [a_line(), a_line(parallel=13)]})]}, {"line": "1.2", "least": 1, "most": 12}),
        ({"lines": [a_line(id="B", gate_psi=-1)]}, {"line": "B", "value": -1}),
        ({"lines": [a_line(end={"lines": []})]}, {"line": "1"}),
    ],
)
def test_a_refusal_says_where(run, layout, facts):
    """A refusal tells the line, the place in its wye, and the bound that was broken."""
    with pytest.raises(CalcError) as refusal:
        run("layout.pressure", "discharge_pressure", layout=layout)
    assert refusal.value.facts == facts


def test_bounds_of_a_lay(run):
    """Five hundred lines side by side, and twelve hoses in a run, are still a layout: 2 / 144 psi of friction, by hand."""
    assert len(run("layout.pressure", "discharge_pressure", layout={"lines": [a_line()] * 500})["lines"]) == 500
    assert run("layout.pressure", "discharge_pressure", layout={"lines": [a_line(parallel=12)]})["discharge_psi"] == near(100 + 2 / 144)
