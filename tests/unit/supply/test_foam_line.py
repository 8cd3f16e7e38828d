"""The eductor's whole hose line, against what is printed of it."""
import pytest

from tests.unit.supply.reckoned import ask, called_to_mind, row

LINE = {"stands": "line", "flow": "125", "length": "150", "to_hose": "supply-3-on-2.5"}


def test_a_printed_line(run):
    """A magazine on foam operations, part 4 (2011): 400 ft of 3 in, 125 gpm, 200 psi at the eductor, prints 210 psi: 10 for a loss that is 5.

    By hand, C 0.8 of 3 in hose: 0.8 x 1.25^2 x 4 = 5 psi.
    """
    told = ask(run, "foam", **LINE)
    assert (row(told, "to_eductor")["text"], row(told, "eductor_pump")["text"]) == ("5", "205")
    assert abs(float(row(told, "eductor_pump")["text"]) - 210) <= 5
    # the same article's 150 ft of 1 3/4 in behind it: 15.5 x 1.25^2 x 1.5 = 36.3 psi, which a 100 psi nozzle leaves no room for
    assert row(told, "back")["terms"]["friction"] == "36.33"
    assert called_to_mind(told) == ["back_pressure", "hose_above_test_pressure", "foam_short"]  # supply hose is tested to 200 psi or more (NFPA 1962)


def test_height_on_the_way(run):
    """By hand: 50 ft up take 50 x 0.434 = 21.7 psi more of the pump, and none of the eductor's limit."""
    up = ask(run, "foam", **LINE, to_rise="50")
    assert (row(up, "eductor_pump")["text"], row(up, "back")["text"]) == ("227", row(ask(run, "foam", **LINE), "back")["text"])


@pytest.mark.parametrize(("inlet", "plate", "longest"), [("200", "130", "123"), ("160", "100", "0"), ("145", "95", "0")])
def test_the_plate_comes_first(run, inlet, plate, longest):
    """A maker's manual (2021): 200 psi types stop above 130, 160 above 100, 145 above 95; with a 100 psi nozzle only the first has hose left, by hand 123.9 ft: 123 on the page, as the next foot would stop it."""
    told = ask(run, "foam", flow="125", inlet=inlet, plate=plate)
    assert (row(told, "most_back_plate")["text"], row(told, "longest")["text"], row(told, "eductor_pump")["text"]) == (plate, longest, inlet)


@pytest.mark.parametrize(("nozzle_gpm", "codes"), [("", []), ("95", []), ("99", []), ("125", ["nozzle_large"]), ("60", ["nozzle_small"])])
def test_nozzle_matches_the_eductor(run, nozzle_gpm, codes):
    """Eductors flow 60, 95, 125 or 250 gpm and the nozzle must match, or flow more at a cost of reach and mixture (a magazine, 2011; a maker's manual, 2021)."""
    assert called_to_mind(ask(run, "foam", nozzle_flow=nozzle_gpm)) == codes


@pytest.mark.parametrize("task", ["hand", "spill"])
@pytest.mark.parametrize(("drawing", "dead"), [({"length": "214"}, {"length": "215"}), ({"nozzle_flow": "125"}, {"nozzle_flow": "60"})])
def test_no_number_where_the_eductor_draws_nothing(run, task, drawing, dead):
    """Past its back pressure (130 psi at 214 ft, by hand 30 / 13.989), or with a nozzle too small, an eductor draws nothing: no time and no flow of foam stands there. What a spill of
    40 by 30 ft asks still stands: at 0.10, 120 gpm, and 3 % of it for 10 min 36 gal."""
    assert ask(run, "foam", task=task, **drawing)["figure"]["text"] is not None
    told = ask(run, "foam", task=task, **dead)
    assert (told["figure"]["text"], told["sum"], told["facts"]) == (None, *{"hand": ("foam_none", {}), "spill": ("foam_spill_none", {"least": "120", "least_needed": "36"})}[task])
    assert "foam_minutes" not in [each["name"] for each in told["rows"]]


def test_several_on_one_pump(run):
    """By hand: four of 125 gpm are 500 gpm at the same 200 psi, which a 750 gpm pump promises to 525 (70 % at 200, study cards) and no further; 15 gpm of concentrate."""
    four = ask(run, "foam", eductors="4", flow="125", length="100", rated="750")
    assert (four["facts"]["flow"], four["facts"]["pump"], row(four, "foam_minutes")["text"]) == ("500", "200", "2.0")
    assert "eductor_past_pump" not in called_to_mind(four)
    five = ask(run, "foam", eductors="5", flow="125", length="100", rated="750")
    assert [each for each in five["cautions"] if each["code"] == "eductor_past_pump"] == [
        {"code": "eductor_past_pump", "level": "caution", "flow": "625", "amount": "200", "limit": "178"}]  # 150 + 125 / 225 x 50 below 200
    assert "past_capacity" in called_to_mind(ask(run, "foam", eductors="7", flow="125", length="100", rated="750"))


def test_hose_to_the_eductor_has_its_limit(run):
    """By hand, C 2: 250 gpm in 550 ft of 2 1/2 in lose 68.75 psi: 269, under nine tenths of the 300 that attack hose is tested to at least (NFPA 1962); 571 ft make 271."""
    just, past = [ask(run, "foam", stands="line", to_length=length, flow="250", hose="attack-2.5", length="0") for length in ("550", "571")]
    assert (row(just, "eductor_pump")["text"], row(past, "eductor_pump")["text"]) == ("269", "271")
    assert "hose_above_working_pressure" in called_to_mind(past)
    assert "hose_above_working_pressure" not in called_to_mind(just)


def test_the_hose_behind_has_its_coefficient(run):
    """By hand: 15.5 x 0.95^2 x 1.5 is 20.98 psi; which coefficient it is stands in its own row, whose source is that of the hose."""
    told = row(ask(run, "foam"), "behind")
    assert (told["terms"], list(told["sources"])) == ({"coefficient": "15.5", "hundreds_flow": "0.95", "hundreds_length": "1.5", "friction": "20.98"}, ["friction"])
