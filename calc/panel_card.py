"""The card that a department fixes by the panel: every preconnect of a rig with the one number to set.

The card is a sheet of blocks, ready to be set in type: `{"blocks": [{"code", "head", "rows"}], "notes"}`. A row is
`{"name", "told", "cells", "is_over_test"}`, its cells text or None. What words are wanted for stands as a code with
facts, `{"code", ...}`, and plain text as text.
"""
from calc import display, entry, hose, lay, layout, nozzle, reading, rig, rounding, water

FLOORS = (1, 2, -1)
ADDED_SECTIONS = (1, 2)
MOST_FLOORS = 5


def card(profile, shelf, units, section, tips):
    """The panel card of a rig in the page's units.

    profile: a sound one, see calc.rig
    shelf: what is at hand, see calc.reading; its hoses also carry `label` and `card_gpm`, the flows of a supply row
    units: see calc.display
    section: the section of hose a crew adds, as an entry ("50@US")
    tips: smooth-bore tips by name, [{"id", "label", "usual", "is_master"}]; id is the diameter and usual the pressure,
        as entries; those of master streams are listed on the card

    Pressures of beds are rounded to the panel's step where the profile has one. A cell is None where it cannot be
    worked out: the profile gives no floor height, or no fire hose could take it. Raises CalcError naming the field.
    Source: layout.discharge_pressure; tips and rounding common practice.
    """
    own = rig.shelf_of(profile, shelf, units)
    floor_ft = _known(profile, units, "floor", "length")
    step_psi = _known(profile, units, "panel_step", "pressure")
    labels = {tip["id"]: tip["label"] for tip in tips}
    section_ft = entry.quantity(units, "length", "section", section)
    blocks = [
        _beds(profile, own, units, floor_ft, step_psi, section_ft, labels),
        _supply(profile, own, units),
        _tips(profile, units, tips, labels),
        _heights(floor_ft, units),
    ]
    return {"blocks": [block for block in blocks if block["rows"]], "notes": _notes(profile, own, units, step_psi)}


def _known(profile, units, name, kind):
    return entry.quantity(units, kind, name, profile[name]) if profile.get(name) else None


def _row(name, cells, told=None, is_over_test=False):
    return {"name": name, "told": told, "cells": cells, "is_over_test": is_over_test}


def _beds(profile, shelf, units, floor_ft, step_psi, section_ft, labels):
    head = [{"code": "line"}, {"code": "ground"}]
    for floors in FLOORS:
        head.append({"code": "floor_up" if floors > 0 else "floor_down", "count": str(abs(floors))})
    for count in ADDED_SECTIONS:
        head.append({"code": "added", "length": display.text(units, "length", count * section_ft)})
    rows = []
    for bed in profile.get("beds", []):
        plain_layout, _ = lay.translated(rig.lay_of(bed), shelf, units)
        line = plain_layout["lines"][0]
        changes = [(0, 0)]
        changes += [(0, None if floor_ft is None else floors * floor_ft) for floors in FLOORS]
        changes += [(count * section_ft, 0) for count in ADDED_SECTIONS]
        cells = [_pressure(line, units, step_psi, added_ft, rise_ft) for added_ft, rise_ft in changes]
        answer = reading.answer(rig.lay_of(bed), shelf, units)
        is_over = any(found["code"] in ("above_test_pressure", "above_working_pressure") for found in answer["cautions"])
        rows.append(_row(bed["name"], cells, _told(bed, shelf, units, answer, labels), is_over))
    return {"code": "set", "head": head, "rows": rows}


def _told(bed, shelf, units, answer, labels):
    """What a bed is made of."""
    told = {
        "code": "lay_" + bed["end"]["kind"],
        "hose": shelf["hoses"][bed["hose"]]["label"],
        "length": entry.shown(units, "length", bed["length"]),
        "flow": answer["flow"],
        "nozzle": answer["lines"][0]["outlet"],
    }
    if bed["end"]["kind"] == "smooth":
        told["tip"] = _tip_label(bed["end"]["tip"], units, labels)
    return told


