"""The class of a pump by its rated capacity."""
import pytest

from calc.base.errors import CalcError
from site_src.content import units


@pytest.mark.parametrize(("rated", "size"), [
    ("250@US", "to_1250"), ("1250@US", "to_1250"), ("1400@US", "to_1250"), ("1500@US", "from_1500"),
    ("5000@SI", "to_1250"), ("6000@SI", "from_1500"),  # by hand: 1,321 and 1,585 US gpm
    ("1250@imperial", "from_1500"),  # by hand: 1,501 US gpm
])
def test_pump_size(run, rated, size):
    """The class of a pump follows its rated capacity, whatever it was typed in."""
    assert run("pump.pump_size", "size", rated=rated, units=units.shown_in("US")) == size


def test_a_capacity_that_is_none(run):
    """What is no amount of flow is refused as the rated capacity."""
    with pytest.raises(CalcError) as refused:
        run("pump.pump_size", "size", rated="large", units=units.shown_in("US"))
    assert (refused.value.field, refused.value.code) == ("rated", "not_a_number")
