"""The files of a department's rigs, and the sentence for each that cannot be used: file, row, field, and what is allowed."""
import difflib
import json
import math
import re
import tomllib
import unicodedata

from calc.base import display
from calc.rig import check_fields, fields as rig_fields
from site_src.content import catalogue, checks, data, units

LARGEST_BYTES = 200_000  # a rig with every row it may have is under 20,000
SAFE = re.compile(r"[a-z0-9](?:[a-z0-9-]*[a-z0-9])?")  # what a host, a browser and a message all leave as it is
SECTIONS = {"hoses": rig_fields.HOSE_FIELDS, "beds": (*rig_fields.BED_FIELDS, ("tips", "text")), "supply": rig_fields.SUPPLY_FIELDS, "checks": check_fields.CHECK_FIELDS}


class FleetError(ValueError):
    """Rigs that cannot be used; says of each file what is wrong with it and what is allowed, a line each."""


def named(folder):
    """The files of rigs in a folder by the name their pages take, in their order.

    Raises FleetError where there is none, where one is no file of its own, where a name would break an address, and where two differ by their ending only.
    """
    files = sorted(path for path in folder.glob("*") if path.name.lower().endswith(".toml"))
    if not files:
        raise FleetError(f"{folder}: no .toml file of a rig in it.")
    refused, taken = [], {}
    for path in files:
        stem = path.name[:-len(".toml")]  # of ".toml" pathlib takes all for the stem
        if not is_regular(path):
            refused.append(f"{path.name}: a link, a folder or a device. Put the file of the rig itself here.")
        elif not SAFE.fullmatch(stem):
            letters = unicodedata.normalize("NFKD", stem).encode("ascii", "ignore").decode()
            better = re.sub(r"[^a-z0-9]+", "-", letters.casefold()).strip("-") or "engine-1"
            refused.append(f'{path.name}: this name cannot stand in a web address. Small letters a to z, digits and - between them are allowed: rename it, such as "{better}.toml".')
        elif stem in taken:
            refused.append(f"{path.name}: {taken[stem]} has the same name but for its ending. Rename one of them.")
        taken.setdefault(stem, path.name)
    if refused:
        raise FleetError("\n".join(refused))
    return {path.stem: path for path in files}


def is_regular(path):
    """Whether a path is a file itself: a pipe or a device would hold a build for ever, a link may lead to either, or to what is nobody's rig."""
    return path.is_file() and not path.is_symlink()


def read(path):
    """What a file holds, as plain data. It is UTF-8, with or without a byte order mark, whatever the machine's own is.

    Raises FleetError where it is no TOML, and where it holds blocks of another form than a rig's.
    """
    if path.stat().st_size > LARGEST_BYTES:
        raise FleetError(f"{path.name}: larger than the file of a rig can be ({LARGEST_BYTES // 1000} kB).")
    try:
        written = tomllib.loads(path.read_text(encoding="utf-8-sig"))
    except UnicodeDecodeError as fault:
        raise FleetError(f"{path.name}: not UTF-8 at byte {fault.start + 1}. Save it as UTF-8 in the editor.") from fault
    except RecursionError as fault:
        raise FleetError(f"{path.name}: nested too deep to be a rig.") from fault
    except tomllib.TOMLDecodeError as fault:
        raise FleetError(f"{path.name}: not TOML. {fault}.") from fault
    except ValueError as fault:  # thousands of digits
        raise FleetError(f"{path.name}: holds a number too long to be of a rig.") from fault
    for key in ("schema", "id"):
        if key in written:
            raise FleetError(f"{path.name}, {key}: the build sets this itself. Leave it out.")
    for section in SECTIONS:
        rows = written.get(section, [])
        if not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
            raise FleetError(f"{path.name}, {section}: begin each row with [[{section}]], in double brackets, and put its fields under it.")
    for count, bed in enumerate(written.get("beds", []), 1):
        if not isinstance(bed.get("end", {}), dict):
            raise FleetError(f'{path.name}, [[beds]] {count}, end: write it as {{ kind = "fog", flow = 150, pressure = 100 }}.')
    return written


