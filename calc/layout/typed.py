"""A layout as it is typed on the page, made into a layout of calc.layout.pressure with the limits that are known of it.

A layout is `{"crew", "lines": [LINE, ...]}`, crew a name on the shelf. A LINE holds
    id      its name
    hose    a name on the shelf
    length  text as typed, as are all entries; "200@US" was typed in the system US
    height  its end above the pump, either sign; `rise` of older layouts is read too, see calc.layout.heights
    end     a nozzle, `{"lines": [LINE, ...]}` behind a wye or other joint, or `{"kind": "into", "line": ID}` of a line from the same place,
            at whose hose's end, before its device, this hose comes in as a second one: its height is that line's
and, where they apply,
    runs    equal hoses side by side, "1" to the most of calc.hydraulics.hose; one without it
    device  what stands at its outlet, a name of the shelf's appliances or "none"; without it a joint is a wye
    loss    loss of the device as typed; empty or absent, the usual loss of such a device
    loss_at the flow at which it loses that, by which it goes with the square; empty or absent, it is the loss at what flows here
    device_most the most flow that the device is made for; empty or absent where it is not known
A nozzle is `{"kind": "smooth", "tip", "pressure"}`, `{"kind": "fog", "flow", "pressure"}`,
`{"kind": "automatic", "least", "flow", "pressure"}` from its least to its greatest flow, or an inlet that shall see this
pressure at this flow, such as a sprinkler connection or the next pumper, `{"kind": "inlet", "flow", "pressure"}`.

The shelf, what is at hand for it, is calc.base.shelf's.
"""
from calc.base import entry, shelf as at_hand
from calc.base.errors import CalcError, check_positive
from calc.hydraulics import hose, outlet
from calc.layout import heights

DEEPEST = 20  # joints behind joints; the phone's interpreter stands about 60
RUNS = tuple([str(count) for count in range(1, hose.MOST_PARALLEL + 1)])
BARE = "none"
FIXED = ("master", "aerial")  # devices that no crew holds

# typed field of a line's end by its kind: calc's kind, then (typed, calc's field, quantity)
_ENDS = {
    "smooth": ("smooth", (("tip", "tip_in", "diameter"), ("pressure", "nozzle_psi", "pressure"))),
    "fog": ("fog", (("flow", "rated_gpm", "flow"), ("pressure", "rated_psi", "pressure"))),
    "automatic": (
        "automatic",
        (("least", "min_gpm", "flow"), ("flow", "max_gpm", "flow"), ("pressure", "rated_psi", "pressure")),
    ),
    "inlet": ("open", (("flow", "flow_gpm", "flow"), ("pressure", "pressure_psi", "pressure"))),
}


def translated(layout, shelf, units):
    """A typed layout as calc.layout.pressure takes it.

    layout, shelf: as the module says
    units: the page's units, see calc.base.display

    Returns the layout, and its lines by id, which also hold the limits of calc.hydraulics.caution.
    Raises CalcError naming the typed field and, as a fact, the line.
    """
    if not isinstance(layout, dict) or not isinstance(layout.get("crew"), str) or layout["crew"] not in shelf["crews"]:
        raise CalcError("crew", "unknown")
    crew = {"crew": layout["crew"], "crew_limit_lbf": shelf["crews"][layout["crew"]]["limit_lbf"]}
    by_id = {}
    return {"lines": _lines(layout, 0, (shelf, units, crew), by_id, DEEPEST)}, by_id


def _lines(parent, start_ft, context, by_id, depth):
    """The typed lines of a layout or a joint at a height as a layout's lines; notes each by its id."""
    if not isinstance(parent.get("lines"), list):
        raise CalcError("layout", "damaged")
    if depth == 0:
        raise CalcError("layout", "too_deep", most=DEEPEST)
    lines = []
    coming = []
    for typed in parent["lines"]:
        if not isinstance(typed, dict) or not isinstance(typed.get("end"), dict) or not isinstance(typed.get("id"), str):
            raise CalcError("layout", "damaged")
        try:
            line = _line(typed, start_ft, context, by_id, depth)
        except CalcError as error:
            if "line" in error.facts or error.field == "layout":
                raise
            raise CalcError(error.field, error.code, line=typed["id"], **error.facts)
        by_id[typed["id"]] = line
        lines.append(line)
        if "into" in line["end"]:
            coming.append(line)
    for line in coming:
        beside = [first for first in lines if first["id"] == line["end"]["into"] and "into" not in first["end"]]
        if not beside:
            raise CalcError("into", "unknown", line=line["id"])
        line["height_ft"] = beside[0]["height_ft"]
        line["rise_ft"] = beside[0]["rise_ft"]
    return lines


