"""The contract between calc and the words of the water and foam pages: in every situation all is told, and nothing is idle."""
import string

import pytest

from site_src.content import data, reckoners
from tests.unit.supply.reckoned import TOLD, ask, called_to_mind, fill

# one or more situations for each figure, sentence and caution there is
SITUATIONS = [(page, {}) for page in reckoners.PAGES] + [
    ("hydrant", {"known": "pitot"}), ("hydrant", {"known": "pitot", "outlet": "4.5@US"}), ("hydrant", {"residual": "15"}),
    ("hydrant", {"residual": "62"}), ("hydrant", {"wanted": "700"}), ("hydrant", {"wanted": "2000"}),
    ("hydrant", {"static": "60", "residual": "40"}), ("hydrant", {"residual": "50", "flowing": "600"}),
    ("hydrant", {"flowing": "2000"}), ("hydrant", {"flowing": "50"}), ("hydrant", {"static": "36", "residual": "30"}),
    ("tank", {"tank": "400", "flow": "300"}), ("tank", {"water_from": "pond"}), ("tank", {"water_from": "pond", "cover": "2"}),
    ("tank", {"water_from": "stream"}), ("tank", {"water_from": "stream", "flow": "2000"}), ("draft", {"rated": "2000"}),
    ("draft", {"lift": "16"}), ("draft", {"lift": "21"}), ("draft", {"lift": "26"}), ("draft", {"flow": "1300"}),
    ("draft", {"lift": "20", "suction": "4"}), ("draft", {"vacuum": "18"}), ("draft", {"vacuum": "5"}),
    ("relay", {"lines": "2"}), ("relay", {"hose": "attack-2.5"}), ("relay", {"most": "250", "distance": "2800"}), ("relay", {"rated": "1000", "distance": "2000"}),
    ("relay", {"rated": "750"}), ("relay", {"climb": "-800"}), ("relay", {"most": "250", "distance": "2100"}),
    ("joint", {"way": "dual", "limit": "60"}), ("joint", {"limit": "125"}), ("joint", {"before": "210"}), ("joint", {"before": "190"}), ("joint", {"supply": "15"}),
    ("joint", {"way": "dual", "supply": "20"}), ("joint", {"wanted": "100"}), ("joint", {"wanted": "400"}),
    ("connection", {"lines": "1"}), ("connection", {"system": "sprinkler"}), ("connection", {"sign": "120"}), ("connection", {"by": "height", "riser": "4"}),
    ("connection", {"device": "restrictor"}), ("connection", {"device": "set"}), ("connection", {"device": "set", "setting": "65"}),
    ("connection", {"storey": "60"}), ("connection", {"storey": "60", "engines": "two"}), ("connection", {"storey": "60", "engines": "two", "limit": "200"}), ("connection", {"engines": "two", "supply": "120", "limit": "100"}),
    ("connection", {"by": "height", "climb": "1200", "engines": "two", "between_length": "1000"}), ("connection", {"storey": "40"}), ("connection", {"flow": "600"}),
    ("shuttle", {"kinds": "two"}), ("shuttle", {"kinds": "two", "tankers": "6"}), ("shuttle", {"kinds": "two", "tankers": "6", "fill": "2", "wanted": "2000", "portable": "2000"}),
    ("shuttle", {"way": "round"}), ("shuttle", {"way": "timed"}), ("shuttle", {"tankers": "7"}), ("shuttle", {"tankers": "2"}),
    ("shuttle", {"wanted": "500"}), ("shuttle", {"tankers": "6", "fill": "2", "distance": "1"}),
    ("fireflow", {"by": "volume"}), ("fireflow", {"by": "store"}), ("fireflow", {"involved": "100", "length": "200"}), ("fireflow", {"supply": "100"}), ("fireflow", {"tank": "750"}),
    ("hoselay", {"tip": "fog"}), ("hoselay", {"lining": "unlined"}), ("hoselay", {"rise": "-400"}), ("hoselay", {"rise": "-50"}), ("hoselay", {"rise": "400"}),
    ("hoselay", {"limit": "140"}), ("hoselay", {"pump": "high"}), ("hoselay", {"pump": "own", "arranged": "series", "laterals": "1"}), ("hoselay", {"pump": "volume", "arranged": "parallel"}),
    ("hoselay", {"pump": "own", "tip": "0.5", "length": "400", "rise": "-200"}), ("hoselay", {"pump": "light", "rise": "500"}), ("hoselay", {"pump": "volume", "rise": "3000"}),
    ("foam", {"stands": "line"}), ("foam", {"nozzle_flow": "60"}), ("foam", {"nozzle_flow": "125"}), ("foam", {"rated": "100"}),
    ("foam", {"length": "250"}), ("foam", {"task": "spill"}), ("foam", {"task": "spill", "length": "250"}), ("foam", {"plate": "100"}), ("foam", {"concentrate": "20"}),
]
WORDS = {language: TOLD if language == "en" else data.load(f"words/{language}/water") for language in data.languages()}


