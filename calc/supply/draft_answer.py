"""The draft page's answer: what the pump can still give at a lift, and what its vacuum gauge should show."""
from calc.base import display, readout, rounding
from calc.pump import draft

GAUGE_INHG = 2  # what a panel's compound gauge can be read to


def answer(entries, shelf, units):
    """What is left of a pump at a lift, ready to be read.

    entries: text as typed or chosen: `rated`, `lift`, `altitude`, `water` (temperature, degrees F), the suction hose
        `suction` (size, inches), `hoses`, `length`, the `flow`, and `vacuum`, a gauge reading, where there is one
    shelf: `suction`, the rows of draft.suction_loss_ft, and `water_f`, the temperatures offered
    units: see calc.base.display

    Returns contract `water_answer` with `draft_picture`; the figure's text is None past the lifts that a figure was found for.
    Raises CalcError naming the entry. Source: calc.pump.draft.
    """
    typed = readout.amounts(entries, units, (
        ("rated", "flow", 50, 6000), ("lift", "lift", 0, 40), ("altitude", "altitude", -1500, 15000),
        ("length", "length", 10, 100), ("flow", "flow", 1, 6000)))
    water_f = float(readout.choice(entries, "water", shelf["water_f"]))
    hoses = readout.count(entries, "hoses", 1, 4)
    size_in = float(readout.choice(entries, "suction", [rounding.plain(row["size_in"], 1) for row in shelf["suction"]]))
    vacuum_inhg = readout.if_given(entries, units, "vacuum", "vacuum", 0, draft.MOST_VACUUM_INHG)
    lift_ft = typed["lift"]
    max_ft = draft.max_lift_ft(typed["altitude"], water_f)
    practical_ft = draft.practical_lift_ft(typed["altitude"], water_f)
    counted_ft = draft.counted_lift_ft(lift_ft, typed["altitude"], water_f)
    loss_ft = draft.suction_loss_ft(shelf["suction"], size_in, typed["flow"] / hoses, typed["length"])
    left_gpm = share = None
    if counted_ft <= draft.LIFT_SHARES[-1][0]:
        share = draft.rated_share(counted_ft)
        left_gpm = share * typed["rated"]
    expected_inhg = draft.vacuum_inhg(lift_ft + loss_ft)
    left_text = display.text(units, "flow", left_gpm)
    water_terms = (("lift", "lift", lift_ft), ("loss", "lift", loss_ft), ("max", "lift", max_ft))
    rows = []
    if share is not None:
        rows.append(readout.row(units, "left", "flow", left_gpm, (
            ("rated", "flow", typed["rated"]), ("percent", None, display.rounded(units, share * 100, 0)), ("counted", "lift", counted_ft),
            ("left", "flow", left_gpm)), ("lift_share",)))
    rows += [
        readout.row(units, "counted", "lift", counted_ft, (
            ("lift", "lift", lift_ft), ("lost", "lift", counted_ft - lift_ft), ("counted", "lift", counted_ft)),
            ("counted_lift", "max_lift")),
        readout.row(units, "practical", "lift", practical_ft, (("max", "lift", max_ft),), ("practical_lift", "max_lift")),
        readout.row(units, "max", "lift", max_ft, (), ("max_lift",)),
        readout.row(units, "loss", "lift", loss_ft, (
            ("each", "flow", typed["flow"] / hoses), ("length", "length", typed["length"]), ("loss", "lift", loss_ft)),
            ("suction_loss",)),
        readout.row(units, "expected", "vacuum", expected_inhg, water_terms + (("vacuum", "vacuum", expected_inhg),), ("vacuum",)),
        readout.row(units, "spare", "lift", max_ft - lift_ft - loss_ft, water_terms + (
            ("spare", "lift", max_ft - lift_ft - loss_ft),), ("max_lift", "suction_loss")),
    ]
    cautions = _lift_cautions(units, (lift_ft, counted_ft, lift_ft + loss_ft), (practical_ft, max_ft), typed["flow"], left_gpm)
    rows += _suctions(units, shelf["suction"], (typed["rated"], size_in, hoses), typed["flow"], typed["length"], cautions)
    if vacuum_inhg is not None:
        rows.append(_reading(units, vacuum_inhg, lift_ft, loss_ft, expected_inhg, cautions))
    return {
        "sum": "draft" if share is not None else "draft_none" if lift_ft <= practical_ft else "draft_beyond",
        "figure": {"kind": "flow", "text": left_text},
        "facts": {"percent": None if share is None else display.rounded(units, share * 100, 0), "lift": display.figure(units, "lift", lift_ft),
                  "expected": display.text(units, "vacuum", expected_inhg), "flow": display.text(units, "flow", typed["flow"]),
                  "counted": display.text(units, "lift", counted_ft),
                  "practical": display.text(units, "lift", practical_ft)},
        "rows": rows,
        "cautions": cautions,
        "picture": _drawn(units, lift_ft, loss_ft, practical_ft, max_ft),
    }


