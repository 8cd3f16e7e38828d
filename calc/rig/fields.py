"""The fields of a rig's profile, and what each may hold."""
from calc.base import display, entry
from calc.base.errors import CalcError
from calc.hydraulics import friction_rule
from calc.rig.check_fields import MOST_CODES, MOST_NOTE

SCHEMA = 1
MOST_ROWS = 40
MOST_TEXT = 60
MOST_TIPS = 6
MOST_READINGS = 20  # of one hose
_LETTERS = "abcdefghijklmnopqrstuvwxyz"
HANDBOOK_SLACK = 0.01  # a figure within it of the handbook's is that figure, rounded; more is another figure

# name, kind, and for a choice its options; for a number least and most; for a quantity its kind, least and most,
# in calc's units. The bounds are what a fire pump can have: common practice.
FIELDS = (
    ("name", "text"),
    ("units", "choice", ("US", "SI", "bar", "imperial")),
    ("unit_number", "text"),
    ("year_built", "text"),
    ("pump_serial", "text"),
    ("drive", "choice", ("midship", "pto", "front", "rear_shaft", "rear_pto")),
    ("shift_control", "choice", ("air", "electric", "manual")),
    ("transmission", "choice", ("automatic", "manual")),
    ("pump_rated", "quantity", "flow", 50, 6000),
    ("pump_stages", "choice", ("1", "2")),
    ("pressure_control", "choice", ("governor", "relief", "none")),
    ("other_control", "choice", ("governor", "relief", "none")),
    ("relief_set", "quantity", "pressure", 20, 300),
    ("foam", "choice", ("none", "proportioner", "cafs")),
    ("pump_ratio", "number", 0.2, 10),
    ("tank", "quantity", "volume", 1, 20000),
    ("tank_rate", "quantity", "flow", 10, 5000),
    ("idle", "number", 300, 1500),
    ("governed", "number", 1000, 4000),
    ("speed_capacity", "number", 300, 4000),
    ("speed_seventy", "number", 300, 4000),
    ("speed_fifty", "number", 300, 4000),
    ("axle_ratio", "number", 1, 20),
    ("tyre_rev", "number", 200, 1500),
    ("pump_gear", "text"),
    ("pump_gear_ratio", "number", 0.3, 10),
    ("pump_light", "choice", ("before_drive", "after_drive")),
    ("speedometer", "choice", ("driveline", "wheels")),
    ("speed_in_pump", "text"),
    ("override_place", "text"),
    ("override_way", "text"),
    ("override_tool", "text"),
    ("stop_controls", "text"),
    ("floor", "quantity", "length", 5, 40),
    ("wye_from", "quantity", "flow", 0, 3000),
    ("wye_loss", "quantity", "pressure", 0, 100),
    ("panel_step", "quantity", "pressure", 0.1, 50),
    ("friction_rule", "choice", friction_rule.CODES),
    ("residual", "quantity", "pressure", 0, 150),
    ("standard", "choice", ("us", "canada", "europe")),
    ("owner", "text"),
    ("dated", "text"),
)
# Fields of older profiles that nothing asks for now: let in, and left out of what is used.
GONE = (("intakes", "text"),)
# Choices of older profiles that say too little: read, never taken for an answer.
UNSAID = {"drive": ("rear",)}
HOSE_FIELDS = (
    ("hose", "shelf"),
    ("coefficient", "quantity", "coefficient", 0.001, 5000),
    ("origin", "choice", ("handbook", "declared", "measured", "pooled", "typed")),
    ("readings", "number", 1, MOST_READINGS),
    ("test_pressure", "quantity", "pressure", 50, 2000),  # a reel of ultra-high pressure, run at 1,400 psi, is tested at 1,540
)
# of a discharge's cap or label, in plain words: paper and a color-blind eye read the word
CAPS = ("red", "orange", "yellow", "green", "blue", "purple", "brown", "white", "gray", "black")
BED_FIELDS = (
    ("name", "text"),
    ("hose", "shelf"),
    ("length", "quantity", "length", 1, 5000),
    ("crew", "crew"),
    ("device", "choice", ("master", "aerial")),
    ("loss", "quantity", "pressure", 0, 150),
    ("loss_at", "quantity", "flow", 50, 5000),
    ("device_most", "quantity", "flow", 50, 5000),
    ("cap", "choice", CAPS),
)
SUPPLY_FIELDS = (
    ("hose", "shelf"),
    ("length", "quantity", "length", 1, 20000),
    ("limit", "quantity", "pressure", 20, 1000),
)
END_FIELDS = {
    "fog": (("flow", "quantity", "flow", 1, 5000), ("pressure", "quantity", "pressure", 5, 1500)),
    "smooth": (("tip", "quantity", "diameter", 0.1, 6), ("pressure", "quantity", "pressure", 5, 1000)),
}
END_ENTRIES = ("flow", "tip", "pressure")  # a bed carries the entries of the nozzle kind it does not use now too
LISTS = ("hoses", "beds", "supply", "checks")
FIXED = ("schema", "id", "hoses", "beds", "supply", "checks")
PIPED = "piped"  # in place of a hose: a device that is plumbed to the pump


