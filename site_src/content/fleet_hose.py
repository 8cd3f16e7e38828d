"""What a department's rigs measured of their hose: those of its files, and those that phones sent as files into the same folder."""
import json

from calc.rig import check, pooled
from site_src.content import catalogue, data, fleet_files, units
from site_src.content.fleet_files import FleetError


def pool(rigs, folder):
    """A department's figure of each hose that enough of its rigs measured, see calc.rig.pooled.

    rigs: profiles by name, as of fleet.load
    folder: path of the folder they are from, with what phones sent as .json

    Raises FleetError where a phone's file holds no sound rig.
    """
    figures = {hose: pooled.pooled(rows) for hose, rows in _measured(rigs, folder).items()}
    return {hose: figure for hose, figure in figures.items() if figure}


def said(rigs, folder):
    """What pool makes of the measured hose and what it leaves out, a sentence a line. rigs, folder: as for pool."""
    lines = []
    for hose, rows in sorted(_measured(rigs, folder).items()):
        label, figure = data.by_id(data.named("hoses"))[hose]["label"], pooled.pooled(rows)
        if not figure:
            rows_said = ", ".join(f"C {row['coefficient']:g} of {row['rig']} ({row['readings']})" for row in rows)
            lines.append(f"Hose {label}: no figure of the department's. {pooled.LEAST_RIGS} rigs and {pooled.LEAST_READINGS} readings that agree are needed, and there is {rows_said}")
            continue
        lines.append(f"Hose {label}: C {figure['coefficient']:g} pooled of {figure['readings']} readings on {figure['rigs']} rigs, C {figure['least']:g} to {figure['most']:g}")
        lines += [f"Hose {label}: left out C {row['coefficient']:g} of {row['rig']}, more than {pooled.FAR:.0%} from the median of all"
                  for row in rows if not figure["least"] <= row["coefficient"] <= figure["most"]]
    return lines


def _measured(rigs, folder):
    """The rows that each rig measured, with its name as `rig`, by hose."""
    shelf, shown = catalogue.shelf(), units.shown_in("US")
    own, known = {}, {}  # by hose and rig, and the rig by its id or its name: what a phone sent comes later, and stands
    for profile in [*rigs.values(), *_sent(folder, shelf, shown)]:
        names = (profile["id"], profile["name"].strip().casefold())
        rig = next((known[name] for name in names if name in known), names)
        known.update(dict.fromkeys(names, rig))
        for row in pooled.measured(profile, shelf, shown):
            own.setdefault(row["hose"], {})[rig] = {**row, "rig": profile["name"]}
    return {hose: list(rows.values()) for hose, rows in own.items()}


def _sent(folder, shelf, shown):
    """The profiles in files that phones sent, by the names of the files."""
    profiles = []
    for path in sorted(folder.glob("*.json")):
        try:
            sent = json.loads(path.read_text(encoding="utf-8-sig")) if fleet_files.is_regular(path) and path.stat().st_size <= fleet_files.LARGEST_BYTES else None
        except (ValueError, RecursionError):
            sent = None
        for profile in sent if isinstance(sent, list) else [sent]:
            problems = check.all_problems(profile, shelf, shown)
            if problems:
                system = profile["units"] if isinstance(profile, dict) and profile.get("units") in units.baked() else "US"
                raise FleetError("\n".join(fleet_files.sentence(path.name, problem, profile if isinstance(profile, dict) else {}, system) for problem in problems))
            profiles.append(profile)
    return profiles
