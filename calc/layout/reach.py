"""How far a line of a layout goes, how much it passes at a length, and the surge of its nozzle shut fast."""
import math

from calc.base import display, entry
from calc.base.errors import CalcError, check_not_negative, check_positive
from calc.hydraulics import caution, hose, surge, water
from calc.layout import answer as layout_answer, typed as layout_typed

FAST_S = 0.5  # a bale slammed shut; common practice is to take seconds over it
MOST_GPM = 20000  # past anything one line carries
HALVINGS = 60  # of that flow: down to its last bit
LAST_BIT = 1e-9

# an entry, its quantity, and what it must be
ENTRIES = (("pump", "pressure", check_positive), ("flow", "flow", check_positive), ("end", "pressure", check_not_negative),
           ("length", "length", check_not_negative))


def answer(layout, shelf, units, line, reach):
    """How long a line may be for a flow, and what it passes at a length, ready to be read.

    layout, shelf, units: as for calc.layout.answer
    line: id of the line; what comes before it stays as it is, the other lines at their flow
    reach: what is asked of it, as typed, contract `reach`

    Returns what read does. Raises CalcError naming the typed field, "reach_pump" for a pump. Source: hose.friction_loss_psi
    solved for the length; for the flow by halving; surge.rise.
    """
    return read(layout_answer.solved(layout, shelf, units), shelf, units, line, reach)


def read(solution, shelf, units, line, reach):
    """How long a line of a layout that is worked out may be, and what it passes.

    solution: of calc.layout.answer.solved
    shelf, units, line, reach: as for answer

    Returns contract `reach_answer`, or None of a hose that shares its end with another: its length changes what the other carries. Raises CalcError as answer does, and naming line where there is none of that id. Source: as for answer.
    """
    _, by_id, report = solution
    if line not in by_id:
        raise CalcError("line", "unknown")
    reported = {row["id"]: row for row in report["lines"]}
    if reported[line]["into"] or any([row["into"] == line for row in report["lines"]]):
        return None
    way = _way(reported, by_id, line)
    limit_psi = _limit_psi(way)
    usual = {
        "pump": _down(units, "pressure", report["discharge_psi"] if limit_psi is None else limit_psi),
        "flow": display.text(units, "flow", reported[line]["flow_gpm"]),
        "end": display.text(units, "pressure", reported[line]["outlet_psi"]),
    }
    texts, known = _entries(reach, usual, units)
    taken_psi = _needed_psi(way, known["flow"], 0, known["end"], shelf)
    left_psi = known["pump"] - taken_psi
    rate_psi = hose.friction_loss_psi(by_id[line]["coefficient"], known["flow"] / by_id[line]["parallel"], 1)
    texts["limit"] = None if limit_psi is None else _down(units, "pressure", limit_psi)
    texts["longest"] = None if left_psi < 0 else _down(units, "length", left_psi / rate_psi)
    texts["passes"] = _passes(way, known, shelf, units)
    texts["taken"] = display.text(units, "pressure", taken_psi)
    texts["cautions"] = [layout_answer.caution_texts(row, units) for row in _strained(way, known["pump"])] if reach.get("pump") else []
    texts["surge"] = _surge(report, by_id, line, units)
    return texts


def _way(reported, by_id, name):
    """The lines from the pump to one, each with what it carries for others, its hose's share of that, and the heights of its ends."""
    way = []
    while name is not None:
        feeder = reported[name]["feeder"]
        start_ft = 0 if feeder is None else by_id[feeder]["height_ft"]
        way.insert(0, {"line": by_id[name], "low_ft": min(start_ft, by_id[name]["height_ft"]), "flow_gpm": reported[name]["end_gpm"],
                       "share": reported[name]["flow_gpm"] / reported[name]["end_gpm"]})
        name = feeder
    for part in way:
        part["others_gpm"] = part["flow_gpm"] - way[-1]["flow_gpm"]
    return way


