"""A department's rigs from TOML to pages."""
import json

import jsonschema
import pytest

import build
from site_src import fleet
from site_src.routes.rig import profile_schema


@pytest.mark.parametrize("name", sorted(fleet.load()))
def test_demonstration_rigs_fit_the_published_schema(name):
    """The JSON Schema beside the site takes what calc.rig takes."""
    jsonschema.validate(fleet.load()[name], profile_schema())


@pytest.mark.parametrize(
    "change", [{"schema": 2}, {"name": 5}, {"drive": "steam"}, {"odd": 1}, {"beds": [{"name": "x"}]}, {"units": "furlongs"}],
)
def test_the_schema_refuses_what_calc_refuses(change):
    """What calc.rig refuses for its form the schema refuses too."""
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**fleet.load()["tollgate-engine-1"], **change}, profile_schema())


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ('name = "A"\nunits = "US"\ntank = "big"', "a.toml: tank: not_a_number"),
        ('units = "US"', "a.toml: name: missing"),
        ('name = "A"\nunits = "US"\n[[beds]]\nname = "x"\nhose = "garden"\nlength = 5\nend = { kind = "fog", flow = 1, pressure = 9 }',
         "a.toml: beds.0.hose: unknown"),
        ("name = ", "a.toml: "),
    ],
)
def test_a_bad_file_stops_the_build_by_name(tmp_path, text, told):
    """The build names the file, the field and the reason."""
    (tmp_path / "a.toml").write_text(text)
    with pytest.raises(fleet.FleetError) as fault:
        fleet.load(tmp_path)
    assert str(fault.value).startswith(told)


def test_a_department_is_baked_and_not_carried(tmp_path):
    """Each rig has its page, its card and its file; a phone's list holds none of them."""
    folder, dist = tmp_path / "rigs", tmp_path / "dist"
    folder.mkdir()
    (folder / "ladder-9.toml").write_text('name = "Ladder 9"\nunits = "US"\n[[beds]]\nname = "Side"\nhose = "attack-1.75"\n'
                                          'length = 200\nend = { kind = "fog", flow = 150, pressure = 100 }\n')
    build.build(dist, rigs_folder=folder)
    page = (dist / "rigs" / "ladder-9" / "index.html").read_text()
    assert "<td>170</td>" in page  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    assert json.loads((dist / "rigs" / "ladder-9" / "rig.json").read_text())["name"] == "Ladder 9"
    assert 'rigs/ladder-9' not in (dist / "sw.js").read_text()