def _line(typed, start_ft, context, by_id, depth):
    shelf, units, crew = context
    line = {"id": typed["id"]}
    line.update(at_hand.hose(shelf, "hose", typed.get("hose")))
    line["length_ft"] = entry.quantity(units, "length", "length", typed.get("length"))
    if line["length_ft"] < 0:
        raise CalcError("length", "negative")
    line["parallel"] = int(_one_of("runs", typed.get("runs", "1"), RUNS))
    if typed["end"].get("kind") == "into":
        line.update(device=BARE, end={"into": typed["end"].get("line")}, rated_gpm=0)
        return line
    line["height_ft"], line["rise_ft"] = heights.of_line(typed, start_ft, units)
    is_joint = "lines" in typed["end"]
    device = typed.get("device", "wye" if is_joint else BARE)
    line["device"] = device if device == BARE else _one_of("device", device, shelf["appliances"])
    if line["device"] not in FIXED:
        line.update(crew)
    if line["device"] != BARE and typed.get("loss"):  # without a device no loss is shown, so none counts
        line["appliance_psi"] = entry.quantity(units, "pressure", "loss", typed["loss"])
        line["has_own_loss"] = True
        if typed.get("loss_at"):
            line["loss_at_gpm"] = entry.quantity(units, "flow", "loss_at", typed["loss_at"])
            check_positive("loss_at", line["loss_at_gpm"])
        if line["appliance_psi"] < 0:
            raise CalcError("loss", "negative")
    if line["device"] != BARE and typed.get("device_most"):
        line["device_most_gpm"] = entry.quantity(units, "flow", "device_most", typed["device_most"])
        check_positive("device_most", line["device_most_gpm"])
    if is_joint:
        behind = _lines(typed["end"], line["height_ft"], context, by_id, depth - 1)
        line["end"] = {"lines": behind}
        line["rated_gpm"] = sum([branch["rated_gpm"] for branch in behind])
    else:
        line["end"] = _nozzle(typed["end"], units)
        line["rated_gpm"] = outlet.rating(line["end"])[1]
    line["appliance_psi"] = appliance_psi(line, line["rated_gpm"], shelf)
    if "loss_at_gpm" in line:
        line["loss_at_gpm"] = line["rated_gpm"]
    return line


def _one_of(field, name, offered):
    if not isinstance(name, str) or name not in offered:
        raise CalcError(field, "unknown")
    return name


def _nozzle(typed, units):
    kind, fields = _ENDS[_one_of("kind", typed.get("kind"), _ENDS)]
    end = {"kind": kind}
    for name, field, quantity in fields:
        end[field] = entry.quantity(units, quantity, name, typed.get(name))
        check_positive(name, end[field])
    if kind == "automatic" and end["min_gpm"] > end["max_gpm"]:
        raise CalcError("least", "above_greatest")
    return end


def changed(parent, changes):
    """A layout with more said of some of its lines.

    parent: of translated, or one of its joints
    changes: by id what a line holds besides

    Raises nothing.
    """
    lines = []
    for line in parent["lines"]:
        line = dict(line)
        line.update(changes.get(line["id"], {}))
        if "lines" in line["end"]:
            line["end"] = changed(line["end"], changes)
        lines.append(line)
    return {"lines": lines}


def appliance_psi(line, flow_gpm, shelf):
    """What a line's device takes, psi: as typed, by the square of the flow where it was typed for one, or the usual loss at a flow.

    line: one of translated's by id
    flow_gpm: flow through it, US gallons per minute
    shelf: as the module says

    Raises CalcError naming loss where the rig's own loss has a fault, see calc.base.shelf. Source: the shelf, whose steps carry theirs.
    """
    if line.get("has_own_loss"):
        share = flow_gpm / line["loss_at_gpm"] if "loss_at_gpm" in line else 1
        return line["appliance_psi"] * share * share
    loss_psi = 0
    for from_gpm, step_psi in at_hand.loss_steps(shelf, line["device"]) if line["device"] != BARE else ():
        if flow_gpm >= from_gpm:
            loss_psi = step_psi
    return loss_psi