def _pressure(line, units, step_psi, added_ft, rise_ft):
    """The pressure to set for a longer or higher line, rounded to the panel's step; None past any fire hose."""
    if rise_ft is None:
        return None
    changed = dict(line)
    changed["length_ft"] = line["length_ft"] + added_ft
    changed["rise_ft"] = rise_ft
    psi = layout.discharge_pressure({"lines": [changed]})["discharge_psi"]
    if not 0 <= psi <= reading.MOST_PSI:
        return None
    return display.text(units, "pressure", psi if step_psi is None else rounding.to_step(psi, step_psi))


def _supply(profile, shelf, units):
    """Hose the profile names that is in no bed: what the rig is supplied by, and supplies with."""
    beds = [bed["hose"] for bed in profile.get("beds", [])]
    hundred_ft = 100 / display.scale(units, units["shown"], "length")["factor"]
    rows = []
    for row in profile.get("hoses", []):
        if row["hose"] not in beds:
            facts = shelf["hoses"][row["hose"]]
            for flow_gpm in facts["card_gpm"]:
                loss_psi = hose.friction_loss_psi(facts["coefficient"], flow_gpm, hundred_ft)
                cells = [display.text(units, "flow", flow_gpm), display.text(units, "pressure", loss_psi)]
                rows.append(_row(facts["label"], cells))
    return {"code": "supply", "head": [{"code": "hose"}, {"code": "flow"}, {"code": "loss"}], "rows": rows}


def _tip_label(tip, units, labels):
    """A tip by its name, or by its diameter in the page's unit."""
    return labels[tip] if tip in labels else entry.shown(units, "diameter", tip)


def _tips(profile, units, tips, labels):
    """The rig's own smooth bores at their pressures, and the usual master-stream tips."""
    wanted = [(bed["end"]["tip"], bed["end"]["pressure"]) for bed in profile.get("beds", []) if bed["end"]["kind"] == "smooth"]
    wanted += [(tip["id"], tip["usual"]) for tip in tips if tip["is_master"]]
    rows = []
    for place, (tip, pressure) in enumerate(wanted):
        if (tip, pressure) not in wanted[:place]:
            psi = entry.quantity(units, "pressure", "pressure", pressure)
            flow_gpm = nozzle.smooth_bore_flow_gpm(entry.quantity(units, "diameter", "tip", tip), psi)
            cells = [display.text(units, "pressure", psi), display.text(units, "flow", flow_gpm)]
            rows.append(_row(_tip_label(tip, units, labels), cells))
    return {"code": "tips", "head": [{"code": "tip"}, {"code": "tip_pressure"}, {"code": "flow"}], "rows": rows}


def _heights(floor_ft, units):
    rows = [] if floor_ft is None else [
        _row(str(count), [display.text(units, "pressure", water.elevation_psi(count * floor_ft))])
        for count in range(1, MOST_FLOORS + 1)
    ]
    return {"code": "heights", "head": [{"code": "floors"}, {"code": "add"}], "rows": rows}


def _notes(profile, shelf, units, step_psi):
    notes = [{"code": "rule"}]
    if shelf.get("rule", "square") != "square":
        notes.append({"code": "other_rule"})
    if step_psi is not None:
        notes.append({"code": "rounded", "step": display.text(units, "pressure", step_psi)})
    for row in profile.get("hoses", []):
        facts = shelf["hoses"][row["hose"]]
        notes.append({"code": "own_" + facts["origin"], "hose": facts["label"],
                      "coefficient": display.working(units, "coefficient", facts["coefficient"])})
    for name in ("owner", "dated"):
        notes.append({"code": name, name: profile[name]} if profile.get(name) else {"code": name + "_none"})
    notes.append({"code": "first"})
    return notes
