"""What a department's rigs measured of their hose: those of its files, and those that phones sent as files into the same folder."""
import json

from calc.rig import check, pooled
from site_src.content import catalogue, fleet_files, units
from site_src.content.fleet_files import FleetError


def pool(rigs, folder):
    """A department's figure of each hose that enough of its rigs measured, see calc.rig.pooled.

    rigs: profiles by name, as of fleet.load
    folder: path of the folder they are from, with what phones sent as .json

    Raises FleetError where a phone's file holds no sound rig.
    """
    shelf, shown = catalogue.shelf(), units.shown_in("US")
    own, known = {}, {}  # by hose and rig, and the rig by its id or its name: what a phone sent comes later, and stands
    for profile in [*rigs.values(), *_sent(folder, shelf, shown)]:
        names = (profile["id"], profile["name"].strip().casefold())
        rig = next((known[name] for name in names if name in known), names)
        known.update(dict.fromkeys(names, rig))
        for row in pooled.measured(profile, shelf, shown):
            own.setdefault(row["hose"], {})[rig] = row
    figures = {hose: pooled.pooled(list(rows.values())) for hose, rows in own.items()}
    return {hose: figure for hose, figure in figures.items() if figure}


def _sent(folder, shelf, shown):
    """The profiles in files that phones sent, by the names of the files."""
    profiles = []
    for path in sorted(folder.glob("*.json")):
        try:
            sent = json.loads(path.read_text(encoding="utf-8-sig")) if path.is_file() and path.stat().st_size <= fleet_files.LARGEST_BYTES else None
        except (ValueError, RecursionError):
            sent = None
        for profile in sent if isinstance(sent, list) else [sent]:
            problems = check.all_problems(profile, shelf, shown)
            if problems:
                system = profile["units"] if isinstance(profile, dict) and profile.get("units") in units.baked() else "US"
                raise FleetError("\n".join(fleet_files.sentence(path.name, problem, profile if isinstance(profile, dict) else {}, system) for problem in problems))
            profiles.append(profile)
    return profiles
