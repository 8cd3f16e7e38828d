"""Loss of water while flowing, from three gauges in one look: is it supply, pump or discharge?"""
from calc.base.errors import CalcError

GAUGES = ("intake", "master", "line")


def side(rows, seen):
    """Which side of the pump to go to first.

    rows: each picture of the gauges, contract `gauge_row`
    seen: what each gauge does, contract `gauges_seen`; one that is absent was not read

    Returns the answer of contract `water_loss.side`. Raises CalcError naming seen.
    Source: trade articles on pump troubleshooting, supply, pump or discharge.
    """
    for gauge in seen:
        if gauge not in GAUGES or not any(seen[gauge] in row[gauge] for row in rows):
            raise CalcError("seen", "unknown", gauge=str(gauge)[:60])
    sides = []
    for row in rows:
        if row["side"] not in sides and all(seen[gauge] in row[gauge] for gauge in seen):
            sides.append(row["side"])
    return {"sides": sides, "unread": [gauge for gauge in GAUGES if gauge not in seen]}