def gaps(sentence):
    """The names that a sentence takes, but for units."""
    return {name for _, name, _, _ in string.Formatter().parse(sentence) if name and not name.startswith("u_")}


@pytest.mark.parametrize(("page", "changes"), SITUATIONS, ids=[f"{page} {changes}" for page, changes in SITUATIONS])
def test_all_is_told(run, page, changes):
    """Every figure, working, source, sentence and caution of an answer has its words, in each language, without a gap."""
    answer = ask(run, page, **changes)
    assert set(answer) == {"sum", "figure", "facts", "rows", "cautions", "picture"}
    assert set(answer["figure"]) == {"kind", "text"}
    assert answer["picture"] is not None
    unit = data.words("units")["unit"]["US"]
    for words in WORDS.values():
        if answer["figure"]["text"] is not None:
            assert unit[answer["figure"]["kind"]] and fill(words["told"][answer["sum"]], answer["facts"])
        assert fill(words["page"][page]["label"], answer["facts"])
        for row in answer["rows"]:
            assert set(row) == {"name", "kind", "text", "terms", "sources"} and words["row"][row["name"]]
            assert isinstance(row["text"], str) and all(isinstance(term, str) for term in row["terms"].values())
            assert row["text"] in words["text"].get(row["name"], {row["text"]})
            assert row["kind"] is None or row["kind"] in unit
            assert fill(words["working"][row["name"]], row["terms"])
            assert row["sources"] or row["name"] == "leg"  # a division
            assert set(row["sources"]) <= set(reckoners.FORMULAS[page])
        for found in answer["cautions"]:
            assert found["level"] in ("stop", "caution")
            assert fill(words["caution"][found["code"]], found)


@pytest.mark.parametrize(("page", "changes"), SITUATIONS, ids=[f"{page} {changes}" for page, changes in SITUATIONS])
def test_no_fact_is_idle(run, page, changes):
    """What is handed to a page's sentence is told in it or in its label."""
    answer = ask(run, page, **changes)
    told = gaps(TOLD["page"][page]["label"])
    for name in (answer["sum"], *(TOLD["told"].keys() & {page, f"{page}_none"})):
        told |= gaps(TOLD["told"][name])
    assert set(answer["facts"]) <= told


def test_no_word_is_idle(run):
    """Every sentence, figure, working and caution in the words is met in one of the situations, and every source."""
    met = {"told": set(), "row": set(), "caution": set()}
    sources = {page: set() for page in reckoners.PAGES}
    for page, changes in SITUATIONS:
        answer = ask(run, page, **changes)
        met["told"].add(answer["sum"])
        met["row"].update(row["name"] for row in answer["rows"])
        met["caution"].update(called_to_mind(answer))
        for row in answer["rows"]:
            sources[page].update(row["sources"])
    assert met == {section: set(TOLD[section]) for section in met}
    assert set(TOLD["working"]) == met["row"]
    assert sources == {page: set(names) for page, names in reckoners.FORMULAS.items()}
