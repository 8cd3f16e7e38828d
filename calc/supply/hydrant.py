"""The hydrant: its flow by pitot gauge, its class, and what of it reaches the pump through the supply hose."""
from calc.base.errors import CalcError, check_not_negative, check_number, check_positive, check_within
from calc.hydraulics import hose, nozzle, water
from calc.supply import sources

# outlets wider than this are pumper outlets, whose stream is not solid; factor by pitot pressure
LARGEST_PLAIN_IN = 3
LARGE_OUTLET = ((2, 0.97), (3, 0.92), (4, 0.89), (5, 0.86), (6, 0.84), (7, 0.83))
CLASSES = ((1500, "AA"), (1000, "A"), (500, "B"), (0, "C"))
MOST_OUTLETS = 4
LOW_STATIC_PSI = 40  # under it a hydrant is classed at half its static pressure
LAST_BIT = 1e-9  # of a line: what the power leaves on a whole number
HALVINGS = 60  # of the whole range of flow: far below any gauge


def large_outlet_factor(pitot_psi):
    """Share of the reckoned flow that a pumper outlet really gives; a pure number.

    pitot_psi: pitot reading, psi, 2 or more

    Straight between the rows of the table, level from 7 psi. Raises CalcError naming pitot_psi: below 2 psi the
    table has no row, and a smaller outlet or a wider opening gives a reading that can be used.
    Source: NFPA 291, large-outlet factors; 0.83 from 7 psi published in an engineering forum, the others from memory.
    """
    check_number("pitot_psi", pitot_psi)
    if not pitot_psi >= LARGE_OUTLET[0][0]:
        raise CalcError("pitot_psi", "below_table", least=LARGE_OUTLET[0][0])
    for (from_psi, from_factor), (to_psi, to_factor) in zip(LARGE_OUTLET, LARGE_OUTLET[1:]):
        if pitot_psi <= to_psi:
            return from_factor + (to_factor - from_factor) * (pitot_psi - from_psi) / (to_psi - from_psi)
    return LARGE_OUTLET[-1][1]


def outlets_flow_gpm(bore_in, pitot_psi, discharge_coefficient, outlets):
    """Flow of a hydrant from its open outlets, all alike, in US gallons per minute.

    bore_in: inside diameter of an outlet, inches, above 0; above 3 the large-outlet factor is applied
    pitot_psi: pitot reading at an outlet, psi, 0 or more, or as large_outlet_factor
    discharge_coefficient: of the outlet, see nozzle.pitot_flow_gpm
    outlets: how many flow, 1 to 4

    Raises CalcError naming the input. Source: NFPA 291 (29.84 c d^2 sqrt(p)), constant from memory.
    """
    check_within("outlets", outlets, 1, MOST_OUTLETS)
    flow_gpm = nozzle.pitot_flow_gpm(bore_in, pitot_psi, discharge_coefficient) * outlets
    return flow_gpm * large_outlet_factor(pitot_psi) if bore_in > LARGEST_PLAIN_IN else flow_gpm


def class_residual_psi(static_psi):
    """Residual pressure that a hydrant is classed at, psi: 20, or half of a static pressure under 40.

    static_psi: pressure with nothing flowing, psi, above 0

    Raises CalcError naming static_psi. Source: NFPA 291, from memory; 20 psi as driver/operator study cards report it.
    """
    check_positive("static_psi", static_psi)
    return sources.LEAST_RESIDUAL_PSI if static_psi >= LOW_STATIC_PSI else static_psi / 2


def hydrant_class(flow_gpm):
    """Class of a hydrant by its flow at the residual pressure it is classed at: "AA", "A", "B" or "C".

    flow_gpm: flow that it can give at class_residual_psi, US gallons per minute, 0 or more

    Raises CalcError naming flow_gpm.
    Source: NFPA 291 as driver/operator study cards report it (1,500, 1,000 and 500 gpm).
    """
    check_not_negative("flow_gpm", flow_gpm)
    return next(name for least_gpm, name in CLASSES if flow_gpm >= least_gpm)


def more_lines(test, floor_psi):
    """More lines like the one flowing that may be opened: the least of the trade's rules, never past the flow there is.

    test: as for residual_psi
    floor_psi: pressure to leave in the main, psi, 0 to static

    Returns `{"safe", "by_flow"}` beside all of sources.additional_lines: by_flow is how many more such lines the flow at
    floor_psi would feed, safe the least of it and the rules. Raises CalcError naming the input.
    Source: sources.additional_lines; sources.hydrant_flow_gpm over the flow of the test.
    """
    check_within("floor_psi", floor_psi, 0, test["static_psi"])
    lines = sources.additional_lines(test["static_psi"], test["residual_psi"])
    flow_gpm = sources.hydrant_flow_gpm(test["static_psi"], test["residual_psi"], test["flow_gpm"], floor_psi)
    lines["by_flow"] = min(max(int(flow_gpm / test["flow_gpm"] + LAST_BIT) - 1, 0), sources.MOST_LINES)
    lines["safe"] = min(lines["least"], lines["by_flow"])
    return lines


