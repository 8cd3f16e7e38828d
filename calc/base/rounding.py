"""Numbers as people read them: whole-number arithmetic, so both Pythons print the same text."""
from calc.base.errors import CalcError, check_number, check_positive

MOST_PLACES = 6
MOST_WRITTEN = 1e11  # a lake in liters, or how far a trickle reaches in large hose: more than any entry may be
_PLACES = tuple(range(MOST_PLACES + 1))
_SCALES = tuple([10 ** places for places in _PLACES])
TIE = 4e-16  # two last bits of a float: 1.005 is stored, and times 100 comes out, a little below 100.5


def rounded(value, places):
    """The number as text with that many decimals, halves away from zero.

    value: any finite number up to MOST_WRITTEN either way
    places: decimals to show, whole, 0 to 6

    Raises CalcError naming value or places.
    Source: common practice; formatted rounding of the two Pythons differs on halves, this does not.
    """
    check_number("value", value, MOST_WRITTEN)
    if places not in _PLACES or places is True or places is False:
        raise CalcError("places", "out_of_range", least=0, most=MOST_PLACES)
    scale = _SCALES[int(places)]
    scaled = abs(value) * scale
    units = int(scaled + 0.5 + scaled * TIE)
    sign = "-" if value < 0 and units else ""
    whole = str(units // scale)
    if scale == 1:
        return sign + whole
    return sign + whole + "." + str(scale + units % scale)[1:]


def plain(value, places):
    """The number as text with at most that many decimals, without idle zeros at its end.

    value: as for rounded
    places: decimals to keep, whole, 0 to 6

    Raises CalcError naming value or places.
    """
    text = rounded(value, places)
    return text.rstrip("0").rstrip(".") if "." in text else text


def to_step(value, step):
    """The multiple of step nearest to the value, halves away from zero.

    value: any finite number up to 10 million either way
    step: the spacing, above zero, in the unit of the value

    Raises CalcError naming value or step. Source: common practice (a panel gauge is set to its marks).
    """
    check_number("value", value)
    check_positive("step", step)
    steps = int(abs(value) / step + 0.5)
    return -steps * step if value < 0 else steps * step
