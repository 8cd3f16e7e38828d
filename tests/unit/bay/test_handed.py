"""What a card, a diagnosis or a test hands over to a defect: whole or visibly cut, never dropped without a word."""
import json
import subprocess

import pytest

from tests.conftest import ROOT, node


def through(made=(), read=()):
    run = subprocess.run([node(), ROOT / "tests" / "unit" / "bay" / "handed.mjs"], input=json.dumps({"made": made, "read": read}), capture_output=True, encoding="utf-8", check=True)
    return json.loads(run.stdout)


def a_defect(what="Gear oil", seen="metal"):
    return {"origin": "card", "what": what, "seen": seen, "class": "restricted", "scope": "pump", "rule": ""}


@pytest.mark.parametrize("letter", ["a", "é", '"', "\\", "€", "\u0001", "水"])
def test_the_longest_text_arrives(letter):
    """160 and 600 of any letter, however many signs an address needs for it, arrive whole; one more is cut and shows it."""
    whole, longer = through([a_defect(letter * 160, letter * 600), a_defect(letter * 161, letter * 2000)])["made"]
    assert whole == {"what": letter * 160, "seen": letter * 600, "origin": "card", "rank": "restricted", "scope": "pump", "rule": ""}
    assert (longer["what"], longer["seen"]) == (letter * 159 + "…", letter * 599 + "…")


def test_no_sign_is_cut_in_half():
    """A pair that lies across the cut goes whole, and half of one, which no address holds, goes too."""
    [across, half] = through([a_defect("a" * 158 + "😀b"), a_defect("a\ud83db")])["made"]
    assert (across["what"], half["what"]) == ("a" * 158 + "…", "ab")


@pytest.mark.parametrize(("fragment", "came"), [
    ("", None), ("#d1", None), ("#new=", "lost"), ("#new=%", "lost"), ("#new=null", "lost"), ("#new={", "lost"), ("#new=" + "x" * 12_000, "lost"),
    ('#new={"what":7,"seen":["x"]}', {"what": "", "seen": "", "origin": "", "rank": "", "scope": "", "rule": ""}),
])
def test_what_others_hand_over(fragment, came):
    """A fragment that cannot be read says so; one of other kinds of values gives empty texts."""
    assert through(read=[fragment])["read"] == [came]
