"""Every screen of the site by name, each with the way to it: pages as they open, and what only a touch brings."""
import functools

from site_src.routes import help
from tests import service_records
from tests.phone.ways import (
    answered, at_a_place, called, card_at, card_for_another_rig, checking_off, chosen, conditions_searched, debriefed, diagnosis, drilled, flowing, found_fault,
    hidden_fault, in_the_bay, in_words, log_with_a_run, over_the_years, plain, practising, raising, refused, searched, service,
    water_answered, wye,
)
from tests.site import pages

# pages as they open, and screens that only a touch brings
STATES = {
    "a drill's working": drilled,
    "a call, its gauge to set": called,
    "a call, its debrief": debriefed,
    "practice running": practising("path"),
    "practice by lamps": practising("seen"),
    "practice, a fault hidden": hidden_fault,
    "practice, a run read": found_fault,
    "years of tests": over_the_years,
    "checks start": lambda handset: in_the_bay(handset, ""),
    "checks item": lambda handset: in_the_bay(handset, "round/#cab_air", "round.begin"),
    "checks not good": lambda handset: in_the_bay(handset, "round/#cab_air", "round.begin", "round.not_good"),
    "checks defect": lambda handset: in_the_bay(handset, "defect/#d1"),
    "checks release": lambda handset: in_the_bay(handset, "release/#d1"),
    "checks tag": lambda handset: in_the_bay(handset, "tag/"),
    "checks due": lambda handset: in_the_bay(handset, "due/"),
    "checks board": lambda handset: in_the_bay(handset, "board/"),
    "checks conditions": conditions_searched,
    "checks record": lambda handset: in_the_bay(handset, "record/#r1"),
    "checks log": lambda handset: in_the_bay(handset, "log/", "codes.show"),
    "check after repair": raising,
    "pressure with a wye": wye,
    **{f"pressure, its {tab}": functools.partial(wye, tab=tab) for tab in ("hose", "height", "more")},
    "pressure flowing": flowing,
    "pressure refused": refused,
    "card pausing": card_at("road", "centre_back", "pause"),
    "card asking": card_at("scene", "light_first"),
    "card stopped": card_at("bay", "exhaust", "not_seen"),
    "card setting a governor": card_at("control", "mode_pressure"),
    "card priming": card_at("draft", "prime_draft", "pause"),
    "card for another rig": card_for_another_rig,
    "log with a run": log_with_a_run,
    "check-off sheet": checking_off,
    "card in danger": card_at("bay", "exhaust", "danger"),
    "diagnosis with radio words": diagnosis("gravel_noise", "supply_soft", "intake_near_zero", "grew_with_lines"),
    "diagnosis at a cause": diagnosis("supply_soft", "grew_with_lines", "flow_cut_cures"),
    "water answered": water_answered,
    "portable pumps": chosen("water/hoselay/", "pump", "own"),
    "engines in series": chosen("water/connection/", "engines", "two"),
    "help answered": answered,
    "help searched": searched,
    "tests kept": service("test/"),
    "test failed": service("test/run/#{id}"),
    "test site": service("test/run/#{id}/site", service_records.an_unfinished_record),
    "test run": service("test/run/#{id}/capacity", service_records.an_unfinished_record),
    "test governor": service("test/run/#{id}/governor", service_records.an_unfinished_record),
    "test intake relief": service("test/run/#{id}/intake_relief", service_records.an_unfinished_record),
    "test sheet": service("test/sheet/#{id}"),
    "diagnosis at a place": at_a_place,
    "diagnosis in words": in_words,
    "diagnosis contradicted": diagnosis("light_dark", "ok_dark"),
}

# Two of the cards, one topic of help, one of the metric and one of the customary systems, and one rig of the fleet: the others are the same pages.
ALIKE = (
    "shift/bay/", "shift/hydrant/", "shift/stages/", "shift/moving/", "shift/check/", "shift/freeze/", "shift/override/",
    *(f"help/{topic}/" for topic in help.TOPICS if topic != "shift"),
    "tables/bar/", "tables/imperial/", "tables/SI/draft", "tables/SI/supply",
    "rigs/northmere", "rigs/quarry", "rigs/saltmarsh", "rigs/tollgate-brush", "rigs/tollgate-engine-2",
)
SCREENS = {
    **{address or "start": plain(address) for address in pages.addresses() + ["404.html"] if not address.startswith(ALIKE)},
    **STATES,
}
