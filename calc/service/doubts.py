"""Readings that contradict each other or their point: asked about as they are typed, never refused."""
from calc.pump import draft

MOST_PITOT_RATIO = 1.5  # of equal tips: lines of unlike length pull them apart by a fifth or so; common practice
MOST_OVER_INHG = 3  # vacuum over what lift and suction loss take: a gauge, a lift and a strainer each an inch off; common practice
SLIPS = (0.1, 10, 100)  # what a decimal point left out adds to a figure, and one put in takes of it
NEAR_POINT = 0.25  # of the point's pressure, either way: a reading so moved was meant; common practice
SAME_FLOW = 0.98  # of the flow before: two pitot readings, common practice


def doubts_of(test, values, live, before, plan):
    """What of the readings being entered cannot well be all true.

    test: a run of the plan
    values: the readings, in calc's units, as calc.service.judge takes them
    live, before: those readings judged, and the set that was kept last in the same attempt, or None
    plan: of calc.service.plan

    Returns codes with the field to look at, `[{"code", "field"}]`: point_slipped, pitots_unlike, vacuum_over_lift, speed_down_pressure_up. Raises nothing.
    Source: equal tips at one pressure pass the same flow; physics of lift; affinity laws (less speed at the same flow is less pressure).
    """
    rows = []
    if is_slipped(values.get("discharge_psi"), test.get("gauge_psi") or test.get("net_psi")):
        rows.append({"code": "point_slipped", "field": "discharge_psi"})
    pitots = [pitot_psi for pitot_psi in values.get("pitot_psi") or [] if pitot_psi is not None]
    if pitots and max(pitots) > MOST_PITOT_RATIO * min(pitots):
        rows.append({"code": "pitots_unlike", "field": "pitot_psi"})
    lift_ft, vacuum_inhg = plan["conditions"].get("lift_ft"), values.get("intake_inhg")
    if vacuum_inhg is not None and lift_ft is not None and test["suction_loss_ft"] is not None:
        if vacuum_inhg > draft.vacuum_inhg(lift_ft + test["suction_loss_ft"]) + MOST_OVER_INHG:
            rows.append({"code": "vacuum_over_lift", "field": "intake_inhg"})
    if before is not None and _is_contrary(live, before, plan["accuracy"]):
        rows.append({"code": "speed_down_pressure_up", "field": "engine_rpm"})
    return rows


def is_slipped(discharge_psi, wanted_psi):
    """Whether a gauge is nowhere near its point, and would be with its decimal point elsewhere: 14.8 for 148, 1,000 for 100.

    discharge_psi, wanted_psi: as read and as the point has it, psi; None or 0 where that is not known

    Raises nothing. Source: a figure ten times itself is a slipped decimal point, and how near its point it then comes: common practice.
    """
    if not discharge_psi or not wanted_psi:
        return False
    return any([abs(discharge_psi * slip - wanted_psi) <= NEAR_POINT * wanted_psi for slip in SLIPS])


def _is_contrary(live, before, accuracy):
    """Whether the engine turns slower and the pump gives more pressure, at no less flow than before."""
    flow, net = [figure["value"] for figure in live["figures"]]
    flow_before, net_before = [figure["value"] for figure in before["figures"]]
    if None in (flow, net, flow_before, net_before, live["engine_rpm"], before["engine_rpm"]):
        return False
    is_down = live["engine_rpm"] < before["engine_rpm"] - accuracy["speed_rpm"]
    return is_down and net > net_before + accuracy["discharge_psi"] and flow >= SAME_FLOW * flow_before
