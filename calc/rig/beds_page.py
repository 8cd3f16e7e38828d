"""What the start page shows of a rig: each bed with the one number to set."""
from calc.base import entry
from calc.base.errors import CalcError
from calc.rig import bed_answer, profile as rig_profile


def answer(profile, shelf, units):
    """The beds of a rig in its order, each at its pump pressure on level ground, not rounded to a panel's step, and as the panel card has it where that is another.

    profile: see calc.rig.profile, sound or not; what needs what is faulty in it has no number
    shelf: see calc.base.shelf
    units: see calc.base.display

    Returns the answer of contract `beds_page.answer`; `place` is the bed's in the profile, `tip` that of a smooth bore.
    Raises nothing.
    Source: calc.layout.pressure.
    """
    at_hand = rig_profile.at_hand(profile, shelf, units)
    step_psi = bed_answer.panel_step_psi(at_hand["rig"], units)
    rows = []
    for name, bed, place in rig_profile.bed_rows(profile, at_hand["rig"]):
        row = {"name": name, "place": place, "pressure": None, "is_over": False}
        row.update({"code": "faulty_bed"} if bed is None else _figures(bed, at_hand["shelf"], units, step_psi))
        rows.append(row)
    return {"rows": rows, "is_faulty": "faults" in at_hand["shelf"]}


def _figures(bed, shelf, units, step_psi):
    row = {"tip": bed["end"]["tip"]} if bed["end"]["kind"] == "smooth" else {}
    try:
        _, _, figures = bed_answer.solved(bed, shelf, units)
    except CalcError as error:
        row["code"] = bed_answer.blank_code(error)
        return row
    row.update(code="piped", pressure=figures["pressure"], flow=figures["flow"], is_over=bed_answer.is_over(figures["cautions"]))
    card = bed_answer.on_card(units, figures["pressure_psi"], step_psi)
    if card != row["pressure"]:
        row["card"] = card
    if bed.get("hose"):
        row["code"] = "hose"
        row["hose"] = shelf["hoses"][bed["hose"]]["label"]
        row["length"] = entry.shown(units, "length", bed["length"])
    return row