def sentence(name, problem, written, system):
    """What is wrong with one field of a file, in words: those of the Rig page, then what is allowed.

    name: of the file
    problem: as calc.rig.check.problems gives it
    written: what the file holds
    system: of units, that the file is written in
    """
    place, value, fields = found(problem["field"].split("."), written)
    carry, refusal = data.words("rig")["carry"], data.words("site")["refusal"]
    reason = carry.get(problem["code"]) or refusal.get(problem["code"]) or refusal["other"]
    more = allowed(problem, fields, problem["field"].split(".")[-1], system) or meant(problem["code"], value)
    typed = "" if value is None else f" = {json.dumps(value, ensure_ascii=False, default=str)[:60]}"
    return f"{', '.join([name, *place])}{typed}: {reason.format(**problem).rstrip('.')}.{more}"


def found(parts, written):
    """A place as people read it, rows counted from 1; what stands there; and the fields that may."""
    place, value, fields = [], written, rig_fields.FIELDS
    for at, part in enumerate(parts):
        is_row = part.isdecimal()
        if is_row:
            place[-1] = f"[[{place[-1]}]] {int(part) + 1}"
        else:
            place.append(part if place[-1:] != ["end"] else f"{place.pop()}.{part}")
        here = int(part) if is_row else part
        try:
            value = value[here]
        except (LookupError, TypeError):
            value = None
        if at == 0:
            fields = SECTIONS.get(part, rig_fields.FIELDS)
        if part == "end" and at < len(parts) - 1:
            kind = (value or {}).get("kind")
            fields = (("kind", "choice", tuple(rig_fields.END_FIELDS)), *rig_fields.END_FIELDS.get(kind if isinstance(kind, str) else "", ()))
    return place, value if not isinstance(value, (dict, list)) else None, fields


def allowed(problem, fields, name, system):
    """What may stand in a field, as the end of a sentence; nothing where its reason says enough."""
    names = [field[0] for field in fields]
    if problem["code"] == "unknown_field":
        meant = difflib.get_close_matches(name, names, 1)
        return f' Did you mean "{meant[0]}"?' if meant else f" Known here: {', '.join(names)}."
    kind, *detail = next((field[1:] for field in fields if field[0] == name), ("text",))
    if kind in ("choice", "shelf", "crew"):
        if problem["code"] not in ("unknown", "missing", "not_text"):
            return ""  # the choice is a good one, but listed twice
        shelf = catalogue.shelf()
        choices = detail[0] if kind == "choice" else [hose for hose in shelf["hoses"] if hose != rig_fields.PIPED] if kind == "shelf" else shelf["crews"]
        return f" Allowed: {', '.join(choices)}."
    if kind == "number":
        return f" Allowed: {detail[0]} to {detail[1]}."
    if kind == "quantity":
        shown = units.shown_in(system)
        factor = display.scale(shown, system, detail[0])["factor"]
        unit = data.words("units")["unit"][system].get(detail[0], "")
        return f" Allowed: {inward(detail[1] * factor, math.ceil)} to {inward(detail[2] * factor, math.floor)} {unit}".rstrip() + "."
    return f" Allowed: text of up to {rig_fields.MOST_TEXT} characters." if problem["code"] == "not_text" else ""


def meant(code, value):
    """The item or list that a row may have meant, as the end of a sentence; nothing for another fault."""
    if code == "no_such_list":
        return f" Allowed: {', '.join(row['id'] for row in checks.lists())}."
    ids = [row["id"] for row in (*checks.rows(), *checks.due())] if code == "no_such_item" else []
    close = difflib.get_close_matches(str(value), ids, 1)
    return f' Did you mean "{close[0]}"?' if close else ""


def inward(bound, toward):
    """A bound in three figures, rounded so that what is said to be allowed is."""
    step = 10 ** (math.floor(math.log10(bound)) - 2) if bound else 1
    return f"{toward(round(bound / step, 6)) * step:.10g}"
