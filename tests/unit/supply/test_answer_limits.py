"""What the water and foam pages call to mind: silent at a limit, said just past it, and with which figures."""
import pytest

from tests.unit.supply.reckoned import ask, called_to_mind

STILL = {"length": "0", "rise": "0"}  # a supply hose that takes nothing
# water that boils as it stands there, and a suction hose that takes nothing
BOILING = {"suction": [{"size_in": 6, "gpm": 1000, "loss_20ft_ft": 0, "add_10_ft": 0}], "water_f": ["212"]}


@pytest.mark.parametrize(
    ("page", "at", "past", "code"),
    [
        # the page's own limits: 20 psi to leave in the main, a drop of a tenth (common practice)
        ("hydrant", {"residual": "20", **STILL, "wanted": "250"}, {"residual": "19.9", **STILL, "wanted": "250"}, "intake_below_floor"),
        ("hydrant", {"residual": "20"}, {"residual": "19.9"}, "residual_below_floor"),
        ("hydrant", {"static": "60", "residual": "54"}, {"static": "60", "residual": "54.1"}, "drop_small"),
        # NFPA 1901, from memory: a tank from 500 gal gives its pump 500 gpm, a smaller one 250
        ("tank", {"tank": "500", "flow": "500"}, {"tank": "500", "flow": "500.5"}, "tank_to_pump"),
        ("tank", {"tank": "499.5", "flow": "250"}, {"tank": "499.5", "flow": "250.5"}, "tank_to_pump"),
        # study cards: 14.7 ft is dependable, 20 ft the last with a figure; practical is two thirds of 33.3 ft (a study's table)
        ("draft", {"lift": "14.7"}, {"lift": "14.8"}, "above_dependable"),
        ("draft", {"lift": "22.1"}, {"lift": "22.3"}, "beyond_practical"),
        # at 5,000 ft and 80 F: two thirds of 27.1 ft (the same table)
        ("draft", {"lift": "18", "altitude": "5000", "water": "80"}, {"lift": "18.2", "altitude": "5000", "water": "80"}, "beyond_practical"),
        # what goes beyond 2,000 ft counts: 30.1 - 26.7 of the same table are 3.4 ft at 5,000
        ("draft", {"lift": "11.2", "altitude": "5000"}, {"lift": "11.5", "altitude": "5000"}, "above_dependable"),
        ("draft", {"lift": "14.7", "altitude": "2000", "water": "90"}, {"lift": "14.8", "altitude": "2000", "water": "90"}, "above_dependable"),
        ("draft", {"lift": "20"}, {"lift": "20.1"}, "no_figure"),
        ("draft", {"flow": "1250"}, {"flow": "1250.5"}, "past_what_is_left"),
        # 13.4 ft of lift and hose are 11.86 inHg, 10 ft of lift are 8.85; a panel's gauge is read to 2 inHg (common practice)
        ("draft", {"vacuum": "13.8"}, {"vacuum": "13.9"}, "vacuum_high"),
        ("draft", {"vacuum": "6.9"}, {"vacuum": "6.8"}, "vacuum_low"),
        # 8 psi per 100 ft: 20 + 160 is nine tenths of the 200 psi that supply hose is tested to, 20 + 180 is all of them
        ("relay", {"most": "250", "distance": "1999"}, {"most": "250", "distance": "2000"}, "hose_above_working_pressure"),
        ("relay", {"most": "250", "distance": "2249"}, {"most": "250", "distance": "2250"}, "hose_above_test_pressure"),
        # 150 psi net is what a pump is rated at
        ("relay", {"rated": "1000", "distance": "1875"}, {"rated": "1000", "distance": "1880"}, "past_rating"),
        ("relay", {"rated": "1000", "distance": "100"}, {"rated": "999", "distance": "100"}, "past_capacity"),
        # downhill the test is of the shut line: the same 20 + 180, whatever the height gave while it flowed
        ("relay", {"most": "250", "distance": "2249", "climb": "-100"}, {"most": "250", "distance": "2250", "climb": "-100"},
         "hose_above_test_pressure"),
        # 1,996.4 ft of hose lose 159.712 psi, and 368 ft of height give it back
        ("relay", {"floor": "0", "distance": "1996.4", "climb": "-368"}, {"floor": "0", "distance": "1996.4", "climb": "-368.1"},
         "slope_carries"),
        ("joint", {"limit": "130"}, {"limit": "129.5"}, "second_intake_over"),
        ("joint", {"before": "179.5"}, {"before": "180"}, "between_above_working_pressure"),
        ("joint", {"before": "199.5"}, {"before": "200"}, "between_above_test_pressure"),
        ("joint", {"supply": "20"}, {"supply": "19.5"}, "first_supply_low"),
        # 1 psi lost between the two
        ("joint", {"way": "dual", "supply": "21"}, {"way": "dual", "supply": "20.5"}, "second_supply_low"),
        ("joint", {"wanted": "129.5"}, {"wanted": "129"}, "nothing_to_add"),  # what is there already need not be added
        ("joint", {"wanted": "379"}, {"wanted": "379.5"}, "net_past_rating"),  # 250 psi net
        # five tankers keep up what the fill site passes, 2,250 gal in 5 min
        ("shuttle", {"tankers": "5", "wanted": "450"}, {"tankers": "4", "wanted": "450"}, "short_of_wanted"),
        ("shuttle", {"tankers": "5", "wanted": "450"}, {"tankers": "5", "wanted": "450.5"}, "sites_too_slow"),
        ("shuttle", {"tankers": "4"}, {"tankers": "5"}, "held_at_fill"),
        ("foam", {**STILL, "nozzle": "130"}, {**STILL, "nozzle": "130.5"}, "back_pressure"),  # 65 % of 200 psi
        ("foam", {**STILL, "nozzle": "100", "plate": "100"}, {**STILL, "nozzle": "100.5", "plate": "100"}, "back_pressure"),
        ("foam", {"flow": "100"}, {"flow": "100.5"}, "foam_short"),  # 3 gpm of concentrate for 10 min are the 30 gal
    ],
)
def test_limit(run, page, at, past, code):
    """At the limit nothing is said of it, just past it it is."""
    assert code not in called_to_mind(ask(run, page, **at))
    assert code in called_to_mind(ask(run, page, **past))


