"""What the Pressure page offers to choose from in each family of sizes."""
from calc import phone
from calc.hydraulics import friction_rule, network
from calc.layout import lines, typed
from calc.rig import fields
from site_src.content import data, layouts, units

COMMON_RUNS = 4  # hoses side by side that stand as chips; more are in a list
WORDS = (
    "pressure", "device", "now", "at_pump", "bounds", "fall", "ready", "refusal", "caution", "caution_short", "unit", "basis", "engine", "link", "saved", "paper",
    "tab", "entry",
)
FORMULAS = ("discharge", "elevation", "fog_reaction", "friction", "parallel", "smooth_flow", "smooth_reaction", "velocity")  # of the page's figures


def hose(row):
    """One hose in calc's units, with the limits calc.hydraulics.caution judges it by."""
    if row["family"] == "customary":
        coefficient, bore_in, usual_gpm, table_gpm = row["coefficient"], row["size_in"], row["usual_gpm"], row["table_gpm"]
    else:
        coefficient = units.canonical("coefficient", row["coefficient_kpa"], "kPa/meter/(liter/minute)**2")
        bore_in = units.canonical("diameter", row["size_mm"], "millimeter")
        usual_gpm, table_gpm = (
            [units.canonical("flow", lpm, "liter/minute") for lpm in row[name]] for name in ("usual_lpm", "table_lpm")
        )
    return {
        "label": row["label"],
        "coefficient": coefficient,
        "bore_in": bore_in,
        "size_in": row.get("size_in"),
        "test_psi": row.get("test_psi"),
        "least_usual_gpm": usual_gpm[0],
        "most_usual_gpm": usual_gpm[1],
        **({"modern": row["modern"]} if "modern" in row else {}),
        "card_gpm": table_gpm[:: max(len(table_gpm) // 4, 1)][:5],
    }


def piped():
    """In place of a hose, for a device that is plumbed to the pump: laid at no length, it loses nothing."""
    return {
        "label": data.words("rig")["rig"]["piped"], "coefficient": data.load("hoses")["piped"]["coefficient"], "bore_in": None,
        "size_in": None, "test_psi": None, "least_usual_gpm": None, "most_usual_gpm": None, "card_gpm": [],
    }


def shelf(pool=None):
    """What is at hand for a layout, see calc.base.shelf: hoses with their limits, crews, losses of devices.

    pool: what the department's rigs measured, by hose, see content.fleet_hose
    """
    departments = {name: {"department": figure} for name, figure in (pool or {}).items()}
    return {
        "hoses": {**{row["id"]: {**hose(row), **departments.get(row["id"], {})} for row in data.named("hoses")}, fields.PIPED: piped()},
        "crews": {str(crew["people"]): {"limit_lbf": crew["limit_lbf"]} for crew in data.load("nozzles")["crew"]},
        "appliances": {row["id"]: row["steps"] for row in data.named("losses") if row["id"] != "forestry"},
    }


def hose_choices(use=None):
    """Every hose, or every one of a use, as a choice: id, label, family, whether common, its usual tip, and what to say of its source."""
    kept = ("id", "label", "chip", "common", "family", "source", "basis", "modern_source")
    tips = {tip["id"]: _tip_id(tip) for tip in data.load("nozzles")["tip"]}
    return [{"common": False, "tip": tips.get(row.get("tip")), **{key: row[key] for key in kept if key in row}} for row in data.named("hoses") if use in (None, row["use"])]


def _tip_id(tip):
    """A tip's diameter as if typed."""
    return f"{tip['tip_in']}@US" if "tip_in" in tip else f"{tip['tip_mm']}@SI"


def tip_choices():
    """Every smooth-bore tip as a choice; its id is the diameter as if typed, with the pressure it is usually run at."""
    return [
        {
            "id": _tip_id(tip),
            "label": tip["label"],
            "chip": tip.get("chip", tip["label"]),
            "common": tip.get("common", False),
            "family": tip["family"],
            "is_master": tip.get("usual_psi", 0) >= 80 or tip.get("usual_kpa", 0) >= 550,
            "usual": f"{tip['usual_psi']}@US" if "usual_psi" in tip else f"{tip['usual_kpa']}@SI",
        }
        for tip in data.load("nozzles")["tip"]
    ]


def usual_pressures():
    """What a nozzle of each kind is usually run at, as if typed, by family of sizes."""
    usual = data.load("nozzles")["usual"]
    return {family: {kind: f"{amount}@{system}" for kind, amount in usual[family].items()}
            for family, system in (("customary", "US"), ("metric", "SI"))}


def rule_names():
    """Departments' friction rules, by code, as a page names them."""
    told = data.words("rig")["option"]
    return {code: told[code] for code in friction_rule.CODES}


def runs():
    """How many hoses may lie side by side, as choices; a few are common."""
    return [{"id": count, "label": count, "common": int(count) <= COMMON_RUNS} for count in typed.RUNS]


def page(pool=None):
    """Everything the Pressure page's script needs, as one JSON object. pool: as for shelf."""
    words, formulas = data.shared_words(), data.by_id(data.named("formulas"))
    return {
        "ready": {family: [{"id": name, "layout": layout} for name, layout in layouts.ready(family).items()] for family in layouts.SYSTEMS},
        "supplies": {family: layouts.supply(family) for family in layouts.SYSTEMS},
        "floors": {family: data.load("rig")["new"][family]["floor"] for family in layouts.SYSTEMS},
        "shelf": shelf(pool),
        "hoses": [*hose_choices(), {**data.load("hoses")["piped"], "id": fields.PIPED, "label": piped()["label"], "family": "none"}],
        "tips": tip_choices(),
        "usual": usual_pressures(),
        "runs": runs(),
        "bounds": {"lines": lines.MOST_LINES, "depth": typed.DEEPEST, "loops": network.MOST_LOOPS, "name": fields.MOST_TEXT, "link": phone.MOST_CHARACTERS},
        "formulas": {name: formulas[name] for name in FORMULAS},
        "sources": data.by_id(data.named("losses")),
        "systems": units.for_page(),
        "words": {**{key: words[key] for key in WORDS}, "rule": rule_names()},
    }
