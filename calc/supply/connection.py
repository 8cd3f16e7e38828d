"""A fire department connection: what it has to have for the outlet upstairs, and what the pipe behind it takes."""
from calc.base.errors import CalcError
from calc.hydraulics import water

FLOOR_PSI = 5  # for each floor above the first
SPRINKLER_PSI = 150  # at a sprinkler connection without a sign
SYSTEM_MOST_PSI = 350  # anywhere in a standpipe, by the editions until 2013; a later building's sign may allow more
MOST_NET_PSI = 250  # the highest net pressure a pump is rated at
INLET_GPM = 250  # of each 2 1/2 in inlet, as systems are planned
COEFFICIENTS = {4: 0.374, 5: 0.126, 6: 0.052}  # of a riser by its bore in inches


def floors_psi(floor):
    """Pressure that height takes by the rule of floors, psi.

    floor: of the outlet, 1 is the ground floor

    Raises CalcError naming floor where it is below the first. Source: a fire trade magazine, "Overcoming Standpipe Problems".
    """
    if floor < 1:
        raise CalcError("floor", "out_of_range", least="1")
    return FLOOR_PSI * (floor - 1)


def riser_ft(elevation_psi):
    """Length of a riser that is as tall as what its height takes, ft; no length downward.

    elevation_psi: what height takes, psi

    Raises CalcError naming pressure_psi where it is no number. Source: water.head_ft.
    """
    return max(water.head_ft(elevation_psi), 0)


def needed_psi(outlet_psi, system_psi, riser_psi, elevation_psi):
    """Pressure at the connection that leaves the outlet what it needs, psi.

    outlet_psi: needed at the outlet while it flows
    system_psi: taken by inlet, valves and bends
    riser_psi: friction loss of the riser
    elevation_psi: taken by height

    Raises nothing. Source: driver/operator handbooks, from memory; the terms as in a fire trade magazine, "Overcoming Standpipe Problems".
    """
    return outlet_psi + system_psi + riser_psi + elevation_psi


def series_psi(pump_psi, intake_psi, between_psi, limit_psi=None):
    """What the first of two engines in series shows, psi: so that they share alike, or less where the second one's intake may not see that.

    pump_psi: that the second one has to show
    intake_psi: of the first one while water flows
    between_psi: friction loss of the hose from the first to the second
    limit_psi: the most the second one's intake may see; with its lines shut that is all that the first shows

    Raises nothing. Source: pressures in series add, driver/operator teaching on tandem pumping, from memory.
    """
    alike_psi = intake_psi + (pump_psi + between_psi - intake_psi) / 2
    return alike_psi if limit_psi is None else min(alike_psi, max(limit_psi, intake_psi))
