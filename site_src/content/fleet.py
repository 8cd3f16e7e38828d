"""A department's rigs: TOML files, one a truck, checked by calc.rig.check and baked into the site."""
import base64
import json
import pathlib
import zlib

from calc.bay import department
from calc.rig import check, check_fields, fields as rig_fields
from site_src.content import catalogue, checks, data, fleet_files, units
from site_src.content.fleet_files import FleetError

DEMO = data.FOLDER / "rigs"


def load(folder=DEMO):
    """Every rig of a folder, by the name of its file, as profiles.

    folder: path of a folder of .toml files

    Raises FleetError where there is none, where one is no sound rig, and where two have one name; says all that is wrong, a line each.
    """
    rigs, refused, owners = {}, [], {}
    for name, path in fleet_files.named(pathlib.Path(folder)).items():
        try:
            rigs[name] = profile_of(path)
        except FleetError as fault:
            refused.append(str(fault))
            continue
        owner = owners.setdefault(rigs[name]["name"].strip().casefold(), path.name)
        if owner != path.name:
            refused.append(f'{path.name}, name = "{rigs[name]["name"]}": {owner} has this name too. Give each rig its own.')
    if refused:
        raise FleetError("\n".join(refused))
    return rigs


def profile_of(path):
    """One rig's file as a sound profile. Figures may stand as numbers, in the file's own units."""
    written = fleet_files.read(path)
    system = written.get("units")
    if not isinstance(system, str) or system not in units.baked():
        system = "US"
    profile = {"schema": rig_fields.SCHEMA, "id": f"fleet-{path.stem}", **_typed(written, rig_fields.FIELDS, system)}
    profile["hoses"] = [_typed(row, rig_fields.HOSE_FIELDS, system) for row in written.get("hoses", [])]
    profile["beds"] = [_typed_bed(bed, system) for bed in written.get("beds", [])]
    if "supply" in written:
        profile["supply"] = [_typed(row, rig_fields.SUPPLY_FIELDS, system) for row in written["supply"]]
    if "checks" in written:
        profile["checks"] = [_typed_check(row, system) for row in written["checks"]]
    problems = check.problems(profile, catalogue.shelf(), units.shown_in("US"))
    problems += [fault for fault in _department_faults(profile) if fault not in problems]
    if problems:
        raise FleetError("\n".join(fleet_files.sentence(path.name, problem, written, system) for problem in problems))
    return profile


def _department_faults(profile):
    lists = [row["id"] for row in checks.lists()]
    return department.applied(checks.rows(), checks.due(), lists, profile.get("checks", []), units.shown_in("US"))["faults"]


def _typed_check(row, system):
    limits = [(name, "quantity") for name in check_fields.LIMITS if row.get("unit") in check_fields.QUANTITIES]
    return _typed(row, limits, system)


def _typed_bed(bed, system):
    typed = {**_typed(bed, rig_fields.BED_FIELDS, system), "end": _typed_end(bed.get("end", {}), system)}
    if isinstance(bed.get("tips"), list):
        typed["tips"] = [_typed({"tip": tip}, rig_fields.END_FIELDS["smooth"], system)["tip"] for tip in bed["tips"]]
    return typed


def _typed_end(end, system):
    kind = end.get("kind")
    return _typed(end, rig_fields.END_FIELDS.get(kind, ()) if isinstance(kind, str) else (), system)


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