def _lift_cautions(units, lifts_ft, limits_ft, flow_gpm, left_gpm):
    lift_ft, counted_ft, taken_ft = lifts_ft  # the lift, as it counts against the rating, and with the suction loss
    practical_ft, max_ft = limits_ft
    cautions = []
    if taken_ft >= max_ft:
        cautions.append(readout.caution(units, "stop", "beyond_air", (("amount", "lift", taken_ft), ("limit", "lift", max_ft))))
    if lift_ft > practical_ft:
        cautions.append(readout.caution(units, "stop", "beyond_practical", (
            ("amount", "lift", lift_ft), ("limit", "lift", practical_ft))))
    elif left_gpm is None:
        cautions.append(readout.caution(units, "caution", "no_figure", (
            ("amount", "lift", counted_ft), ("limit", "lift", draft.LIFT_SHARES[-1][0]))))
    elif counted_ft > draft.DEPENDABLE_LIFT_FT:
        cautions.append(readout.caution(units, "caution", "above_dependable", (
            ("amount", "lift", counted_ft), ("limit", "lift", draft.DEPENDABLE_LIFT_FT))))
    if left_gpm is not None and flow_gpm > left_gpm:
        cautions.append(readout.caution(units, "caution", "past_what_is_left", (
            ("amount", "flow", flow_gpm), ("limit", "flow", left_gpm))))
    return cautions


def _suctions(units, table, suction, flow_gpm, length_ft, cautions):
    """What suction goes with the rating, and what one more hose like these would take from the loss."""
    rated_gpm, size_in, hoses = suction
    rows = []
    due = draft.suction_size(rated_gpm)
    if due:
        rows.append(readout.row(units, "suction_size", "diameter", due["size_in"], (
            ("rated", "flow", rated_gpm), ("hoses", None, str(due["hoses"])), ("size", "diameter", due["size_in"])), ("suction_size",)))
        if size_in < due["size_in"] or hoses < due["hoses"]:
            cautions.append(readout.caution(units, "caution", "suction_small", (
                ("amount", "flow", rated_gpm), ("needed", None, str(due["hoses"])), ("limit", "diameter", due["size_in"]))))
    less_ft = draft.suction_loss_ft(table, size_in, flow_gpm / (hoses + 1), length_ft)
    rows.append(readout.row(units, "one_more_suction", "lift", less_ft, (
        ("hoses", None, str(hoses + 1)), ("each", "flow", flow_gpm / (hoses + 1)), ("loss", "lift", less_ft)), ("suction_loss",)))
    return rows


def _reading(units, vacuum_inhg, lift_ft, loss_ft, expected_inhg, cautions):
    """What a gauge reading stands for, beside what lift and table ask for."""
    head_ft = draft.lift_from_vacuum_ft(vacuum_inhg)
    facts = (("amount", "vacuum", vacuum_inhg), ("limit", "vacuum", expected_inhg))
    if vacuum_inhg > expected_inhg + GAUGE_INHG:
        cautions.append(readout.caution(units, "caution", "vacuum_high", facts))
    if vacuum_inhg < draft.vacuum_inhg(lift_ft) - GAUGE_INHG:
        cautions.append(readout.caution(units, "caution", "vacuum_low", (
            ("amount", "vacuum", vacuum_inhg), ("limit", "vacuum", draft.vacuum_inhg(lift_ft)))))
    return readout.row(units, "reading", "lift", head_ft, (
        ("vacuum", "vacuum", vacuum_inhg), ("head", "lift", head_ft), ("lift", "lift", lift_ft),
        ("beyond", "lift", head_ft - lift_ft), ("loss", "lift", loss_ft)), ("vacuum", "suction_loss"))


def _drawn(units, lift_ft, loss_ft, practical_ft, max_ft):
    """Heights as shares of the greatest lift at the sea, or of this lift where it is more, with their texts."""
    top_ft = max(draft.max_lift_ft(0, draft.USUAL_WATER_F), max_ft, lift_ft)
    marks = [("practical", practical_ft), ("max", max_ft)]
    return {
        "lift": {"share": lift_ft / top_ft, "text": display.figure(units, "lift", lift_ft)},
        "loss": {"share": (lift_ft + loss_ft) / top_ft, "text": display.text(units, "lift", loss_ft)},
        "marks": [{"name": name, "share": ft / top_ft, "text": display.text(units, "lift", ft)} for name, ft in marks],
    }
