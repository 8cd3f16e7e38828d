"""The rows of a profile's `checks`: what its department and its makers change in the published lists of checks.

A row says by its `act` what it does: add an item of its own, leave one out, or change one (its name, sign, limit, lists or interval).
`whose` says who says so: the department, or the rig's own manuals and plates ("rig"), which come first. All text as typed ("22@US").
"""
MOST_CHECKS = 120
MOST_NOTE = 200
MOST_CODES = 20
ACTS = ("add", "leave_out", "change")
WHOSE = ("department", "rig")
CLASSES = ("out_of_service", "restricted", "report", "note")  # of a defect, worst first
SCOPES = ("apparatus", "pump", "aerial", "foam")
STATES = ("off", "running", "pumping", "shut", "shop")  # of the engine and pump, as they come; shop: on the lift, with tools
PLACES = ("papers", "round", "cab", "engine", "under", "bed", "pump", "panel", "road")  # where you stand, as you come to it
QUANTITIES = ("pressure", "vacuum", "temperature", "diameter", "length")  # a limit of these converts with the page's units
PLAIN_UNITS = ("V", "tread", "years", "lights", "degrees", "percent", "inh2o", "seconds", "drops", "hertz")
LIMITS = ("least", "most", "aim")
INTERVALS = ("months", "days", "hours", "miles")
ADDED_ONLY = ("place", "state", "who", "class", "scope")  # of a published item these stay as they are

# name, kind and what it takes, as FIELDS of calc.rig.fields. The bounds of intervals: common practice.
CHECK_FIELDS = (
    ("item", "code"),
    ("act", "choice", ACTS),
    ("whose", "choice", WHOSE),
    ("name", "text"),
    ("look", "note"),
    ("good", "note"),
    ("lists", "codes"),
    ("place", "choice", PLACES),
    ("state", "choice", STATES),
    ("who", "choice", ("operator", "technician")),
    ("class", "choice", CLASSES),
    ("scope", "choice", SCOPES),
    ("unit", "choice", QUANTITIES + PLAIN_UNITS),
    ("least", "limit"),
    ("most", "limit"),
    ("aim", "limit"),
    ("months", "number", 1, 120),
    ("days", "number", 1, 3660),
    ("hours", "number", 1, 20000),
    ("miles", "number", 1, 500000),
    ("reason", "note"),
)
