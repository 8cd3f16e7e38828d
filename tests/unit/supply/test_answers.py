"""The water and foam pages: entries as typed in, answers as read out, every word there, nothing but a CalcError out."""
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.base.errors import CalcError
from site_src.content import data, reckoners, units
from tests.unit.supply.reckoned import TOLD, ask, row

US = units.shown_in("US")
SYSTEMS = [row["id"] for row in units.systems()]
HOSTILE = ("", "@US", "abc", "-1", "1e9", "999999999", "1,000", "nan", "5@none", "@", "0", None, 7, [], {}, True)


@pytest.mark.parametrize(
    ("page", "changes", "figure", "sum_name", "rows"),
    [
        # by hand: 250 x (45 / 7)^0.54 = 682.8; 65 - 7 x 2^1.85 - 0.08 x 25 = 37.8 at the intake
        ("hydrant", {}, "683", "hydrant", {"class": "B", "more": "1", "percentage": "2", "squaring": "1", "intake": "38"}),
        # by hand: 29.84 x 0.9 x 6.25 x 5 = 839.25, x (45 / 15)^0.54 = 1519
        ("hydrant", {"known": "pitot", "residual": "50"}, "1519", "hydrant_none", {"test": "839", "class": "AA", "first_digit": "1", "more": "0"}),
        # by hand: 29.84 x 0.9 x 16 x 5 x 0.83 = 1783.2, x 3^0.54 = 3227.4
        ("hydrant", {"known": "pitot", "residual": "50", "outlet": "4@US"}, "3227", "hydrant_none", {"test_large": "1783"}),
        # 60 - 40: a third of static, over three times its first digit, and 60 - 80 with two lines: no rule allows one more
        ("hydrant", {"static": "60", "residual": "40"}, "363", "hydrant_none", {"percentage": "0"}),  # 250 x 2^0.54 = 363.5
        # 80 - 75 is 6 %: three, three and two more; the 0.54 power leaves 250 x (20 / 5)^0.54 = 528.5 at 60 psi: one more
        ("hydrant", {"static": "80", "residual": "75", "floor": "60"}, "529", "hydrant", {"more": "1", "squaring": "2"}),
        ("hydrant", {"static": "80", "residual": "75"}, "957", "hydrant", {"more": "2"}),  # 250 x 12^0.54
        ("tank", {}, "4.0", "tank", {"usable": "600"}),           # 750 x 0.8 / 150
        ("tank", {"usable": "100"}, "5.0", "tank", {}),
        ("shuttle", {}, "329", "shuttle", {"road": "11.5", "cycle": "20.5", "needed": "3"}),  # see test_relay
        ("shuttle", {"way": "timed"}, "321", "shuttle", {"cycle": "21.0"}),  # 3 x 2250 / 21
        ("relay", {}, "140", "relay", {"pumpers": "3", "leg": "1500", "fill": "3.1"}),  # see test_relay
        ("relay", {"lines": "2"}, "80", "relay", {"pumpers": "2"}),  # 0.02 x 100 x 30 + 20
        # by hand: 130 - 0.08 x 25 x 0.5 = 129; 250 - 129 = 121; dual: 45 - 1 = 44
        ("joint", {}, "129", "joint", {"second_adds": "121", "second_shut": "130"}),
        ("joint", {"way": "dual", "before": "65"}, "44", "joint_dual", {"second_adds": "206", "second_shut": "65"}),
        ("draft", {"lift": "15"}, "875", "draft", {"counted": "15.0", "loss": "3.4", "expected": "16"}),  # 0.7 x 1250; 18.4 / 1.13
        ("draft", {"lift": "21"}, None, "draft_none", {}),
        ("draft", {"lift": "23"}, None, "draft_beyond", {"practical": "22.2"}),  # two thirds of 33.3 ft
        # rated at up to 10 ft of lift, 2,000 ft and 90 F: all of it is left there
        ("draft", {"altitude": "2000", "water": "90"}, "1250", "draft", {"counted": "10.0"}),
        ("foam", {}, "10.5", "foam", {"foam_needed": "29", "most_back": "130", "back": "121", "longest": "214"}),  # see test_draft
    ],
)
def test_answer(run, page, changes, figure, sum_name, rows):
    """Each page reads out the hand-worked figures."""
    answer = ask(run, page, **changes)
    assert (answer["figure"]["text"], answer["sum"]) == (figure, sum_name)
    for name, text in rows.items():
        assert row(answer, name)["text"] == text, name


def test_more_lines_are_of_the_flow_of_the_test(run):
    """A test of 500 gpm from 70 to 55 psi speaks of lines of 500 gpm: 958 at 20 psi, by hand 500 x (50 / 15)^0.54, leave less than one more."""
    answer = ask(run, "hydrant", static="70", residual="55", flowing="500")
    assert (answer["sum"], answer["facts"]["safe"], answer["facts"]["test"], answer["figure"]["text"]) == ("hydrant_none", "0", "500", "958")
    assert "{test} {u_flow}" in data.words("water")["told"]["hydrant_none"]


