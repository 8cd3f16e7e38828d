"""What takes a rig out of service is found by what people type: the row first or second, whatever else they say, and never "none" while a word matches."""
import json
import subprocess

import pytest

from tests.conftest import ROOT, node
from tests.site.pages import page_data

# phrases as crews type them, and the row that answers: written from the rows' names, not from what the search gave
PHRASES = {
    "en": {
        "siren": "siren", "siren dead": "siren", "door wont latch": "door_latch", "relief valve stuck": "pump_pressure_control", "primer wont": "pump_prime",
        "seatbelt": "belt", "tire bald": "tire_tread", "cracked windshield": "glass", "coolant low": "coolant_low", "oil low": "oil_low",
        "low gear oil": "pump_oil_low", "is my low gear oil an out of service thing": "pump_oil_low", "brakes pull left": "brake_pull",
        "relief valve wont work": "pump_pressure_control", "steering loose": "steering", "milky gear oil": "pump_water_in_oil", "mikly gear oil": "pump_water_in_oil",
        "flat tire": "tire_cord", "lug nuts missing": "wheel_nuts", "head lights dead": "headlights", "pump wont engage": "pump_engage",
        "parking brake slips": "parking_brake", "t2p stuck": "pump_t2p", "alternator not charging": "charging", "engine overheating": "overheat",
        "oil a quart low, topped up": "oil_low", "antifreeze leaking": "coolant_leak", "packing drips too much": "packing",
    },
    "fr": {"sirène morte": "siren", "pneu lisse": "tire_tread", "pare-brise fissuré": "glass", "huile basse": "oil_low", "direction lâche": "steering", "ceinture": "belt"},
}
TYPED = [(language, typed, row) for language, phrases in PHRASES.items() for typed, row in phrases.items()]


def found(built, language, *typed):
    page = page_data(built / ("" if language == "en" else language) / "checks" / "page.json")
    asked = json.dumps({**{name: page[name] for name in ("conditions", "differing", "silent")}, "typed": typed})
    run = subprocess.run([node(), ROOT / "tests" / "site" / "conditions.mjs"], input=asked, capture_output=True, encoding="utf-8", check=True)
    return json.loads(run.stdout)


@pytest.mark.parametrize("language", PHRASES)
def test_a_phrase_finds_its_row_first_or_second(built, language):
    phrases = PHRASES[language]
    answers = zip(phrases, found(built, language, *phrases), strict=True)
    assert {typed: answer["rows"][:3] for typed, answer in answers if phrases[typed] not in answer["rows"][:2]} == {}


def test_a_defects_words_propose_a_class(built):
    """What the search puts first is proposed; words that no row has, or few letters, propose nothing."""
    answers = found(built, "en", "brakes pull left", "relief valve wont work", "steering loose", "zebra", "si", "", "radio dead", "map light out")
    assert [answer["proposed"] for answer in answers] == ["brake_pull", "pump_pressure_control", "steering", None, None, None, None, None]


@pytest.mark.parametrize("more", ["zebra", "since yesterday", "help please"])
def test_a_word_that_no_row_has_hides_none(built, more):
    assert found(built, "en", f"siren {more}")[0]["rows"][0] == "siren"