def is_text(value):
    """Whether a value is a person's own words, as long as a field takes.

    value: anything

    Raises nothing.
    """
    return isinstance(value, str) and len(value) <= MOST_TEXT


def is_code(value):
    """Whether a value can be the id of an item or a list: small letters, digits and _, a letter first.

    value: anything

    Raises nothing.
    """
    return is_text(value) and value[:1] in _LETTERS and all([letter in _LETTERS + "0123456789_" for letter in value]) and value != ""


def check_codes(name, value):
    """Refuse what is no list of different ids.

    name: of the field
    value: anything

    Raises CalcError naming the field.
    """
    if not isinstance(value, list) or len(value) > MOST_CODES or not all([is_code(code) for code in value]):
        raise CalcError(name, "not_codes")
    if len(set(value)) < len(value):
        raise CalcError(name, "duplicate")


def is_handbooks(coefficient, figures):
    """Whether a figure is the handbook's, as it stands there or rounded.

    coefficient: psi per 100 ft at 100 gpm
    figures: a hose of the shelf

    Raises nothing.
    """
    return abs(coefficient - figures["coefficient"]) <= HANDBOOK_SLACK * figures["coefficient"]


def check_field(value, field, context):
    """Refuse what a field cannot hold.

    value: anything
    field: a row of FIELDS
    context: the shelf, see calc.base.shelf, and the units

    Raises CalcError naming the field.
    """
    shelf, units = context
    name, kind = field[0], field[1]
    if kind == "codes":
        check_codes(name, value)
        return
    if kind == "note" and isinstance(value, str):
        if len(value) > MOST_NOTE:
            raise CalcError(name, "long_note", most=MOST_NOTE)
        return
    if not is_text(value):
        raise CalcError(name, "not_text")
    if kind == "code" and not is_code(value):
        raise CalcError(name, "not_code")
    if kind == "choice" and value not in field[2] and value not in UNSAID.get(name, ()):
        raise CalcError(name, "unknown")
    if kind == "shelf" and (value not in shelf["hoses"] or value == PIPED):
        raise CalcError(name, "unknown")
    if kind == "crew" and value not in shelf["crews"]:
        raise CalcError(name, "unknown")
    if kind == "number":
        amount = entry.number(name, value, "ratio" if name.endswith("ratio") else "speed", display.decimal(units))
        if not field[2] <= amount <= field[3]:
            raise CalcError(name, "out_of_range", least=field[2], most=field[3])
    elif kind == "quantity":
        amount = entry.quantity(units, field[2], name, value)
        if not field[3] <= amount <= field[4]:
            raise CalcError(name, "out_of_range", least=field[3], most=field[4])
