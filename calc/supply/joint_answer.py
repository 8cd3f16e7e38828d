"""The answer for two pumpers close together: one into the other (tandem), or both on one hydrant (dual)."""
from calc.base import display, readout
from calc.hydraulics import hose
from calc.supply import sources, strain

MOST_NET_PSI = 250  # the highest net pressure a pump is rated at


def answer(entries, shelf, units):
    """What the second intake gets while water flows, and what it sees when it stops.

    entries: text as typed or chosen: `way` ("tandem" or "dual"), `supply` (first intake, flowing), `before` (tandem: what
        the first pumper shows; dual: static pressure of the hydrant), `wanted` (what the second shall show), `flow`
        between the two, the hose between them `hose`, `length`, and `limit`, the most the second intake may see, if known
    shelf: `hoses` by name, see calc.base.shelf
    units: see calc.base.display

    Returns contract `water_answer` with `joint_picture`. Raises CalcError naming the entry.
    Source: pressures in series add, in parallel are shared; 20 psi residual, driver/operator study cards.
    """
    hose_between = readout.hose(entries, shelf)
    way = readout.choice(entries, "way", ("tandem", "dual"))
    typed = readout.amounts(entries, units, (
        ("supply", "pressure", 0, 300), ("before", "pressure", 1, 600), ("wanted", "pressure", 1, 800),
        ("flow", "flow", 1, 5000), ("length", "length", 0, 1000)))
    limit_psi = readout.if_given(entries, units, "limit", "pressure", 20, 800)
    friction_psi = hose.friction_loss_psi(hose_between["coefficient"], typed["flow"], typed["length"])
    from_psi = typed["before"] if way == "tandem" else typed["supply"]
    intake_psi = from_psi - friction_psi
    net_psi = typed["wanted"] - intake_psi
    rows = [
        readout.row(units, "second_intake", "pressure", intake_psi, (
            ("from", "pressure", from_psi), ("friction", "pressure", friction_psi), ("intake", "pressure", intake_psi)),
            ("joint", "friction")),
        readout.row(units, "second_adds", "pressure", net_psi, (
            ("wanted", "pressure", typed["wanted"]), ("intake", "pressure", intake_psi), ("net", "pressure", net_psi)), ("joint",)),
        readout.row(units, "second_shut", "pressure", typed["before"], (), ("joint",)),
    ]
    return {
        "sum": "joint" if way == "tandem" else "joint_dual",
        "figure": {"kind": "pressure", "text": rows[0]["text"]},
        "facts": {"net": rows[1]["text"], "shut": rows[2]["text"]},
        "rows": rows,
        "cautions": _cautions(units, typed, hose_between, intake_psi, net_psi, limit_psi),
        "picture": {"way": way, "supply": display.text(units, "pressure", typed["supply"]), "from": display.text(units, "pressure", from_psi),
                    "intake": rows[0]["text"], "wanted": display.text(units, "pressure", typed["wanted"]),
                    "flow": display.text(units, "flow", typed["flow"]), "length": display.text(units, "length", typed["length"])},
    }


def _cautions(units, typed, hose_between, intake_psi, net_psi, limit_psi):
    shut = ("amount", "pressure", typed["before"])
    cautions = []
    if limit_psi is not None and typed["before"] > limit_psi:
        cautions.append(readout.caution(units, "stop", "second_intake_over", (shut, ("limit", "pressure", limit_psi))))
    cautions += strain.cautions(units, hose_between, typed["before"], "between")
    least = ("limit", "pressure", sources.LEAST_RESIDUAL_PSI)
    if typed["supply"] < sources.LEAST_RESIDUAL_PSI:
        cautions.append(readout.caution(units, "stop", "first_supply_low", (("amount", "pressure", typed["supply"]), least)))
    if intake_psi < sources.LEAST_RESIDUAL_PSI:
        cautions.append(readout.caution(units, "stop", "second_supply_low", (least,)))
    if net_psi <= 0:
        cautions.append(readout.caution(units, "caution", "nothing_to_add", (("amount", "pressure", intake_psi),)))
    if net_psi > MOST_NET_PSI:
        cautions.append(readout.caution(units, "caution", "net_past_rating", (
            ("amount", "pressure", net_psi), ("limit", "pressure", MOST_NET_PSI))))
    return cautions
