"""Lines of a made-up rig that the drill and the call are worked by hand for: Crosslay asks 15.5 x 1.5^2 x 2 = 69.75 psi and 100 of the pump, the gun 100 and 25."""
from site_src.content import catalogue
from site_src.routes import drill as drill_routes

CROSSLAY = {"name": "Crosslay", "hose": "attack-1.75", "length": "200@US", "end": {"kind": "fog", "flow": "150@US", "pressure": "100@US"}}
GUN = {"name": "Gun", "device": "master", "end": {"kind": "fog", "flow": "500@US", "pressure": "100@US"}}


def ground(*beds, rule="", tips=(), **rig):
    """What questions stand on, see calc.teaching.drill_line: the handbook's hose, with these beds and a rig that says this of itself."""
    return {"shelf": {**catalogue.shelf(), "rule": rule}, "rig": rig, "beds": list(beds), "tips": list(tips), **drill_routes.tables()}


def habits(question):
    """Its wrong ways, with what each gives."""
    return {row["code"]: round(row["value"], 1) for row in question["habits"]}
