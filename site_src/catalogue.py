"""What the Pressure page offers to choose from, and the lay it opens on."""
from site_src import data, units

OPENING_LAY = {
    "crew": "2",
    "lines": [
        {
            "id": "A",
            "hose": "attack-1.75",
            "length": "200",
            "rise": "0",
            "end": {"kind": "fog", "flow": "150", "tip": "0.9375", "pressure": "100"},
        }
    ],
}


def shelf():
    """What is at hand to lay, as calc.reading takes it: hoses with their limits, crews, the wye's loss."""
    return {
        "hoses": {
            hose["id"]: {
                "coefficient": hose["coefficient"],
                "bore_in": hose["size_in"],
                "test_psi": hose.get("test_psi"),
                "least_usual_gpm": hose["usual_gpm"][0],
                "most_usual_gpm": hose["usual_gpm"][1],
            }
            for hose in data.load("hoses")["hose"]
        },
        "crews": {str(crew["people"]): {"limit_lbf": crew["limit_lbf"]} for crew in data.load("nozzles")["crew"]},
        "wye_steps": data.by_id(data.load("losses")["appliance"])["wye"]["steps"],
    }


def _choices(rows):
    """Rows as one-tap choices: id, label, whether common, and what to say of their source."""
    kept = ("id", "label", "chip", "common", "use", "source", "basis", "usual_psi", "tip_in")
    return [{"common": False, **{key: row[key] for key in kept if key in row}} for row in rows]


def page():
    """Everything the Pressure page's script needs, as one JSON object."""
    nozzles = data.load("nozzles")
    losses = data.load("losses")
    words = data.load("words/en/site")
    return {
        "opening": OPENING_LAY,
        "shelf": shelf(),
        "hoses": _choices(data.load("hoses")["hose"]),
        "tips": _choices(nozzles["tip"]),
        "formulas": data.by_id(data.load("formulas")["formula"]),
        "sources": {"crew": nozzles["crews"], "wye": data.by_id(losses["appliance"])["wye"],
                    "usual": data.load("hoses")["usual_flow"]},
        "units": units.system("US"),
        "words": {key: words[key] for key in ("pressure", "refusal", "caution", "unit", "basis", "engine")},
    }
