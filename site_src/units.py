"""Units of the page: factors that Pint makes, baked for the phone. No factor is typed by hand."""
import functools

import pint

# What calc reckons in, by kind of quantity. A rate is per hundred of the length unit it is read by.
CANONICAL = {
    "pressure": "psi",
    "flow": "gallon/minute",
    "length": "foot",
    "diameter": "inch",
    "velocity": "foot/second",
    "volume": "gallon",
    "force": "pound_force",
    "friction_rate": "psi/foot",
    "elevation_rate": "psi/foot",
    "coefficient": "psi/foot/(gallon/minute)**2",
}

# The unit a system reads each quantity in, and the decimals of an answer.
SYSTEMS = {
    "US": {
        "pressure": ("psi", 0),
        "flow": ("gallon/minute", 0),
        "length": ("foot", 0),
        "diameter": ("inch", 2),
        "velocity": ("foot/second", 0),
        "volume": ("gallon", 0),
        "force": ("pound_force", 0),
        "friction_rate": ("psi/foot", 1),
        "elevation_rate": ("psi/foot", 1),
        "coefficient": ("psi/foot/(gallon/minute)**2", 1),
    },
}


@functools.cache
def system(name):
    """Factor (page's units per calc's) and decimals by kind of quantity, as calc.display takes them.

    name: a key of SYSTEMS

    Raises KeyError for a system that is not there.
    """
    registry = pint.UnitRegistry()
    return {
        kind: {
            "factor": registry.Quantity(1, CANONICAL[kind]).to(unit).magnitude,
            "places": places,
        }
        for kind, (unit, places) in SYSTEMS[name].items()
    }
