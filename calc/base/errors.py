"""The one refusal of calc, and the checks of plain numbers that raise it."""

LARGEST = 1e7  # far past any hose, pump or pressure, and far short of overflow in any formula here
SMALLEST = 1e-9  # a positive input below this is a slip, and could underflow in a division


class CalcError(ValueError):
    """An input that cannot be used: `field` names it, `code` says why, `facts` hold the particulars.

    Codes are for programs; the sentence a person reads is chosen from them by the page.
    """

    def __init__(self, field, code, **facts):
        super().__init__(f"{field}: {code}")
        self.field = field
        self.code = code
        self.facts = facts

    def as_data(self):
        """The refusal as it crosses to a page: `{"field", "code", ...facts}`."""
        refusal = dict(self.facts)
        refusal["field"] = self.field
        refusal["code"] = self.code
        return refusal


def check_number(field, value, most=LARGEST):
    """Refuse what is not a finite number of a size that can be meant.

    field: name of the input, for the refusal
    value: what was typed or reckoned
    most: the largest, either way

    Raises CalcError with code not_a_number or too_large. True and False are not numbers here.
    """
    if value is True or value is False or not isinstance(value, (int, float)) or value != value:
        raise CalcError(field, "not_a_number")
    if not -most <= value <= most:
        raise CalcError(field, "too_large", most=most)


def check_positive(field, value):
    """Refuse what is not a number above zero.

    field: name of the input, for the refusal
    value: what was typed or reckoned

    Raises CalcError with code not_positive or too_small beside those of check_number.
    """
    check_number(field, value)
    if not value > 0:
        raise CalcError(field, "not_positive", value=value)
    if value < SMALLEST:
        raise CalcError(field, "too_small", value=value, least=SMALLEST)


def check_not_negative(field, value, most=LARGEST):
    """Refuse what is not a number of zero or more.

    field: name of the input, for the refusal
    value: what was typed or reckoned
    most: the largest

    Raises CalcError with code negative beside those of check_number.
    """
    check_number(field, value, most)
    if not value >= 0:
        raise CalcError(field, "negative", value=value)


def check_within(field, value, least, most):
    """Refuse what is not a number from `least` to `most`.

    field: name of the input, for the refusal
    value: what was typed or reckoned
    least, most: the bounds, both allowed, in the unit of the input

    Raises CalcError with code out_of_range beside those of check_number.
    """
    check_number(field, value)
    if not least <= value <= most:
        raise CalcError(field, "out_of_range", value=value, least=least, most=most)