@pytest.mark.parametrize(
    ("page", "changes", "level", "code", "amount"),
    [
        ("hydrant", {"residual": "15"}, "stop", "residual_below_floor", "15"),
        ("hydrant", {"residual": "62"}, "caution", "drop_small", "4.6"),      # by hand: 3 of 65
        ("hydrant", {"wanted": "700"}, "stop", "intake_below_floor", None),   # 65 - 7 x 2.8^1.85 - 3.92 = 14.1
        ("tank", {"tank": "400", "flow": "300"}, "caution", "tank_to_pump", "300"),
        ("shuttle", {"tankers": "7"}, "caution", "held_at_fill", "14.5"),     # 35 - 20.5
        ("shuttle", {"tankers": "2"}, "caution", "short_of_wanted", "220"),   # 2 x 2250 / 20.5 = 219.5
        ("shuttle", {"wanted": "500"}, "caution", "sites_too_slow", "329"),
        ("shuttle", {"tankers": "6", "fill": "2", "distance": "1"}, "caution", "held_at_dump", "13.3"),  # 24 - 10.7
        ("draft", {"lift": "16"}, "caution", "above_dependable", "16.0"),
        ("draft", {"lift": "14.8"}, "caution", "above_dependable", "14.8"),   # handbook study cards: 14.7 ft is dependable
        ("draft", {"lift": "26"}, "stop", "beyond_practical", "26.0"),
        ("draft", {"flow": "1300"}, "caution", "past_what_is_left", "1300"),
        ("draft", {"lift": "20", "suction": "4"}, "stop", "beyond_air", "40.0"),  # 20 + 5.0 x (1000 / 500)^2
        ("draft", {"vacuum": "18"}, "caution", "vacuum_high", "18"),          # 13.4 / 1.13 = 11.9
        ("draft", {"vacuum": "5"}, "caution", "vacuum_low", "5"),             # 10 / 1.13 = 8.8
        ("relay", {"most": "250", "distance": "2800"}, "stop", "hose_above_test_pressure", "244"),  # 20 + 224, over 200
        ("relay", {"rated": "1000", "most": "185", "distance": "2000"}, "caution", "past_rating", "160"),
        ("relay", {"rated": "750"}, "caution", "past_capacity", "120"),
        ("relay", {"climb": "-800"}, "caution", "slope_carries", None),       # 347 psi of height beats the friction
        ("joint", {"limit": "125"}, "stop", "second_intake_over", "130"),
        ("joint", {"before": "210"}, "stop", "between_above_test_pressure", "210"),    # supply hose: 200 psi
        ("joint", {"supply": "15"}, "stop", "first_supply_low", "15"),
        ("joint", {"way": "dual", "supply": "20"}, "stop", "second_supply_low", None),  # 20 - 1 = 19
        ("joint", {"wanted": "100"}, "caution", "nothing_to_add", "129"),
        ("joint", {"wanted": "400"}, "caution", "net_past_rating", "271"),    # 400 - 129
        ("foam", {"length": "250"}, "stop", "back_pressure", "135"),          # 100 + 13.989 x 2.5
        ("foam", {"concentrate": "20"}, "caution", "foam_short", "20"),
    ],
)
def test_caution(run, page, changes, level, code, amount):
    """What is to be minded is told, with its figure."""
    found = {each["code"]: each for each in ask(run, page, **changes)["cautions"]}
    assert (found[code]["level"], found[code].get("amount")) == (level, amount)


def test_no_pressure_below_none(run):
    """Where the hose could not bring the flow at all, the intake shows no figure."""
    assert row(ask(run, "hydrant", wanted="2000"), "intake")["text"] == "\u2013"  # by hand: 65 - 7 x 8^1.85 is far below none


@pytest.mark.parametrize("page", reckoners.PAGES)
def test_opening_calls_nothing_to_mind(run, page):
    """A page opens on figures that are in order."""
    assert ask(run, page)["cautions"] == []