@pytest.mark.parametrize(
    ("page", "changes", "cautions"),
    [
        ("hydrant", {"residual": "62"}, [{"code": "drop_small", "level": "caution", "amount": "4.6", "limit": "10"}]),  # 3 of 65
        ("hydrant", {"residual": "15", "wanted": "100"}, [{"code": "residual_below_floor", "level": "stop", "amount": "15", "limit": "20"}]),
        ("draft", {"lift": "21", "flow": "500"}, [{"code": "no_figure", "level": "caution", "amount": "21.0", "limit": "20.0"}]),
        ("draft", {"lift": "16", "flow": "500"}, [{"code": "above_dependable", "level": "caution", "amount": "16.0", "limit": "14.7"}]),
        ("draft", {"lift": "26", "flow": "500"}, [{"code": "beyond_practical", "level": "stop", "amount": "26.0", "limit": "22.2"}]),
        ("draft", {"flow": "1300"}, [{"code": "past_what_is_left", "level": "caution", "amount": "1300", "limit": "1250"}]),
        # NFPA 1901, from memory: 6 in goes with 1,250 gpm
        ("draft", {"flow": "500", "suction": "5"}, [{"code": "suction_small", "level": "caution", "amount": "1250", "limit": "6.00", "needed": "1"}]),
        ("draft", {"vacuum": "18"}, [{"code": "vacuum_high", "level": "caution", "amount": "18", "limit": "12"}]),
        ("draft", {"vacuum": "5"}, [{"code": "vacuum_low", "level": "caution", "amount": "5", "limit": "9"}]),
        # 2 psi x 10^2 x 30 = 6,000 psi of friction, 180 - 20 a leg: 38 legs of 78.9 ft
        ("relay", {"hose": "attack-2.5"}, [{"code": "legs_short", "level": "caution", "amount": "79"}]),
        ("relay", {"climb": "-800"}, [
            {"code": "hose_above_test_pressure", "level": "stop", "amount": "260", "limit": "200"},  # 347.2 - 240 below, 20 + 240 shut
            {"code": "slope_carries", "level": "caution"}]),
        ("shuttle", {"tankers": "7", "wanted": "400"}, [{"code": "held_at_fill", "level": "caution", "amount": "14.5", "useful": "5"}]),
        ("shuttle", {"tankers": "2"}, [
            {"code": "short_of_wanted", "level": "caution", "amount": "220", "limit": "300", "needed": "3"}]),
        ("foam", {"concentrate": "20"}, [
            {"code": "foam_short", "level": "caution", "amount": "20", "needed": "29", "wanted": "10.0"}]),
    ],
)
def test_just_these(run, page, changes, cautions):
    """What is said, with its figures, and nothing beside it; worked by hand."""
    assert ask(run, page, **changes)["cautions"] == cautions


