"""The service test by its two names: the plan, and the verdict on what was read."""
from calc import service_plan, service_verdict


def plan(rig, conditions):
    """The whole service test of a rig at a site, test by test, with targets and limits.

    rig: `{"rated_gpm", "standard", ...}`, see calc.service_plan
    conditions: `{"source", ...}`, see calc.service_plan

    Returns plain data. Raises CalcError naming the input. Source: service_plan.plan.
    """
    return service_plan.plan(rig, conditions)


def verdict(plan, readings):
    """What the readings of a test prove: pass, fail, or not proven, with the figure that decided.

    plan: of plan
    readings: by test, see calc.service_verdict

    Returns plain data. Raises CalcError naming the field, with test, attempt and set as facts.
    Source: service_verdict.verdict.
    """
    return service_verdict.verdict(plan, readings)
