"""How large a pump is, as the rules for priming tell pumps apart."""
from calc.base import entry

LARGE_GPM = 1500


def size(rated, units):
    """The class of a pump whose rated capacity was typed.

    rated: as typed, such as "1500@US"
    units: see calc.base.display

    Returns "from_1500" or "to_1250"; a pump between the two counts among the smaller, whose time is shorter.
    Raises CalcError naming rated where it is no amount of flow.
    Source: an apparatus-service firm's description of the annual test (30 s up to 1,250 gpm, 45 s from 1,500).
    """
    return "from_1500" if entry.quantity(units, "flow", "rated", rated) >= LARGE_GPM else "to_1250"
