"""The card that a department fixes by the panel: every preconnect of a rig with the one number to set."""
from calc import display, entry, hose, layout, nozzle, reading, rig, rounding, water

FLOORS = (0, 1, 2, -1)
ADDED_SECTIONS = (1, 2)
MASTER_TIPS_IN = (1.375, 1.5, 1.75, 2.0)
MASTER_PSI = 80  # driver/operator study cards


def card(profile, shelf, units, section_ft):
    """Every figure of a rig's panel card, as text in the page's units.

    profile: a sound one, see calc.rig; shelf: what is at hand; units: see calc.display
    section_ft: the section of hose a crew adds, feet, above 0

    Returns `{"section", "step", "beds", "supply", "tips", "heights"}`. A bed's `floors` and `added` pressures are
    rounded to the panel's step where the profile has one; None where they cannot be worked out: the profile gives
    no floor height, or no fire hose could take it. Raises CalcError naming the field.
    Source: layout.discharge_pressure; tips and rounding common practice.
    """
    own = rig.shelf_of(profile, shelf, units)
    floor_ft = _known(profile, units, "floor", "length")
    step_psi = _known(profile, units, "panel_step", "pressure")
    beds = profile.get("beds", [])
    return {
        "section": display.text(units, "length", section_ft),
        "step": None if step_psi is None else display.text(units, "pressure", step_psi),
        "beds": [_bed(bed, own, units, floor_ft, step_psi, section_ft) for bed in beds],
        "supply": [_supply(name, own["hoses"][name], units) for name in _supply_hoses(profile)],
        "tips": [_tip(tip_in, psi, units) for tip_in, psi in _tips(profile, units)],
        "heights": [] if floor_ft is None else [
            {"floors": str(count), "pressure": display.text(units, "pressure", water.elevation_psi(count * floor_ft))}
            for count in range(1, 6)
        ],
    }


def _known(profile, units, name, kind):
    return entry.quantity(units, kind, name, profile[name]) if profile.get(name) else None


def _bed(bed, shelf, units, floor_ft, step_psi, section_ft):
    answer = reading.answer(rig.lay_of(bed), shelf, units)
    plain_layout, _ = reading.translated(rig.lay_of(bed), shelf, units)
    length_ft = plain_layout["lines"][0]["length_ft"]

    def pressure(added_ft, rise_ft):
        return _pressure(plain_layout, units, step_psi, length_ft + added_ft, rise_ft)

    return {
        "name": bed["name"],
        "hose": bed["hose"],
        "length": display.text(units, "length", length_ft),
        "kind": bed["end"]["kind"],
        "flow": answer["flow"],
        "nozzle": answer["lines"][0]["outlet"],
        "tip": entry.shown(units, "diameter", bed["end"]["tip"]) if bed["end"]["kind"] == "smooth" else None,
        "reaction": answer["lines"][0]["reaction"],
        "floors": [
            None if floor_ft is None else pressure(0, floors * floor_ft) for floors in FLOORS
        ],
        "added": [pressure(count * section_ft, 0) for count in ADDED_SECTIONS],
        "ground": pressure(0, 0),
        "cautions": [found["code"] for found in answer["cautions"] if found["level"] == "stop"],
    }


def _pressure(plain_layout, units, step_psi, length_ft, rise_ft):
    """The pressure to set for another length and height, rounded to the panel's step; None past any fire hose."""
    line = dict(plain_layout["lines"][0])
    line["length_ft"] = length_ft
    line["rise_ft"] = rise_ft
    psi = layout.discharge_pressure({"lines": [line]})["discharge_psi"]
    if psi > reading.MOST_PSI:
        return None
    return display.text(units, "pressure", psi if step_psi is None else rounding.to_step(psi, step_psi))


def _supply_hoses(profile):
    """Hoses the profile names that are not in its beds: those it is supplied by, and supplies with."""
    beds = [bed["hose"] for bed in profile.get("beds", [])]
    return [row["hose"] for row in profile.get("hoses", []) if row["hose"] not in beds]


def _supply(name, facts, units):
    hundred_ft = 100 / display.scale(units, units["shown"], "length")["factor"]
    return {
        "hose": name,
        "rows": [
            {
                "flow": display.text(units, "flow", flow_gpm),
                "loss": display.text(units, "pressure", hose.friction_loss_psi(facts["coefficient"], flow_gpm, hundred_ft)),
            }
            for flow_gpm in facts["card_gpm"]
        ],
    }


def _tips(profile, units):
    """Tips of the rig's own smooth bores with their pressures, and the usual master-stream tips."""
    found = []
    for bed in profile.get("beds", []):
        if bed["end"]["kind"] == "smooth":
            tip = (entry.quantity(units, "diameter", "tip", bed["end"]["tip"]),
                   entry.quantity(units, "pressure", "pressure", bed["end"]["pressure"]))
            if tip not in found:
                found.append(tip)
    for tip_in in MASTER_TIPS_IN:
        found.append((tip_in, MASTER_PSI))
    return found


def _tip(tip_in, psi, units):
    return {
        "tip": display.working(units, "diameter", tip_in),
        "pressure": display.text(units, "pressure", psi),
        "flow": display.text(units, "flow", nozzle.smooth_bore_flow_gpm(tip_in, psi)),
    }
