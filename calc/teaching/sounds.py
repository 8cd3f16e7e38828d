"""What the made-up rig is heard and felt to do: the sounds of a train as it is now, never what only a drawing knows."""
from calc.teaching import powertrain

HEARD_AIR = 0.1  # of full air, below which an exhaust falls silent


def sounds(train, raised, pressure_psi):
    """The sounds there are now; one that was not there a moment ago has just begun.

    train: see calc.teaching.powertrain
    raised: whether the engine is above idle
    pressure_psi: what the pump makes, psi

    Returns a list of codes. Raises nothing.
    """
    heard = []
    if any(train["valve"] != side and train[side + "_air"] > HEARD_AIR for side in ("road", "pump")):
        heard.append("exhaust")
    if train["collar"] != "between":
        heard.append("clunk_" + train["collar"])
    if train["grinding"]:
        heard.append("grinding")
    if train["gear"] == "drive":
        heard.append({"road": "leans", "between": "free", "pump": "loads"}[train["collar"]])
    if train["pump_rpm"] > powertrain.STILL_RPM:
        heard.append("pump")
    if raised:
        heard.append("raised")
    if train["circulating"] and pressure_psi > 0:
        heard.append("water")
    if train["moved"]:
        heard.append("moves")
    return heard
