"""The shelf, what is at hand for a layout, and the parts of it that a faulty profile spoiled.

The shelf is
    hoses       by name, {"coefficient", "bore_in", "size_in", and the limits of calc.hydraulics.caution}
    crews       by name, {"limit_lbf"}
    appliances  by name, [[from_gpm, psi], ...], the usual loss by the flow through it
    rule        where a department has its own friction rule, its code in calc.hydraulics.friction_rule
A rig whose profile has a fault (see calc.rig.profile) marks what hangs on it: a hose carries `faulty`, the place of the fault
such as "hoses.0.coefficient", and `faulty_appliances` of the shelf has the place by the appliance. Neither is ever replaced by
a handbook figure.
"""
from calc.base.errors import CalcError


def hose(shelf, field, name):
    """A hose that is at hand.

    shelf: as the module says
    field: name of the input, for the refusal
    name: of the hose

    Returns its figures. Raises CalcError naming the field, with code unknown, or faulty_profile and the place of the fault.
    """
    if not isinstance(name, str) or name not in shelf["hoses"]:
        raise CalcError(field, "unknown")
    figures = shelf["hoses"][name]
    if figures.get("faulty"):
        raise CalcError(field, "faulty_profile", place=figures["faulty"])
    return figures


def loss_steps(shelf, device):
    """The usual loss of an appliance, [[from_gpm, psi], ...], by the flow through it.

    shelf: as the module says
    device: a name of its appliances

    Raises CalcError naming loss, with code faulty_profile and the place of the fault.
    """
    place = shelf.get("faulty_appliances", {}).get(device)
    if place:
        raise CalcError("loss", "faulty_profile", place=place)
    return shelf["appliances"][device]
