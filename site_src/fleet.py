"""A department's rigs: TOML files, one a truck, checked by calc.rig and baked into the site."""
import base64
import json
import pathlib
import tomllib
import zlib

from calc import rig
from site_src import catalogue, data, units

DEMO = data.FOLDER / "rigs"


class FleetError(ValueError):
    """A rig's file that cannot be used; says which file, which field, and why."""


def load(folder=DEMO):
    """Every rig of a folder, by the name of its file, as profiles.

    folder: path of a folder of .toml files

    Raises FleetError for the first file that is no sound rig, and where there is none.
    """
    files = sorted(pathlib.Path(folder).glob("*.toml"))
    if not files:
        raise FleetError(f"{folder}: no .toml file of a rig in it")
    return {path.stem: profile_of(path) for path in files}


def profile_of(path):
    """One rig's file as a sound profile. Figures may stand as numbers, in the file's own units."""
    try:
        written = tomllib.loads(path.read_text())
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as fault:
        raise FleetError(f"{path.name}: {fault}") from fault
    system = written.get("units", "US")
    profile = {"schema": rig.SCHEMA, "id": f"fleet-{path.stem}", **_typed(written, rig.FIELDS, system)}
    profile["hoses"] = [_typed(row, rig.HOSE_FIELDS, system) for row in written.get("hoses", [])]
    profile["beds"] = [
        {**_typed(bed, rig.BED_FIELDS, system), "end": _typed_end(bed.get("end", {}), system)}
        for bed in written.get("beds", [])
    ]
    for problem in rig.problems(profile, catalogue.shelf(), units.shown_in("US")):
        raise FleetError(f"{path.name}: {problem['field']}: {problem['code']}")
    return profile


def _typed_end(end, system):
    return _typed(end, rig.END_FIELDS.get(end.get("kind"), ()), system)


def _typed(row, fields, system):
    """A row with its numbers as if typed on the page."""
    quantities = {field[0] for field in fields if field[1] == "quantity"}
    return {
        key: f"{value}@{system}" if key in quantities and "@" not in str(value)
        else value if isinstance(value, (dict, list)) else str(value)
        for key, value in row.items()
    }


def packed(profile):
    """A profile as the fragment of a link that the Rig page takes it from."""
    packer = zlib.compressobj(9, wbits=-15)
    content = packer.compress(json.dumps(profile, ensure_ascii=False).encode()) + packer.flush()
    return "#take=z" + base64.urlsafe_b64encode(content).decode().rstrip("=")
