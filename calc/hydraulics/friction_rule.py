"""Departments' own rules for friction, beside C Q^2 L. Each has a code, and hose sizes it is made for.

    square                 C Q^2 L, any hose with a known coefficient
    rounded_10 _25 _50 _100  the same at the flow rounded to the nearest so many gpm
    two_q_squared_plus_q   2Q^2 + Q per 100 ft of 2 1/2 in, Q in hundreds of gpm; below 100 gpm 2Q^2 + Q/2
    gpm_times_n            gpm x N / 10 - 10 per 100 ft, N by size
They disagree: 400 gpm in 100 ft of 2 1/2 in loses 32, 36 and 30 psi by the first, third and fourth. So an answer by a
rule is always named, and stands beside the one by C Q^2 L.
"""
from calc.base.errors import CalcError, check_not_negative, check_positive
from calc.hydraulics import hose

STEPS_GPM = {"rounded_10": 10, "rounded_25": 25, "rounded_50": 50, "rounded_100": 100}
N_BY_SIZE = ((1.5, 4), (1.75, 3), (2, 2), (2.5, 1))
CODES = ("square", "rounded_10", "rounded_25", "rounded_50", "rounded_100", "two_q_squared_plus_q", "gpm_times_n")


def sizes_in(rule):
    """The nominal hose sizes a rule is made for, in inches; None where it takes any.

    rule: one of CODES

    Raises CalcError naming rule. Source: as loss_psi.
    """
    _check_rule(rule)
    if rule == "two_q_squared_plus_q":
        return [2.5]
    return [size_in for size_in, _ in N_BY_SIZE] if rule == "gpm_times_n" else None


def loss_psi(rule, size_in, coefficient, flow_gpm, length_ft):
    """Friction in one hose by a department's rule, in psi.

    rule: one of CODES
    size_in: nominal size of the hose, inches; must be one of sizes_in(rule), and may be None where that is None
    coefficient: of that hose, psi per 100 ft at 100 gpm, above 0; for the rules of C Q^2 L
    flow_gpm: flow through this hose, US gallons per minute, 0 or more; gpm_times_n refuses flows so small that it
        would give less than nothing
    length_ft: feet, 0 or more

    A hose in which nothing flows loses nothing by any rule. Raises CalcError naming the input.
    Source: study cards of departments' promotional examinations (2Q^2+Q; gpm-times-N); rounding the flow to the
    nearest 10, 25 or 100: the same, of tips; to the nearest 50: common practice.
    """
    square_psi = hose.friction_loss_psi(coefficient, flow_gpm, length_ft)
    made_for = sizes_in(rule)
    if made_for is not None:
        check_positive("size_in", size_in)
        if size_in not in made_for:
            raise CalcError("size_in", "not_for_this_rule", rule=rule, sizes=made_for)
    if rule == "square":
        return square_psi
    if rule in STEPS_GPM:
        return hose.friction_loss_psi(coefficient, rounded_flow_gpm(flow_gpm, STEPS_GPM[rule]), length_ft)
    if flow_gpm == 0:
        return 0
    if rule == "gpm_times_n":
        return _times_n_psi(dict(N_BY_SIZE)[size_in], flow_gpm) * length_ft / 100
    hundreds_gpm = flow_gpm / 100
    linear = hundreds_gpm if flow_gpm >= 100 else hundreds_gpm / 2
    return (2 * hundreds_gpm * hundreds_gpm + linear) * length_ft / 100


def rounded_flow_gpm(flow_gpm, step_gpm):
    """A flow to the nearest step, halves upward, in US gallons per minute.

    flow_gpm: US gallons per minute, 0 or more
    step_gpm: 10, 25, 50 or 100

    Raises CalcError naming the input. Source: as loss_psi.
    """
    check_not_negative("flow_gpm", flow_gpm)
    if step_gpm not in STEPS_GPM.values():
        raise CalcError("step_gpm", "unknown")
    return step_gpm * int(flow_gpm / step_gpm + 0.5)


def _times_n_psi(n, flow_gpm):
    per_100_ft_psi = flow_gpm * n / 10 - 10
    if per_100_ft_psi < 0:
        raise CalcError("flow_gpm", "too_small_for_this_rule", rule="gpm_times_n", least=100 / n)
    return per_100_ft_psi


def _check_rule(rule):
    if not isinstance(rule, str) or rule not in CODES:
        raise CalcError("rule", "unknown")