def _limit_psi(way):
    """The most the pump may show with all shut, by the working pressure of the hose on the way; None if unknown."""
    limits = [(caution.working_psi(part["line"]), water.elevation_psi(part["low_ft"])) for part in way]
    allowed = [limit_psi + height_psi for limit_psi, height_psi in limits if limit_psi is not None]
    return min(allowed) if allowed and min(allowed) > 0 else None


def _strained(way, pump_psi):
    """What that pressure at the pump calls for in the hose on the way, with all shut."""
    cautions = []
    for part in way:
        seen_psi = pump_psi - water.elevation_psi(part["low_ft"])
        strain = caution.of_hose(seen_psi, part["line"])
        if strain:
            cautions.append({"level": strain[0], "code": "above_" + strain[1], "line": part["line"]["id"], "crew": None, "reaction": None,
                          "kind": "pressure", "amount": seen_psi, "limit": strain[2]})
    return cautions


def _entries(reach, usual, units):
    """Each entry as text and as an amount; one that is left empty has the usual one, a text in the page's unit."""
    texts, known = {}, {}
    for name, kind, check in ENTRIES:
        field = "reach_" + name
        entered = reach.get(name) or usual.get(name, "")
        known[name] = entry.quantity(units, kind, field, entered)
        check(field, known[name])
        texts[name] = entry.shown(units, kind, entered)
    return texts, known


def _needed_psi(way, flow_gpm, length_ft, end_psi, shelf):
    """What the pump must show for a flow to the end of the last line, were it this long."""
    needed_psi = end_psi
    for part in way:
        line = part["line"]
        through_gpm = part["others_gpm"] + flow_gpm
        run_ft = length_ft if part is way[-1] else line["length_ft"]
        needed_psi += hose.friction_loss_psi(line["coefficient"], part["share"] * through_gpm / line["parallel"], run_ft)
        needed_psi += water.elevation_psi(line["rise_ft"]) + layout_typed.appliance_psi(line, through_gpm, shelf)
    return needed_psi


def _passes(way, known, shelf, units):
    """The greatest flow that leaves the pressure wanted at the end, as text rounded down."""
    def is_enough(flow_gpm):
        return _needed_psi(way, flow_gpm, known["length"], known["end"], shelf) <= known["pump"] * (1 + LAST_BIT)

    least, most = 0, MOST_GPM
    if not is_enough(least) or is_enough(most):
        return None
    for _ in range(HALVINGS):
        middle = (least + most) / 2
        if is_enough(middle):
            least = middle
        else:
            most = middle
    return _down(units, "flow", least)


def _down(units, kind, amount):
    """An amount as text in the page's unit, rounded down: what is printed is reached."""
    shown = display.scale(units, units["shown"], kind)
    steps = 10 ** shown["places"]
    return display.rounded(units, math.floor(amount * shown["factor"] * steps * (1 + LAST_BIT)) / steps, shown["places"])


def _surge(report, by_id, name, units):
    for line in report["lines"]:
        spec = by_id[line["id"]]
        if line["id"] == name and line["nozzle"] and spec.get("bore_in") and spec["length_ft"] > 0:
            rise = surge.rise(line["flow_gpm"] / spec["parallel"], spec["bore_in"], spec["length_ft"], FAST_S)
            return {
                "least": _first_figure(units, rise["least_psi"]),
                "most": _first_figure(units, rise["most_psi"]),
                "slowest": display.rounded(units, math.ceil(rise["slowest_s"]), 0),
            }
    return None


def _first_figure(units, psi):
    """A pressure in the page's unit, to its first figure."""
    amount = psi * display.scale(units, units["shown"], "pressure")["factor"]
    step = 1e-3
    while step * 10 <= amount:
        step *= 10
    places = 0 if step >= 1 else display.scale(units, units["shown"], "pressure")["places"]
    return display.rounded(units, step * int(amount / step + 0.5), places)
