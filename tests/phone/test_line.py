"""The drawing kit: thicker for a wider bore, longer for a longer hose, and no piece of a layout over another."""
import random

import pytest

from tests.phone.handset import phones
from tests.phone.sources import run_from_sources, source

SIGNS, TREE, LABELS = ("line/signs.js", "line/tree.js", "line/labels.js")


@pytest.fixture(scope="module")
def kit(browser, host):
    """Functions of the kit, called on a page of the site."""
    with phones(browser, host) as take:
        handset = take()
        run_from_sources(handset.context)
        page = handset.open("cautions/")

        def call(module, name, *arguments):
            return page.evaluate("async ([module, name, given]) => (await import(module))[name](...given)", [source(page, module), name, arguments])
        yield call


@pytest.mark.parametrize(("bore_in", "px"), [(1.75, 8), (2.5, 12), (3, 14), (5, 22)])
def test_thickness_of_the_usual_bores(kit, bore_in, px):
    """The four sizes of the design (THE_LINE.md) have its thicknesses."""
    assert kit(SIGNS, "thickness", bore_in) == px


def test_a_wider_bore_is_never_thinner(kit):
    """From booster line to large supply hose, each is at least as thick as the one before; a pipe of no bore is seen too."""
    px = [kit(SIGNS, "thickness", bore_in / 4) for bore_in in range(2, 33)]
    assert px == sorted(px) and px[0] >= 3
    assert kit(SIGNS, "thickness", None) >= 8


def test_length_grows_with_its_square_root(kit):
    """Of lines at the pump, 400 ft is drawn longer than 100 ft by as much as 100 ft than nothing of its root: sqrt 400 = 2 sqrt 100."""
    lines = [{"id": name, "feeder": None, "length": length_ft} for name, length_ft in (("A", 100), ("B", 400), ("C", 900))]
    pieces = kit(TREE, "tree", lines, {"room": 20, "least": {"joint": 4, "end": 4}})["pieces"]
    drawn = [pieces[name]["to"] - 4 for name in "ABC"]
    assert drawn == pytest.approx([drawn[0], 2 * drawn[0], 3 * drawn[0]])
    assert pieces["C"]["to"] == pytest.approx(20)


@pytest.mark.parametrize("seed", range(10))
def test_no_piece_lies_over_another(kit, seed):
    """Whatever joins whatever: on one row no two hoses share a place, each begins where the one before it ends, and each has its least."""
    chance = random.Random(seed)
    lines = [{"id": "L0", "feeder": None, "length": 50}]
    for number in range(1, chance.randrange(2, 14)):
        feeder = chance.choice([None, *lines])
        lines.append({"id": f"L{number}", "feeder": feeder and feeder["id"], "length": chance.choice([None, 0, 50, 200, 1000])})
    ordered = []

    def walk(feeder):
        for line in lines:
            if line["feeder"] == feeder:
                ordered.append(line)
                walk(line["id"])
    walk(None)
    answer = kit(TREE, "tree", ordered, {"room": 12, "least": {"joint": 4, "end": 4}})
    pieces = answer["pieces"]
    for line in ordered:
        piece = pieces[line["id"]]
        assert piece["to"] - piece["from"] >= 4 - 1e-9 and piece["to"] <= answer["wide"] + 1e-9
        if line["feeder"]:
            assert (piece["from"], piece["start"]) == (pieces[line["feeder"]]["to"], pieces[line["feeder"]]["row"])
    for one in ordered:
        for other in ordered:
            if one is not other and pieces[one["id"]]["row"] == pieces[other["id"]]["row"]:
                first, last = sorted((pieces[one["id"]], pieces[other["id"]]), key=lambda piece: piece["from"])
                assert first["to"] <= last["from"] + 1e-9


def test_text_that_has_no_room_gives_way(kit):
    """The most wanted label is written, and none over another, however large the letters."""
    labels = [{"place": 0.6, "text": "270 hose limit"}, *({"place": tick / 4, "text": str(tick * 100)} for tick in range(5))]
    for width in (20, 10):
        written = [label["text"] for label in kit(LABELS, "withRoom", labels, width)]
        assert written[0] == "270 hose limit"
    assert "300" not in written