@pytest.mark.parametrize(
    ("page", "changes", "field", "code"),
    [
        ("hydrant", {"residual": "65"}, "residual", "not_below_static"),
        # the same pressure typed in two units, which a float tells apart by its last bit
        ("hydrant", {"static": "450@SI", "residual": "4.5@bar"}, "residual", "not_below_static"),
        ("hydrant", {"floor": "70"}, "floor", "not_below_static"),
        ("hydrant", {"known": "pitot", "outlet": "4.5@US", "pitot": "1"}, "pitot", "below_table"),
        ("hydrant", {"known": "pitot", "outlets": "1.5"}, "outlets", "not_whole"),
        ("hydrant", {"known": "gauge"}, "known", "unknown"),
        ("hydrant", {"hose": "none"}, "hose", "unknown"),
        ("tank", {"tank": "0"}, "tank", "out_of_range"),
        ("draft", {"lift": "-1"}, "lift", "out_of_range"),
        ("draft", {"length": "5"}, "length", "out_of_range"),
        ("relay", {"most": "20"}, "most", "not_above_residual"),
        ("relay", {"distance": "50000", "flow": "3000"}, "distance", "too_many_pumpers"),
        ("shuttle", {"fill": ""}, "fill", "empty"),
        ("foam", {"plate": "200"}, "plate", "not_below_inlet"),
        ("foam", {"flow": "1.000"}, "flow", "thousands_or_decimals"),
    ],
)
def test_refusal(run, page, changes, field, code):
    """A bad entry is refused by its own name, and the page has the words."""
    with pytest.raises(CalcError) as refusal:
        ask(run, page, **changes)
    assert (refusal.value.field, refusal.value.code) == (field, code)
    assert code in {**data.words("site")["refusal"], **TOLD["refusal"]}


def test_bounds_in_the_shown_units(run):
    """A bound is told in the units of the page."""
    with pytest.raises(CalcError) as refusal:
        ask(run, "draft", shown="SI", lift="20@SI")
    assert refusal.value.facts == {"least": "0", "most": "12.1"}  # by hand: 40 ft x 0.3048 = 12.19, and 12.2 would be refused


@pytest.mark.parametrize("page", reckoners.PAGES)
@pytest.mark.parametrize("bad", HOSTILE, ids=repr)
def test_hostile_entries(run, page, bad):
    """Whatever stands in an entry, an answer or a CalcError comes back."""
    for field in reckoners.fields(page):
        try:
            ask(run.unheld, page, **{field["name"]: bad})
        except CalcError as error:
            assert error.field and error.code


@pytest.mark.parametrize("entries", [None, [], "", 3, {}])
@pytest.mark.parametrize("page", reckoners.PAGES)
def test_no_entries(run, page, entries):
    """What is no set of entries is refused."""
    with pytest.raises(CalcError):
        run(f"supply.{page}_answer", "answer", entries=entries, shelf=reckoners.shelf(page), units=US)


@pytest.mark.parametrize("page", reckoners.PAGES)
def test_every_word_is_there(page):
    """Every entry and standing caution of a page has its words."""
    for field in reckoners.fields(page):
        assert field["name"] in TOLD["field"] or f"{page}_{field['name']}" in TOLD["field"]
        assert field.get("group", "to_pump") in TOLD["group"]
    assert len(TOLD["standing"][page]) >= 3


def test_no_refusal_is_idle():
    """Every refusal in the words is one that calc can give."""
    code = "".join(path.read_text(encoding="utf-8") for path in (data.FOLDER.parent.parent / "calc").rglob("*.py"))
    assert [name for name in TOLD["refusal"] if f'"{name}"' not in code] == []


@settings(deadline=None, max_examples=25)
@given(shown=st.sampled_from(SYSTEMS), page=st.sampled_from(reckoners.PAGES), family=st.sampled_from(["customary", "metric"]))
def test_same_in_every_system(run, shown, page, family):
    """The same entries are the same physics, whatever they are read in."""
    here, there = ask(run, page, shown=shown, family=family), ask(run, page, family=family)
    kind = here["figure"]["kind"]
    factor = {name: units.baked()[name][kind]["factor"] for name in (shown, "US")}
    one, other = (float(answer["figure"]["text"]) / factor[name] for answer, name in ((here, shown), (there, "US")))
    scale = units.baked()[shown][kind]
    finest = scale["set"] if page == "relay" and "set" in scale else 10 ** -scale["places"]  # what a relay sets
    assert one == pytest.approx(other, abs=0.51 * finest / factor[shown] + 0.51 * 10 ** -units.baked()["US"][kind]["places"])


def test_a_hydrant_below_its_class(run):
    """Classes are given at 20 psi, under 40 psi static at half of it (NFPA 291, from memory): a hydrant that stands at 20 or less has none."""
    weak = ask(run, "hydrant", static="20", residual="15", floor="10")
    assert not {"class", "class_low"} & {each["name"] for each in weak["rows"]}
    assert row(ask(run, "hydrant", static="21", residual="15", floor="10"), "class_low")["terms"]["at"] == "10.5"
    assert row(ask(run, "hydrant", static="40", residual="30", floor="10"), "class")["text"] == "C"


def test_a_relay_within_its_rating(run):
    """By hand: 140 on the gauge less 20 at the intake is 120 net; a 1,500 gpm pump promises 150 and more at 1,000."""
    assert ask(run, "relay", rated="1500")["cautions"] == []


def test_no_entries_to_count(run):
    """A count of what is no set of entries is refused."""
    with pytest.raises(CalcError) as refusal:
        run("base.readout", "count", entries=["2"], name="lines", least=1, most=4)
    assert (refusal.value.field, refusal.value.code) == ("entries", "damaged")
