"""The service test: its list, the run at the pump, the sheet, the years, the check after a repair; and every limit on one page."""
import flask

from calc.service import file as service_file
from site_src.content import data, former, reckoners, service_schema, standards, units
from site_src.routes import json_page

routes = flask.Blueprint("service", __name__)
# where a step begins when nothing was typed yet: round figures near the usual, in US units; none of them is ever taken as read
STARTS = {"air_f": "60@US", "water_f": "60@US", "barometer_inhg": "29.9@US", "altitude_ft": "0@US", "lift_ft": "8@US",
          "depth_ft": "4@US", "strainer_ft": "2@US", "suction_length_ft": "20@US"}
ACCURACY_KINDS = {"discharge_psi": "pressure", "intake_psi": "pressure", "pitot_psi": "pitot", "meter_percent": "percent", "lift_ft": "length"}
PARTS = ("run", "sheet", "years", "quick")
HAZARDS = ("moved", "steam", "dead_throttle")  # each in one line while a pump is tested
QUICK_CARDS = {"shift": "bay", "circulate": "check", "prime": "check", "road": "road"}  # the shift card that holds a step's proofs


@routes.context_processor
def words():
    return {"t": data.words("service")}


@routes.get("/test/")
def index():
    parts = {name: {} for name in standards.NAMES}
    for row in standards.sections():
        parts[row["standard"]].setdefault(row["section"], []).append(row)
    return flask.render_template("service/index.html", standards=parts)


@routes.get("/test/<part>/")
def part(part):
    return flask.render_template(f"service/{part}.html")


@routes.get("/test/test.schema.json")
def schema():
    """The shape of a test's file, for whoever else reads one."""
    return json_page(service_schema.schema())


@routes.get("/test/page.json")
def page_data():
    site = data.shared_words()
    accuracy = standards.standard("us", "annual")["accuracy"]
    suction = [field for field in data.load("water")["field"] if field["name"] == "suction"][0]
    return json_page({
        "orders": data.orders(*HAZARDS),
        "standards": standards.every(),
        "former": former.every(),
        "bounds": {"most_records": service_file.MOST_RECORDS, "largest_bytes": service_file.LARGEST_BYTES},
        "kinds": [[name, standards.kinds(name)] for name in standards.NAMES],
        "systems": units.for_page(is_fine=True),
        "tips": [{"id": id, "chip": chip, "family": family} for family in ("customary", "metric")
                 for id, chip in data.load("service/common")["tips"][family]],
        "suction": {family: [[id, reckoners.size(label)] for id, label in suction[f"{family}_options"]] for family in ("customary", "metric")},
        "starts": STARTS,
        "accuracy": {name: {"kind": kind, "text": f"{accuracy[name]}@US"} for name, kind in ACCURACY_KINDS.items()},
        "quick": {**standards.standard("us", "annual")["quick"], "cards": QUICK_CARDS},
        "errs": {name: accuracy[name] for name in ("discharge_psi", "speed_rpm")},
        "interval_days": data.load("service/common")["due"]["interval_days"],
        "words": {
            **{key: site[key] for key in ("refusal", "unit", "engine", "pressure", "card", "danger")}, "order": data.words("orders")["order"],
            **{section: words for section, words in data.words("service").items() if section != "report"},
        },
    })
