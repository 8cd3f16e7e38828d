"""What a department's rigs measured of their hose, from its files and from what phones sent, to the pages that offer it."""
import json

import pytest

from site_src.app import create_app
from site_src.content import fleet, fleet_hose

MEASURED = '[[hoses]]\nhose = "attack-1.75"\norigin = "measured"\ncoefficient = {}\nreadings = {}\n'


def put(folder, **rigs):
    """Files of rigs, each with a measured coefficient and its readings."""
    for name, (coefficient, readings) in rigs.items():
        (folder / f"{name}.toml").write_text(f'name = "{name}"\nunits = "US"\n' + MEASURED.format(coefficient, readings), encoding="utf-8")
    return folder


def sent(folder, content, name="rigs.v1.json"):
    (folder / name).write_text(json.dumps(content), encoding="utf-8")


def profile(rig, coefficient, readings="1", **more):
    """A rig as a phone sends it."""
    return {"schema": 1, "id": rig, "name": rig, "units": "US", "hoses": [{"hose": "attack-1.75", "coefficient": f"{coefficient}@US", "origin": "measured", "readings": readings}], **more}


def pool(folder):
    return fleet_hose.pool(fleet.load(folder), folder)


def test_the_build_says_what_it_pooled(tmp_path):
    """A line for each figure, for each rig's that is left out, and for hose with too little; by hand: 11, 12 and 12.5 with 1, 2 and 1 readings, and 20 past a fifth."""
    put(tmp_path, a=(11, 1), b=(12, 2), c=(12.5, 1), d=(20, 9))
    (tmp_path / "a.toml").write_text((tmp_path / "a.toml").read_text(encoding="utf-8") + MEASURED.format(2.1, 4).replace("attack-1.75", "attack-2.5"), encoding="utf-8")
    assert fleet_hose.said(fleet.load(tmp_path), tmp_path) == [
        "Hose 1¾ in: C 12 pooled of 4 readings on 3 rigs, C 11 to 12.5",
        "Hose 1¾ in: left out C 20 of d, more than 20% from the median of all",
        "Hose 2½ in: no figure of the department's. 2 rigs and 3 readings that agree are needed, and there is C 2.1 of a (4)"]
    assert fleet_hose.said({}, tmp_path) == []


def test_rigs_of_files_and_phones_are_pooled(tmp_path):
    """By hand: 11, 12 and 13 with 1, 2 and 1 readings, weights 1, 2, 1, half 2: 12 has 3. A hose that nobody measured has no figure."""
    put(tmp_path, a=(11, 1), b=(12, 2))
    assert pool(tmp_path)["attack-1.75"] == {"coefficient": 11.5, "least": 11, "most": 12, "readings": 3, "rigs": 2, "left_out": 0}  # two weigh alike
    sent(tmp_path, profile("c", 13))
    assert pool(tmp_path) == {"attack-1.75": {"coefficient": 12, "least": 11, "most": 13, "readings": 4, "rigs": 3, "left_out": 0}}


@pytest.mark.parametrize("more", [{"id": "fleet-b", "name": "renamed"}, {"name": " B "}])
def test_a_rig_that_a_phone_sent_stands_for_its_file(tmp_path, more):
    """It is one rig, by its id or its name: 11 and 14 weigh alike, 12.5."""
    put(tmp_path, a=(11, 1), b=(12, 2))
    sent(tmp_path, [profile("c", 14, "3", **more)])
    assert pool(tmp_path)["attack-1.75"] == {"coefficient": 12.5, "least": 11, "most": 14, "readings": 4, "rigs": 2, "left_out": 0}


@pytest.mark.parametrize(("content", "said"), [([], None), ("rig", "rigs.v1.json"), ([profile("c", "x")], "rigs.v1.json, [[hoses]] 1, coefficient"), ([7], "rigs.v1.json"), ({**profile("c", 11), "units": "ell"}, "rigs.v1.json, units"),
                                              ([profile("c", 11, "21")], "rigs.v1.json, [[hoses]] 1, readings")])
def test_what_is_no_rig_stops_the_build_with_a_sentence(tmp_path, content, said):
    """The sentence names the file, the row and the field; an empty list has no rig and no fault."""
    put(tmp_path, a=(11, 1))
    sent(tmp_path, content)
    if said is None:
        assert pool(tmp_path) == {}
        return
    with pytest.raises(fleet.FleetError) as fault:
        pool(tmp_path)
    assert str(fault.value).startswith(said)


@pytest.mark.parametrize("content", [b"{", b"[" * 5000, b"\xff", b" " * 300_000])
def test_a_file_that_is_no_json_is_named(tmp_path, content):
    """Half a file, one nested too deep, one of another kind, one far too large."""
    put(tmp_path, a=(11, 1))
    (tmp_path / "b.json").write_bytes(content)
    with pytest.raises(fleet.FleetError, match=r"^b\.json"):
        pool(tmp_path)


def test_pages_carry_the_departments_figure(tmp_path):
    """Rig and Pressure have it beside the handbook's own, which stays what they open on; the made-up rigs of the demonstration give nobody a figure."""
    client = create_app(rigs_folder=put(tmp_path, a=(11, 1), b=(12, 2))).test_client()
    for page in ("rig", "pressure", "foam", "water/hoselay"):
        hose = client.get(f"/{page}/page.json").json["shelf"]["hoses"]["attack-1.75"]
        assert (hose["coefficient"], hose["department"]["coefficient"]) == (15.5, 11.5)
    baked = client.get("/pressure/page.json").json["baked"]
    assert (baked["pressure"], baked["department"]) == ("170", "152")  # by hand: 100 + 15.5 x 1.5^2 x 2 = 169.75, and 100 + 11.5 x 2.25 x 2 = 151.75
    foam = client.get("/foam/page.json").json["baked"]["measured"]
    assert (foam["whose"], foam["answers"][0]["rows"]["behind"]) == ("department", "16")  # by hand: 11.5 x 0.95^2 x 1.5 = 15.57, beside 20.98
    assert client.get("/water/page.json").json["pages"]["foam"]["shelf"]["hoses"]["attack-1.75"]["department"]["readings"] == 3
    assert "department" not in create_app().test_client().get("/rig/page.json").json["shelf"]["hoses"]["attack-1.75"]
