"""The shuttle page's answer: what the tankers keep up, and how many a flow takes."""
from calc.base import display, readout
from calc.supply import shuttle, sources


def answer(entries, shelf, units):
    """What a shuttle keeps up, ready to be read.

    entries: text as typed or chosen: `tankers`, `load`, `way` ("one", "round" or "timed"), `distance` or `timed`,
        `fill`, `dump` and the `wanted` flow; `kinds` ("alike" or "two") with the second kind's `more_tankers`, `more_load`, `more_fill`
        and `more_dump`; the size of one `portable` tank
    shelf: not used by this page
    units: see calc.base.display

    Returns contract `water_answer` with `shuttle_picture`. Raises CalcError naming the entry. Source: calc.supply.shuttle.
    """
    typed = readout.amounts(entries, units, (
        ("load", "volume", 10, 20000), ("fill", "time", 0.1, 120), ("dump", "time", 0.1, 120), ("wanted", "flow", 1, 10000), ("portable", "volume", 100, 50000)))
    tankers = readout.count(entries, "tankers", 1, shuttle.MOST_TANKERS)
    way = readout.choice(entries, "way", ("one", "round", "timed"))
    rows = []
    road_minutes = _road(entries, units, way, rows)
    if readout.choice(entries, "kinds", ("alike", "two")) == "two":
        return _mixed(entries, units, tankers, typed, road_minutes, rows)
    trip = (typed["load"], road_minutes, typed["fill"], typed["dump"])
    plan = shuttle.plan(tankers, *trip)
    needed = shuttle.tankers_for(typed["wanted"], *trip)
    cycle = (("road", "time", road_minutes), ("fill", "time", typed["fill"]), ("dump", "time", typed["dump"]),
             ("wait", "time", plan["wait_minutes"]), ("cycle", "time", plan["cycle_minutes"]))
    rows += [
        readout.row(units, "cycle", "time", plan["cycle_minutes"], cycle, ("shuttle",)),
        readout.row(units, "kept_up", "flow", plan["flow_gpm"], (
            ("tankers", None, str(tankers)), ("load", "volume", typed["load"]), ("cycle", "time", plan["cycle_minutes"]),
            ("flow", "flow", plan["flow_gpm"])), ("shuttle",)),
        readout.row(units, "needed", None, "\u2013" if needed is None else str(needed), (
            ("wanted", "flow", typed["wanted"]),), ("shuttle",)),
        readout.row(units, "useful", None, str(plan["useful"]), cycle, ("shuttle_sites",)),
    ]
    cautions = []
    site = _dump_site(entries, units, typed["load"], typed, plan["flow_gpm"], rows, cautions)
    if plan["held_by"] != "road":
        cautions.append(readout.caution(units, "caution", "held_at_" + plan["held_by"], (
            ("amount", "time", plan["wait_minutes"]), ("useful", None, str(plan["useful"])))))
    if plan["flow_gpm"] < typed["wanted"]:
        enough = (("needed", None, str(needed)),) if needed else ()
        cautions.append(readout.caution(units, "caution", "short_of_wanted" if needed else "sites_too_slow", (
            ("amount", "flow", plan["flow_gpm"]), ("limit", "flow", typed["wanted"])) + enough))
    return {
        "sum": "shuttle",
        "figure": {"kind": "flow", "text": display.text(units, "flow", plan["flow_gpm"])},
        "facts": {"tankers": str(tankers), "cycle": display.text(units, "time", plan["cycle_minutes"]),
                  "each": display.text(units, "flow", plan["each_gpm"])},
        "rows": rows,
        "cautions": cautions,
        "picture": {"tankers": tankers, "road": display.text(units, "time", road_minutes), "fill": display.text(units, "time", typed["fill"]),
                    "dump": display.text(units, "time", typed["dump"]), "held_by": plan["held_by"],
                    "wait": display.text(units, "time", plan["wait_minutes"]), "site": site},
    }


def _road(entries, units, way, rows):
    """Minutes on the road for a round trip, as timed or from the distance; notes the working of the latter."""
    if way == "timed":
        return readout.amount(entries, units, "timed", "time", 0, 600)
    distance_miles = readout.amount(entries, units, "distance", "distance", 0, 100)
    road_minutes = shuttle.travel_minutes(distance_miles, way == "round")
    miles = ("distance", "distance", distance_miles / 2 if way == "round" else distance_miles)
    rows.append(readout.row(units, "road", "time", road_minutes, (miles, ("road", "time", road_minutes)), ("shuttle_road",)))
    return road_minutes