def residual_psi(test, flow_gpm):
    """Pressure left at the hydrant at a flow, in psi; below zero where it cannot give so much.

    test: `{"static_psi", "residual_psi", "flow_gpm"}` of one flow test, see sources.hydrant_flow_gpm
    flow_gpm: flow asked about, US gallons per minute, 0 or more

    Raises CalcError naming the input. Source: sources.hydrant_flow_gpm solved for the pressure.
    """
    check_not_negative("flow_gpm", flow_gpm)
    sources.check_flow_test(test["static_psi"], test["residual_psi"], test["flow_gpm"])
    drop_psi = test["static_psi"] - test["residual_psi"]
    return test["static_psi"] - drop_psi * (flow_gpm / test["flow_gpm"]) ** (1 / sources.HYDRANT_POWER)


def intake_psi(test, line, flow_gpm):
    """Pressure that reaches the pump through the supply hose, in psi; below zero where it cannot.

    test: as for residual_psi
    line: `{"coefficient", "length_ft", "rise_ft"}` of the supply hose, rise_ft that of the pump above the hydrant
    flow_gpm: flow through the hose, US gallons per minute, 0 or more

    Raises CalcError naming the input. Source: residual_psi less friction and elevation.
    """
    lost_psi = hose.friction_loss_psi(line["coefficient"], flow_gpm, line["length_ft"])
    return residual_psi(test, flow_gpm) - lost_psi - water.elevation_psi(line["rise_ft"])


def flow_at_pump_gpm(test, line, least_psi):
    """Greatest flow that leaves this pressure at the pump intake, in US gallons per minute; 0 where none does.

    test, line: as for intake_psi
    least_psi: pressure wanted at the intake, psi, 0 or more

    Raises CalcError naming the input. Source: intake_psi solved by halving, which always ends.
    """
    check_not_negative("least_psi", least_psi)
    least_gpm, most_gpm = 0, test["flow_gpm"]
    while intake_psi(test, line, most_gpm) >= least_psi and most_gpm < 1e6:
        most_gpm *= 2
    for _ in range(HALVINGS):
        middle_gpm = (least_gpm + most_gpm) / 2
        if intake_psi(test, line, middle_gpm) >= least_psi:
            least_gpm = middle_gpm
        else:
            most_gpm = middle_gpm
    return least_gpm


def reach_ft(test, line, flow_gpm, least_psi):
    """Supply hose through which the hydrant's own pressure carries a flow, in feet; 0 where none does.

    test, line: as for intake_psi; the line's length is what is asked
    flow_gpm: flow wanted, US gallons per minute, above 0
    least_psi: pressure wanted at the intake, psi, 0 or more

    Raises CalcError naming the input. Source: intake_psi solved for the length.
    """
    check_positive("flow_gpm", flow_gpm)
    check_not_negative("least_psi", least_psi)
    left_psi = residual_psi(test, flow_gpm) - least_psi - water.elevation_psi(line["rise_ft"])
    return max(left_psi, 0) * 100 / hose.friction_loss_psi(line["coefficient"], flow_gpm, 100)


def reverse_gpm(test, line, floor_psi, most_psi):
    """Most flow with the pumper at the hydrant, through the same hose, in US gallons per minute; 0 where none does.

    test, line: as for intake_psi; rise_ft is that of the hose's far end above the hydrant
    floor_psi: pressure to leave in the main and at the far end, psi, 0 to static
    most_psi: what the hose may see at the pumper, psi, above 0

    The loss of the short suction is left out. Raises CalcError naming the input.
    Source: the less of sources.hydrant_flow_gpm and what the hose carries from most_psi to floor_psi; common practice.
    """
    check_positive("most_psi", most_psi)
    check_within("floor_psi", floor_psi, 0, test["static_psi"])
    from_main_gpm = sources.hydrant_flow_gpm(test["static_psi"], test["residual_psi"], test["flow_gpm"], floor_psi)
    left_psi = most_psi - floor_psi - water.elevation_psi(line["rise_ft"])
    if not left_psi > 0:
        return 0
    if not line["length_ft"] > 0:
        return from_main_gpm
    return min(from_main_gpm, hose.flow_for_loss_gpm(line["coefficient"], left_psi, line["length_ft"]))
