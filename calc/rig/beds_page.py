"""What the start page shows of a rig: each bed with the one number to set."""
from calc.base import entry
from calc.base.errors import CalcError
from calc.layout import answer as layout_answer
from calc.rig import profile as rig_profile

OVER = ("above_test_pressure", "above_working_pressure")


def answer(profile, shelf, units):
    """The beds of a rig in its order, each at its pump pressure on level ground, not rounded to a panel's step.

    profile: see calc.rig.profile, sound or not; what needs what is faulty in it has no number
    shelf: see calc.base.shelf
    units: see calc.base.display

    Returns the answer of contract `beds_page.answer`; `place` is the bed's in the profile, `tip` that of a smooth bore.
    Raises nothing.
    Source: calc.layout.pressure.
    """
    at_hand = rig_profile.at_hand(profile, shelf, units)
    rows = []
    for name, bed, place in rig_profile.bed_rows(profile, at_hand["rig"]):
        row = {"name": name, "place": place, "pressure": None, "is_over": False}
        row.update({"code": "faulty_bed"} if bed is None else _figures(bed, at_hand["shelf"], units))
        rows.append(row)
    return {"rows": rows, "is_faulty": "faults" in at_hand["shelf"]}


def _figures(bed, shelf, units):
    try:
        solved = layout_answer.answer(rig_profile.layout_of(bed), shelf, units)
    except CalcError as error:
        if error.code not in ("faulty_profile", "beyond_any_hose"):
            raise
        return {"code": "faulty_hose" if error.code == "faulty_profile" else "beyond"}
    row = {"code": "piped", "pressure": solved["pressure"], "flow": solved["flow"], "is_over": any(caution["code"] in OVER for caution in solved["cautions"])}
    if bed["end"]["kind"] == "smooth":
        row["tip"] = bed["end"]["tip"]
    if bed.get("hose"):
        row["code"] = "hose"
        row["hose"] = shelf["hoses"][bed["hose"]]["label"]
        row["length"] = entry.shown(units, "length", bed["length"])
    return row
