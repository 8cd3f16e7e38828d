"""The card that a department fixes by the panel: every preconnect of a rig with the one number to set.

The card is a sheet of blocks, ready to be set in type. What words are wanted for stands as a code with facts, and plain text as text.
"""
from calc.base import display, entry, shelf as shelves
from calc.base.errors import CalcError
from calc.base.order import ordered
from calc.hydraulics import caution, hose, nozzle, water
from calc.layout import answer as layout_answer, pressure as layout_pressure
from calc.rig import bed_answer, profile as rig_profile

OVER, STOPPED = "over", "stopped"  # marks of a cell
FLOORS = (-1, 0, 1, 2, 3)  # in the order they stand beside each other; 0 is the ground
ADDED_SECTIONS = (1, 2)
MOST_FLOORS = 5


def card(profile, shelf, units, section, tips):
    """The panel card of a rig in the page's units.

    profile: see calc.rig.profile, sound or not; rows that need what is faulty in it stay blank
    shelf: see calc.base.shelf; its hoses also carry `label` and `card_gpm`, the flows of a supply row
    units: see calc.base.display
    section: the section of hose a crew adds, as an entry ("50@US")
    tips: smooth-bore tips, each contract `tip_choice`; those of master streams are listed on the card

    Returns the answer of contract `panel_card.card`; pressures of beds are rounded to the panel's step where the profile has one.
    Raises CalcError naming the field.
    Source: calc.layout.pressure; tips and rounding common practice.
    """
    at_hand = rig_profile.at_hand(profile, shelf, units)
    own, sound = at_hand["shelf"], at_hand["rig"]
    floor_ft = _known(sound, units, "floor", "length")
    step_psi = bed_answer.panel_step_psi(sound, units)
    labels = {tip["id"]: tip["label"] for tip in tips}
    section_ft = entry.quantity(units, "length", "section", section)
    blocks = [
        _beds(rig_profile.bed_rows(profile, sound), own, units, floor_ft, step_psi, section_ft, labels),
        _supply(sound, own, units),
        _tips(sound, units, tips, labels),
        _heights(floor_ft, units),
    ]
    return {
        "blocks": [block for block in blocks if block["rows"]],
        "notes": _notes(sound, own, units, step_psi),
        "faults": own.get("faults", []),
    }


def _known(profile, units, name, kind):
    return entry.quantity(units, kind, name, profile[name]) if profile.get(name) else None


def _row(name, cells, detail=None, over=(), stopped=()):
    return {"name": name, "detail": detail, "cells": cells, "over": list(over), "stopped": list(stopped), "line": None}


def _beds(beds, shelf, units, floor_ft, step_psi, section_ft, labels):
    head = [{"code": "line"}]
    for floors in FLOORS:
        head.append({"code": "floor_up" if floors > 0 else "floor_down", "count": str(abs(floors))} if floors else {"code": "ground"})
    for count in ADDED_SECTIONS:
        head.append({"code": "added", "length": display.text(units, "length", count * section_ft)})
    changes = [(0, 0 if floors == 0 else None if floor_ft is None else floors * floor_ft) for floors in FLOORS]
    changes += [(count * section_ft, 0) for count in ADDED_SECTIONS]
    rows = []
    for name, bed, _ in beds:
        if bed is None:
            rows.append(_row(name, [None] * len(changes), {"code": "faulty_bed"}))
            continue
        try:
            rows.append(_bed(bed, shelf, units, step_psi, changes, labels))
        except CalcError as error:
            rows.append(_row(name, [None] * len(changes), {"code": bed_answer.blank_code(error)}))
    return {"code": "set", "head": head, "rows": rows}


def _bed(bed, shelf, units, step_psi, changes, labels):
    """One bed with its pressure as it lies, and with each change of hose and height; piped, no hose can be added."""
    line, limits, answer = bed_answer.solved(bed, shelf, units)
    is_piped = not bed.get("hose")
    settings = [(None, None) if is_piped and change != (0, 0) else _pressure(line, limits, units, step_psi, *change) for change in changes]
    over, stopped = [[place for place, (_, mark) in enumerate(settings) if mark == wanted] for wanted in (OVER, STOPPED)]
    row = _row(bed["name"], [cell for cell, _ in settings], _detail(bed, shelf, units, answer, labels), over, stopped)
    if bed.get("cap"):
        row["cap"] = bed["cap"]
    if not is_piped:
        row["line"] = {"bore_in": shelf["hoses"][bed["hose"]]["bore_in"], "length_ft": line["length_ft"]}  # as it is drawn
    return row


def _detail(bed, shelf, units, answer, labels):
    """What a bed is made of."""
    way = "layout_" if not bed.get("device") else "master_" if bed.get("hose") else "piped_"
    line = answer["lines"][0]
    detail = {"code": way + bed["end"]["kind"], "flow": answer["flow"], "nozzle": line["outlet"]}
    if bed.get("hose"):
        detail["hose"] = shelf["hoses"][bed["hose"]]["label"]
        detail["length"] = entry.shown(units, "length", bed["length"])
    if bed.get("device"):
        detail["loss"] = line["appliance"]
    if bed["end"]["kind"] == "smooth":
        detail["tip"] = _tip_label(bed["end"]["tip"], units, labels)
        if way == "piped_" and bed.get("tips"):  # their flows stand among the tips
            tips = [_tip_label(variant["end"]["tip"], units, labels) for variant in rig_profile.beds_of({"beds": [bed]})]
            return {"code": "piped_tips", "tips": ", ".join(tips), "nozzle": detail["nozzle"], "loss": detail["loss"]}
    return detail


