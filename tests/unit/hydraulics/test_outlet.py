"""What stands at the end of a line: what it is rated for, what pushes back, and what no nozzle is."""
import pytest

from calc.base.errors import CalcError

SELECTABLE = {"kind": "selectable", "settings_gpm": [95, 125, 150], "set_gpm": 125, "rated_psi": 75}
AUTOMATIC = {"kind": "automatic", "min_gpm": 70, "max_gpm": 200, "rated_psi": 100}


@pytest.mark.parametrize(
    ("end", "least_gpm", "most_gpm", "psi"),
    [
        ({"kind": "smooth", "tip_in": 2, "nozzle_psi": 100}, 1188, 1188, 100),  # by hand: 29.7 x 4 x 10
        ({"kind": "fog", "rated_gpm": 150, "rated_psi": 75}, 150, 150, 75),
        (SELECTABLE, 125, 125, 75),
        ({**SELECTABLE, "settings_gpm": list(range(10, 210, 10)), "set_gpm": 200}, 200, 200, 75),  # twenty settings
        (AUTOMATIC, 70, 200, 100),
        ({**AUTOMATIC, "min_gpm": 200}, 200, 200, 100),  # an automatic of one flow is a fixed one
        ({"kind": "open", "pressure_psi": 20, "flow_gpm": 1000}, 1000, 1000, 20),
    ],
)
def test_rating(run, end, least_gpm, most_gpm, psi):
    """Each kind has its flows and its pressure."""
    assert run("hydraulics.outlet", "rating", end=end) == pytest.approx([least_gpm, most_gpm, psi], rel=1e-12)


@pytest.mark.parametrize(
    ("end", "flow_gpm", "psi", "reaction_lbf"),
    [
        ({"kind": "smooth", "tip_in": 2, "nozzle_psi": 100}, 1062, 80, 502.4),  # by hand: 1.57 x 4 x 80
        ({"kind": "fog", "rated_gpm": 200, "rated_psi": 75}, 200, 100, 101),    # by hand: 0.0505 x 200 x 10
        (AUTOMATIC, 100, 100, 50.5),
        (SELECTABLE, 100, 64, 40.4),                                            # by hand: 0.0505 x 100 x 8
        ({"kind": "open", "pressure_psi": 20, "flow_gpm": 1000}, 900, 16, None),  # an inlet: nobody holds it
    ],
)
def test_passing(run, end, flow_gpm, psi, reaction_lbf):
    """What passes is reported with its push on whoever holds it, by the formula of its kind."""
    told = run("hydraulics.outlet", "passing", end=end, flow_gpm=flow_gpm, nozzle_psi=psi)
    assert told == {"kind": end["kind"], "nozzle_psi": psi, "flow_gpm": flow_gpm,
                    "reaction_lbf": reaction_lbf and pytest.approx(reaction_lbf, rel=1e-9)}


@pytest.mark.parametrize(
    ("end", "field", "code", "facts"),
    [
        ({**AUTOMATIC, "min_gpm": 201}, "min_gpm", "above_max", {"most": 200}),
        ({**SELECTABLE, "settings_gpm": []}, "settings_gpm", "missing", {}),
        ({**SELECTABLE, "settings_gpm": "125"}, "settings_gpm", "missing", {}),
        ({**SELECTABLE, "settings_gpm": 125}, "settings_gpm", "missing", {}),
        ({key: SELECTABLE[key] for key in SELECTABLE if key != "settings_gpm"}, "settings_gpm", "missing", {}),
        ({**SELECTABLE, "settings_gpm": [125] * 21}, "settings_gpm", "too_many", {"most": 20}),
        ({**SELECTABLE, "settings_gpm": [125, 0]}, "settings_gpm", "not_positive", {"value": 0}),
        ({**SELECTABLE, "settings_gpm": [125, "95"]}, "settings_gpm", "not_a_number", {}),
        ({**SELECTABLE, "set_gpm": 100}, "set_gpm", "not_a_setting", {}),
    ],
)
def test_refused(run, end, field, code, facts):
    """A nozzle that cannot be is refused by field and code, with the bound it broke."""
    with pytest.raises(CalcError) as refused:
        run("hydraulics.outlet", "rating", end=end)
    assert (refused.value.field, refused.value.code, refused.value.facts) == (field, code, facts)