@pytest.mark.parametrize(("residual", "text"), [("0", "0"), ("0.6", "1")])
def test_the_last_pressure_is_told(run, residual, text):
    """An intake that gets next to nothing, or just nothing, shows it; only one below has no figure."""
    answer = ask(run, "hydrant", residual=residual, floor="0", wanted="250", **STILL)
    assert answer["rows"][-1]["text"] == text


def test_water_that_boils_where_it_stands(run):
    """At 15,000 ft the air presses 8.3 psi, and water at 212 F boils at 14.7: not even level with it is a pump safe."""
    answer = ask(run, "draft", shelf=BOILING, water="212", altitude="15000", lift="0", suction="6")
    assert answer["cautions"][0] == {"code": "beyond_air", "level": "stop", "amount": "0.0", "limit": "0.0"}


def test_a_slope_that_nearly_carries(run):
    """By hand: 434 ft lose 34.72 psi and 79 ft give 34.29 back: 0.43 psi is still to be pumped."""
    assert called_to_mind(ask(run, "relay", floor="0", distance="434", climb="-79")) == []


def test_where_a_reading_and_what_is_past_lifting_come_from(run):
    """A gauge reading stands on the inch of mercury and the table of suction hose; which sum is told goes by the lift."""
    reading = [each for each in ask(run, "draft", vacuum="12")["rows"] if each["name"] == "reading"][0]
    assert reading["sources"] == ["vacuum", "suction_loss"]
    assert [ask(run, "draft", lift=lift, flow="500")["sum"] for lift in ("20", "22", "23")] == ["draft", "draft_none", "draft_beyond"]


@pytest.mark.parametrize("shown", ["US", "SI", "bar", "imperial"])
@pytest.mark.parametrize(("page", "stopped", "code", "fact", "name"), [
    *[("foam", {"flow": flow, "length": "2000@US"}, "back_pressure", "longest", "length") for flow in ("60@US", "95@US", "125@US", "250@US")],
    *[("hydrant", {"length": length, "wanted": "20000@US"}, "intake_below_floor", "most", "wanted") for length in ("100@US", "500@US", "1500@US")],
])
def test_what_a_stop_allows_is_taken(run, shown, page, stopped, code, fact, name):
    """The hose or flow that a stop names as the most stops no longer, typed in as it is read: rounded to the next whole figure it would."""
    family = "metric" if shown in ("SI", "bar") else "customary"
    allowed = [each for each in ask(run, page, shown, family, **stopped)["cautions"] if each["code"] == code][0][fact]
    assert code not in called_to_mind(ask(run, page, shown, family, **{**stopped, name: f"{allowed}@{shown}"}))