def _mixed(entries, units, tankers, typed, road_minutes, rows):
    """The answer for two kinds of tanker."""
    more = readout.amounts(entries, units, (("more_load", "volume", 10, 20000), ("more_fill", "time", 0.1, 120), ("more_dump", "time", 0.1, 120)))
    others = readout.count(entries, "more_tankers", 1, shuttle.MOST_TANKERS)
    plan = shuttle.mixed([
        {"tankers": tankers, "tank_gal": typed["load"], "fill_minutes": typed["fill"], "dump_minutes": typed["dump"]},
        {"tankers": others, "tank_gal": more["more_load"], "fill_minutes": more["more_fill"], "dump_minutes": more["more_dump"]}], road_minutes)
    flow_text = display.text(units, "flow", plan["flow_gpm"])
    wait = ("wait", "time", plan["wait_minutes"])
    rows.append(readout.row(units, "mixed", "flow", plan["flow_gpm"], (
        ("tankers", None, str(tankers)), ("load", "volume", typed["load"]),
        ("cycle", "time", road_minutes + typed["fill"] + typed["dump"] + plan["wait_minutes"]),
        ("others", None, str(others)), ("more_load", "volume", more["more_load"]),
        ("more_cycle", "time", road_minutes + more["more_fill"] + more["more_dump"] + plan["wait_minutes"]), wait,
        ("flow", "flow", plan["flow_gpm"])), ("shuttle", "shuttle_mixed")))
    cautions = []
    site = _dump_site(entries, units, max(typed["load"], more["more_load"]), typed, plan["flow_gpm"], rows, cautions)
    if plan["held_by"] != "road":
        cautions.append(readout.caution(units, "caution", "waits_at_" + plan["held_by"], (("amount", "time", plan["wait_minutes"]),)))
    if plan["flow_gpm"] < typed["wanted"]:
        cautions.append(readout.caution(units, "caution", "short_mixed", (("limit", "flow", typed["wanted"]),)))
    return {
        "sum": "shuttle_mixed",
        "figure": {"kind": "flow", "text": flow_text},
        "facts": {"tankers": str(tankers + others), "wait": display.text(units, "time", plan["wait_minutes"])},
        "rows": rows,
        "cautions": cautions,
        "picture": {"tankers": tankers + others, "road": display.text(units, "time", road_minutes),
                    "fill": display.text(units, "time", max(typed["fill"], more["more_fill"])),
                    "dump": display.text(units, "time", max(typed["dump"], more["more_dump"])), "held_by": plan["held_by"],
                    "wait": display.text(units, "time", plan["wait_minutes"]), "site": site},
    }


def _dump_site(entries, units, load_gal, typed, flow_gpm, rows, cautions):
    """Portable tanks, and what moves the water between them: notes the workings, and gives what is drawn of the site."""
    needed = shuttle.portable_tanks(load_gal, typed["portable"])
    tanks = readout.count_if_given(entries, "tanks", 1, shuttle.MOST_TANKS)
    if needed > (tanks or 1):
        cautions.append(readout.caution(units, "caution", "portable_small", (
            ("amount", "volume", typed["portable"]), ("limit", "volume", load_gal), ("needed", None, str(needed)))))
    dump_gpm = load_gal * (1 - sources.SHUTTLE_LOST_SHARE) / typed["dump"]
    siphons = shuttle.siphons_for(flow_gpm)
    rows += [
        readout.row(units, "portable", None, str(needed), (
            ("load", "volume", load_gal), ("margin", "volume", shuttle.PORTABLE_MARGIN_GAL), ("portable", "volume", typed["portable"]),
            ("tanks", None, str(needed))), ("portable",)),
        readout.row(units, "dump_rate", "flow", dump_gpm, (
            ("load", "volume", load_gal), ("dump", "time", typed["dump"]), ("rate", "flow", dump_gpm)), ("shuttle",)),
        readout.row(units, "siphons", None, str(siphons), (
            ("flow", "flow", flow_gpm), ("each", "flow", shuttle.SIPHON_GPM)), ("siphons",)),
    ]
    drawn = tanks or needed
    return {"tanks": min(drawn, shuttle.MOST_TANKS), "siphons": siphons if drawn > 1 else 0, "flow": display.text(units, "flow", flow_gpm),
            "volume": display.text(units, "volume", typed["portable"])}
