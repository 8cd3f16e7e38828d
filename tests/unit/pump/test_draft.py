"""Drafting and foam."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from site_src.content import data

ROWS = data.load("water")["suction"]


@pytest.mark.parametrize(
    ("altitude_ft", "water_f", "lift_ft"),
    [
        # a study's table, worked from a standard atmosphere and another correlation of vapour pressure
        (0, 40, 33.6), (0, 60, 33.3), (0, 100, 31.9), (2000, 80, 30.5), (5000, 60, 27.6), (8000, 90, 23.7), (10000, 120, 19.6),
    ],
)
def test_max_lift(run, altitude_ft, water_f, lift_ft):
    """The air lifts less with height and with warmth."""
    assert run("pump.draft", "max_lift_ft", altitude_ft=altitude_ft, water_f=water_f) == pytest.approx(lift_ft, abs=0.1)


@pytest.mark.parametrize(
    ("altitude_ft", "water_f", "lost_ft", "within_ft"),
    [
        # a pump is rated up to 2,000 ft (a certificate's conditions) and 90 F (from memory): neither is counted again
        (0, 40, 0, 0), (0, 60, 0, 0), (0, 90, 0, 0), (2000, 60, 0, 0), (2000, 90, 0, 0), (-1500, 40, 0, 0),
        # a pump maker prints 1.1 ft of lift lost at 90 F and 1.7 at 100 F; low ground is no credit for warm water
        (0, 100, 0.6, 0.1), (2000, 100, 0.6, 0.1),
        # the same maker: 1.1 ft per 1,000 ft above 2,000; cold water is no credit for thin air
        (5000, 90, 3.3, 0.3), (5000, 40, 3.3, 0.3), (3000, 90, 1.1, 0.2),
        (5000, 100, 3.3 + 0.6, 0.4),
        # a study's table of the greatest lift, to a tenth: 30.1 at 2,000 ft and 90 F, 26.7 at 5,000
        (5000, 60, 30.1 - 26.7, 0.1),
    ],
)
def test_counted_lift(run, altitude_ft, water_f, lost_ft, within_ft):
    """Only what goes beyond the rating conditions counts as lift."""
    counted_ft = run("pump.draft", "counted_lift_ft", lift_ft=10, altitude_ft=altitude_ft, water_f=water_f)
    assert counted_ft - 10 == pytest.approx(lost_ft, abs=within_ft)


@pytest.mark.parametrize(
    ("lift_ft", "share"),
    # driver/operator study cards, handbook chapter 11: 70 % at 15 ft, 60 % at 20 ft; rated at 10 ft; straight between
    [(0, 1), (10, 1), (12.5, 0.85), (15, 0.7), (17.5, 0.65), (20, 0.6)],
)
def test_share(run, lift_ft, share):
    """A lift leaves its share of rated capacity."""
    assert run("pump.draft", "rated_share", lift_ft=lift_ft) == pytest.approx(share, rel=1e-9)


@settings(deadline=None, max_examples=40)
@given(lift_ft=st.floats(0, 19), more_ft=st.floats(0, 1))
def test_higher_never_gives_more(run, lift_ft, more_ft):
    """More lift never leaves more."""
    low, high = (run("pump.draft", "rated_share", lift_ft=ft) for ft in (lift_ft, lift_ft + more_ft))
    assert high <= low


def test_vacuum_inverts(run):
    """A reading and the height it stands for are the same thing."""
    # study cards: 22 inHg is 24.86 ft
    assert run("pump.draft", "vacuum_inhg", head_ft=24.86) == pytest.approx(22, rel=1e-9)


@pytest.mark.parametrize(
    ("size_in", "flow_gpm", "length_ft", "loss_ft"),
    [
        (6, 1500, 20, 7.6), (6, 1500, 30, 9.0),  # NFPA annex table, from memory: 7.6 for 20 ft, and 1.4 for 10 ft more
        (6, 1500, 10, 6.2),   # and 1.4 less for 10 ft less
        (6, 1250, 20, 5.2),   # a trade article's worked test reads 5.2 ft for 1,250 gpm through one 6 in hose, 15.2 with 10 ft of lift
        (6, 750, 20, 1.9125), # by hand: the nearest row, 1,000 gpm: 3.4 x 0.75^2
        (5, 1000, 40, 11.6),  # 8.4 + 2 x 1.6
        (4, 0, 20, 0),        # no flow, no loss
    ],
)
def test_suction(run, size_in, flow_gpm, length_ft, loss_ft):
    """Suction loss is the table's, scaled with the square of the flow."""
    told = run("pump.draft", "suction_loss_ft", rows=ROWS, size_in=size_in, flow_gpm=flow_gpm, length_ft=length_ft)
    assert told == pytest.approx(loss_ft, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize(
    ("function", "arguments", "expected"),
    [
        ("concentrate_gpm", {"flow_gpm": 125, "percent": 3}, 3.75),                        # by hand: 125 x 0.03
        ("concentrate_gal", {"minutes": 10, "flow_gpm": 95, "percent": 3}, 28.5),          # 10 x 2.85
        ("most_back_pressure_psi", {"inlet_psi": 200, "share_percent": 65}, 130),          # 200 x 0.65
        # 100 + 15.5 x 0.95^2 x 1.5 + 4.34
        ("back_pressure_psi", {"coefficient": 15.5, "flow_gpm": 95, "length_ft": 150, "rise_ft": 10, "nozzle_psi": 100}, 125.3231),
        # (130 - 100) / 13.98875 per 100 ft
        ("longest_hose_ft", {"coefficient": 15.5, "flow_gpm": 95, "rise_ft": 0, "nozzle_psi": 100, "most_psi": 130}, 214.458),
        # the nozzle alone takes more than the eductor may see
        ("longest_hose_ft", {"coefficient": 15.5, "flow_gpm": 95, "rise_ft": 0, "nozzle_psi": 140, "most_psi": 130}, 0),
    ],
)
def test_foam(run, function, arguments, expected):
    """Concentrate, time, back pressure and hose, worked by hand."""
    assert run("supply.foam", function, **arguments) == pytest.approx(expected, rel=1e-5)


@settings(deadline=None, max_examples=40)
@given(flow_gpm=st.floats(30, 250), rise_ft=st.floats(-20, 20), nozzle_psi=st.floats(50, 100))
def test_longest_hose_is_the_limit(run, flow_gpm, rise_ft, nozzle_psi):
    """With the longest hose the back pressure is exactly the most."""
    hose = {"coefficient": 15.5, "flow_gpm": flow_gpm, "rise_ft": rise_ft, "nozzle_psi": nozzle_psi}
    longest_ft = run("supply.foam", "longest_hose_ft", most_psi=130, **hose)
    assert run("supply.foam", "back_pressure_psi", length_ft=longest_ft, **hose) == pytest.approx(130, rel=1e-9)


@pytest.mark.parametrize(
    ("module", "function", "arguments", "field", "code"),
    [
        ("pump.draft", "rated_share", {"lift_ft": 20.1}, "lift_ft", "out_of_range"),
        ("pump.draft", "max_lift_ft", {"altitude_ft": 20001, "water_f": 60}, "altitude_ft", "out_of_range"),
        ("pump.draft", "max_lift_ft", {"altitude_ft": 0, "water_f": 20}, "water_f", "out_of_range"),
        ("pump.draft", "suction_loss_ft", {"rows": ROWS, "size_in": 3, "flow_gpm": 100, "length_ft": 20}, "size_in", "unknown"),
        ("pump.draft", "lift_from_vacuum_ft", {"vacuum_inhg": 31}, "vacuum_inhg", "out_of_range"),
        ("supply.foam", "concentrate_gpm", {"flow_gpm": 100, "percent": 7}, "percent", "out_of_range"),
        ("supply.foam", "most_back_pressure_psi", {"inlet_psi": 200, "share_percent": 90}, "share_percent", "out_of_range"),
        ("supply.foam", "longest_hose_ft", {"coefficient": 15.5, "flow_gpm": 0, "rise_ft": 0, "nozzle_psi": 100, "most_psi": 130},
         "flow_gpm", "not_positive"),
    ],
)
def test_refusal(run, module, function, arguments, field, code):
    """What cannot be used is refused by field and code."""
    with pytest.raises(CalcError) as refusal:
        run(module, function, **arguments)
    assert (refusal.value.field, refusal.value.code) == (field, code)


def test_boiling_water_is_not_lifted(run):
    """At 20,000 ft the air presses 6.75 psi (International Standard Atmosphere), and water at 212 F boils at 14.7."""
    assert run("pump.draft", "max_lift_ft", altitude_ft=20000, water_f=212) == 0


@pytest.mark.parametrize(("altitude_ft", "water_f", "as_at"), [(0, 95, (2000, 95)), (3000, 60, (3000, 90)), (5000, 95, (5000, 95))])
def test_counted_lift_is_what_the_air_no_longer_lifts(run, altitude_ft, water_f, as_at):
    """What is counted as lift is exactly the lift that is lost against the rating conditions."""
    rated_ft, here_ft = (run("pump.draft", "max_lift_ft", altitude_ft=ft, water_f=f) for ft, f in ((2000, 90), as_at))
    counted_ft = run("pump.draft", "counted_lift_ft", lift_ft=10, altitude_ft=altitude_ft, water_f=water_f)
    assert counted_ft == pytest.approx(10 + rated_ft - here_ft, rel=1e-12)


@pytest.mark.parametrize(
    ("altitude_ft", "water_f", "lift_ft"),
    # NWCG, Firefighter Math, 3.5: two thirds of what the air lifts; of a study's table of that: 33.3, 27.1, 27.6 and 23.7 ft
    [(0, 60, 22.2), (5000, 80, 18.07), (5000, 60, 18.4), (8000, 90, 15.8)],
)
def test_practical_lift(run, altitude_ft, water_f, lift_ft):
    """What is practical goes down with what the air can lift here."""
    assert run("pump.draft", "practical_lift_ft", altitude_ft=altitude_ft, water_f=water_f) == pytest.approx(lift_ft, abs=0.1)


def test_low_vacuum(run):
    """By hand: half an inch of mercury is 0.565 ft; none is none."""
    assert run("pump.draft", "lift_from_vacuum_ft", vacuum_inhg=0.5) == pytest.approx(0.565, rel=1e-12)
    assert run("pump.draft", "lift_from_vacuum_ft", vacuum_inhg=0) == 0