def _pressure(line, limits, units, step_psi, added_ft, rise_ft):
    """The pressure to set for a longer or higher line, rounded to the panel's step, and OVER where it is over the hose's working limit.

    No pressure past any fire hose, and where it is stopped: STOPPED.
    """
    if rise_ft is None:
        return None, None
    changed = dict(line)
    changed["length_ft"] = line["length_ft"] + added_ft
    changed["rise_ft"] = rise_ft
    report = layout_pressure.discharge_pressure({"lines": [changed]})
    psi, cautions = report["discharge_psi"], caution.cautions(limits, report)
    if psi > layout_answer.MOST_PSI or bed_answer.stop(cautions):
        return None, STOPPED
    if psi < 0:
        return None, None
    return bed_answer.on_card(units, psi, step_psi), OVER if bed_answer.is_over(cautions) else None


def _supply(profile, shelf, units):
    """The supply hose that the rig carries, and hose the profile names that is in no bed: it is taken for supply too."""
    beds = [bed.get("hose") for bed in profile.get("beds", [])]
    carried = {row["hose"]: row for row in profile.get("supply", [])}
    names = [row["hose"] for row in profile.get("supply", [])]
    names += [row["hose"] for row in profile.get("hoses", []) if row["hose"] not in beds and row["hose"] not in carried]
    rows = []
    for name in names:
        detail = _carried(carried[name], units) if name in carried else None
        try:
            figures = shelves.hose(shelf, "hose", name)
        except CalcError:
            rows.append(_row(shelf["hoses"][name]["label"], [None, None], {"code": "faulty_hose"}))
            continue
        for flow_gpm in figures["card_gpm"]:
            rows.append(_row(figures["label"], _loss(figures, flow_gpm, units), detail))
            detail = None  # said once of a hose
    return {"code": "supply", "head": [{"code": "hose"}, {"code": "flow"}, {"code": "loss"}], "rows": rows}


def _loss(figures, flow_gpm, units):
    hundred_ft = 100 / display.scale(units, units["shown"], "length")["factor"]
    loss_psi = hose.friction_loss_psi(figures["coefficient"], flow_gpm, hundred_ft)
    return [display.text(units, "flow", flow_gpm), display.text(units, "pressure", loss_psi)]


def _carried(row, units):
    """How much of a hose is carried, and its working limit where the profile has one."""
    detail = {"code": "carried", "length": entry.shown(units, "length", row["length"])}
    if row.get("limit"):
        detail["code"] = "carried_limit"
        detail["limit"] = entry.shown(units, "pressure", row["limit"])
    return detail


def _tip_label(tip, units, labels):
    """A tip by its name, which no line's end parts, or by its diameter in the page's unit."""
    return labels[tip].replace(" ", "\u00a0") if tip in labels else entry.shown(units, "diameter", tip)


def _tips(profile, units, tips, labels):
    """The rig's own smooth bores at their pressures, and the usual master-stream tips, the smallest first."""
    wanted = [(bed["end"]["tip"], bed["end"]["pressure"]) for bed in rig_profile.beds_of(profile) if bed["end"]["kind"] == "smooth"]
    wanted += [(tip["id"], tip["usual"]) for tip in tips if tip["is_master"]]
    rows = []
    for place, (tip, pressure) in enumerate(wanted):
        if (tip, pressure) not in wanted[:place]:
            psi = entry.quantity(units, "pressure", "pressure", pressure)
            tip_in = entry.quantity(units, "diameter", "tip", tip)
            flow_gpm = nozzle.smooth_bore_flow_gpm(tip_in, psi)
            cells = [display.text(units, "pressure", psi), display.text(units, "flow", flow_gpm)]
            rows.append((tip_in, psi, _row(_tip_label(tip, units, labels), cells)))
    rows = [row for _, _, row in ordered(rows, lambda row: (row[0], row[1]))]
    return {"code": "tips", "head": [{"code": "tip"}, {"code": "tip_pressure"}, {"code": "flow"}], "rows": rows}


def _heights(floor_ft, units):
    rows = [] if floor_ft is None else [
        _row(str(count), [display.text(units, "pressure", water.elevation_psi(count * floor_ft))])
        for count in range(1, MOST_FLOORS + 1)
    ]
    return {"code": "heights", "head": [{"code": "floors"}, {"code": "add"}], "rows": rows}


def _others(profile):
    """Hose on the card that the profile has no figures of."""
    own = [row["hose"] for row in profile.get("hoses", [])]
    return [row["hose"] for row in profile.get("beds", []) + profile.get("supply", []) if row.get("hose") and row["hose"] not in own]


def _notes(profile, shelf, units, step_psi):
    notes = [{"code": "rule"}]
    if shelf.get("rule", "square") != "square":
        notes.append({"code": "other_rule"})
    if step_psi is not None:
        notes.append({"code": "rounded", "step": display.plain(units, display.step(units, "pressure", step_psi), 2)})
    if any(bed.get("device") for bed in profile.get("beds", [])):
        notes.append({"code": "master_loss"})
    if any(bed.get("device") == "aerial" for bed in profile.get("beds", [])):
        notes.append({"code": "aerial"})
    for row in profile.get("hoses", []):
        facts = shelf["hoses"][row["hose"]]
        if facts.get("faulty"):
            continue
        notes.append({"code": "own_" + facts["origin"], "hose": facts["label"],
                      "coefficient": display.significant(units, "coefficient", facts["coefficient"])})
        if facts["origin"] == "measured" and row.get("readings"):
            notes[-1].update({"code": "own_readings", "readings": row["readings"]})
    if _others(profile):
        notes.append({"code": "own_others" if profile.get("hoses") else "own_none"})
    for name in ("owner", "dated"):
        notes.append({"code": name, name: profile[name]} if profile.get(name) else {"code": name + "_none"})
    notes.append({"code": "first"})
    return notes
