"""Texts beside the figures of a plan, a verdict or a refused entry, in the page's units."""
from calc.base import display, rounding

# figures of a run that are set or expected, and their kinds; what is set is rounded so that its point is reached
SET = (("flow_gpm", "flow"), ("net_psi", "pressure"))


def add_bound_texts(problems, units):
    """Add to each entry that cannot be the texts of what it can be, "least_text" and "most_text".

    problems: of calc.service.entries
    units: see calc.base.display

    Raises CalcError naming units.
    """
    for problem in problems:
        if "least" in problem:
            problem["least_text"] = display.limit(units, problem["kind"], problem["least"], -1)
            problem["most_text"] = display.limit(units, problem["kind"], problem["most"], 1)


def add_texts(data, units, said):
    """Add texts to every figure within plain data.

    data: of calc.service.verdict or calc.service.judge, or any part of it
    units: see calc.base.display
    said: texts of this answer so far, {} at first, since most limits stand at many readings

    Raises CalcError naming value or units.
    """
    if isinstance(data, list):
        for row in data:
            add_texts(row, units, said)
    elif isinstance(data, dict):
        if "kind" in data and "least" in data:
            _add_figure_texts(data, units, said)
        elif "limit" in data and "kind" in data:
            data["value_text"] = _figure(units, said, data["kind"], data["value"])
            data["limit_text"] = _figure(units, said, data["kind"], data["limit"])
        for name in data:
            if isinstance(data[name], (list, dict)):
                add_texts(data[name], units, said)


def _add_figure_texts(figure, units, said):
    kind = figure["kind"]
    if kind == "check":
        return
    if "value" in figure:
        figure["exact_text"] = figure["value_text"] = _figure(units, said, kind, figure["value"])
        figure["band_text"] = _figure(units, said, kind, figure["band"])  # no kind whose zero differs has a band
        if figure["value"] is not None and kind == "flow":
            _read_to(figure, units, 0)  # finer than any gauge it was read from
        elif figure["value"] is not None and figure.get("id") == "net_psi":  # one below the other on a sheet: each to the same decimal
            _read_to(figure, units, display.scale(units, units["shown"], kind)["places"])
            figure["exact_text"] = figure["value_text"]
    figure["least_text"] = _limit(units, said, kind, figure["least"], -1)
    figure["most_text"] = _limit(units, said, kind, figure["most"], 1)


def _read_to(figure, units, places):
    """A figure and its band to so many decimals, never across the limit it is held to."""
    scale = display.scale(units, units["shown"], figure["kind"])
    shown, least, most, band = [None if figure[name] is None else display.converted(scale, figure[name]) for name in ("value", "least", "most", "band")]

    def meets(value):
        return (least is None or value >= least) and (most is None or value <= most)

    near = float(rounding.rounded(shown, places))
    if meets(near) != meets(shown):
        near += 10 ** -places if near < shown else -(10 ** -places)
    figure["value_text"] = display.rounded(units, near, places)
    figure["band_text"] = None if band is None else display.rounded(units, band, places)


def _figure(units, said, kind, value):
    if (kind, value) not in said:
        said[(kind, value)] = display.figure(units, kind, value)
    return said[(kind, value)]


def _limit(units, said, kind, value, side):
    if (kind, value, side) not in said:
        said[(kind, value, side)] = display.limit(units, kind, value, side)
    return said[(kind, value, side)]


def add_plan_texts(test, units, said):
    """Add texts to a test of the plan.

    test: of calc.service.plan
    units, said: as for add_texts

    Raises CalcError naming value or units.
    """
    if test["kind"] != "run":
        add_texts(test["limits"], units, said)
        return
    for name, kind in SET:
        test[name.split("_")[0] + "_text"] = display.limit(units, kind, test[name], -1)
    test["gauge_text"] = display.needle(units, "pressure", test["gauge_psi"])
    hold_psi = test["hold_psi"]
    test["hold_texts"] = hold_psi and [display.needle(units, "pressure", hold_psi[0]), display.needle(units, "pressure", hold_psi[1], 1)]
    test["band_texts"] = [display.figure(units, "flow", test["flow_least_gpm"]), display.figure(units, "flow", test["flow_most_gpm"])]
    test["loss_text"] = display.figure(units, "length", test["suction_loss_ft"])
    for tip in test["tips"]:
        tip["tip_text"] = display.figure(units, "diameter", tip["tip_in"])
        tip["pitot_text"] = display.needle(units, "pitot", tip["pitot_psi"])
    for speed in test["expected"]:
        speed["engine_text"] = display.figure(units, "speed", speed["engine_rpm"])
        speed["pump_text"] = display.figure(units, "speed", speed["pump_rpm"])
