"""A connection of a building and a foam eductor: the whole answer, worked by hand."""
from tests.unit.supply.reckoned import ask
from tests.unit.supply.test_source_whole import figure


def feed(coefficient, flow, friction, text):
    return figure("feed", "pressure", text, ["friction", "parallel"], coefficient=coefficient, hundreds_flow=flow, hundreds_length="1", friction=friction)


def test_a_standpipe_fed_by_two_engines(run):
    """65 psi at an outlet 300 ft up, 130.2 psi, 10 for bends, 0.374 x 5² x 3 = 28.05 in a 4 in riser (handbooks, from memory): 233.25.

    Two 3 in lines, a quarter of C 0.677, take 4.23 more: 237.48, past their 200. 100 ft of 4.5 in between the engines take 2.5, so each adds
    (237.48 + 2.5 - 50) / 2 = 94.99. Riser and lines hold 195.8 + 73.4 gal, 0.539 min. A valve that is set to 60 gives no 65.
    """
    entries = {"by": "height", "climb": "300", "riser": "4", "allowance": "10", "needed": "65", "flow": "500", "length": "100", "hose": "supply-3", "lines": "2",
               "engines": "two", "between": "supply-4.5", "between_lines": "1", "between_length": "100", "supply": "50", "limit": "150", "device": "set", "setting": "60"}
    assert ask(run, "connection", **entries) == {
        "sum": "two_engines", "figure": {"kind": "pressure", "text": "237"}, "facts": {"connection": "233", "first": "145", "intake": "142"},
        "rows": [
            figure("pump", "pressure", "237", ["connection"], connection="233.25", friction="4.23", pump="237.48"), feed("0.169", "5", "4.23", "4"),
            figure("at_connection", "pressure", "233", ["connection", "allowance"], needed="65", system="10", riser="28.05", elevation="130.2", connection="233.25"),
            figure("head", "pressure", "130", ["elevation"], height="300", elevation="130.2"),
            figure("riser", "pressure", "28", ["riser"], coefficient="0.374", hundreds_flow="5", hundreds_length="3", friction="28.05"),
            figure("fill", "time", "0.5", ["relay_fill"], held="269.28", flow="500", minutes="0.539"),
            figure("series_first", "pressure", "145", ["joint"], intake="50", each="94.99", first="144.99"),
            figure("series_intake", "pressure", "142", ["joint", "friction"], first="144.99", friction="2.5", intake="142.49"),
            figure("series_second", "pressure", "237", ["joint"], intake="142.49", each="94.99", pump="237.48")],
        "cautions": [{"level": "stop", "code": "device_low", "amount": "60", "limit": "65"}, {"level": "stop", "code": "hose_above_test_pressure", "amount": "237", "limit": "200"}],
        "picture": {"pump": "237", "connection": "233", "hoses": 2, "outlet": "65", "height": "300", "flow": "500", "length": "100"}}


def test_a_standpipe_by_its_sign(run):
    """Ten floors are 50 psi, 115 ft of water; 100 + 25 + 50 = 175 are needed where the sign has 120; 0.2 x 6² in the feed; two inlets are planned for 500 gpm."""
    assert ask(run, "connection", storey="11", flow="600", sign="120") == {
        "sum": "standpipe", "figure": {"kind": "pressure", "text": "127"}, "facts": {"connection": "120"},
        "rows": [
            figure("pump", "pressure", "127", ["connection"], connection="120", friction="7.2", pump="127.2"), feed("0.2", "6", "7.2", "7"),
            figure("at_sign", "pressure", "120", ["connection"], sign="120"), figure("floors", "pressure", "50", ["floors"], floor="11", each="5", elevation="50")],
        "cautions": [{"level": "caution", "code": "sign_low", "amount": "120", "limit": "175"}, {"level": "caution", "code": "more_inlets", "flow": "600", "limit": "500"}],
        "picture": {"pump": "127", "connection": "120", "hoses": 2, "outlet": "100", "height": "115", "flow": "600", "length": "100"}}


def test_sprinklers(run):
    """150 psi (as NFPA 13E is quoted), and 0.2 x 2.5² in the feed."""
    assert ask(run, "connection", system="sprinkler") == {
        "sum": "sprinkler", "figure": {"kind": "pressure", "text": "151"}, "facts": {"connection": "150"},
        "rows": [figure("pump", "pressure", "151", ["connection"], connection="150", friction="1.25", pump="151.25"), feed("0.2", "2.5", "1.25", "1"),
                 figure("taught", "pressure", "150", ["sprinkler"], taught="150")],
        "cautions": [], "picture": {"pump": "151", "connection": "150", "hoses": 2, "outlet": None, "height": None, "flow": "250", "length": "100"}}


def test_an_eductor(run):
    """30 gal at 3 percent of 95 gpm last 10.53 min; ten take 28.5 of 950 gal. 65 percent of 200 psi may stand behind it (common practice).

    C 15.5 at 95 gpm loses 13.989 psi in 100 ft, 20.98 in 150; the 30 psi that 100 at the nozzle leave reach 214 ft.
    """
    assert ask(run, "foam") == {
        "sum": "foam", "figure": {"kind": "time", "text": "10.5"}, "facts": {"percent": "3", "pump": "200", "flow": "95", "longest": "214"},
        "rows": [
            figure("foam_minutes", "time", "10.5", ["foam"], concentrate="30", flow="95", percent="3", minutes="10.526"),
            figure("foam_needed", "volume", "29", ["foam"], wanted="10", flow="95", percent="3", needed="28.5"),
            figure("foam_water", "volume", "922", ["foam"], wanted="10", flow="95", needed="28.5", water="921.5"),
            figure("eductor_pump", "pressure", "200", ["friction", "elevation"], inlet="200", friction="0", elevation="0", pump="200"),
            figure("most_back", "pressure", "130", ["eductor"], inlet="200", percent="65", most="130"),
            figure("back", "pressure", "121", ["elevation"], nozzle="100", friction="20.98", elevation="0", back="120.98"),
            figure("behind", "pressure", "21", ["friction"], coefficient="15.5", hundreds_flow="0.95", hundreds_length="1.5", friction="20.98"),
            figure("longest", "length", "214", ["eductor", "friction"], most="130", nozzle="100", elevation="0", rate="13.989", longest="214.46")],
        "cautions": [],
        "picture": {"pump": "200", "inlet": "200", "back": "121", "most": "130", "nozzle": "100", "length": "150", "to_length": None, "eductors": 1,
                    "concentrate": "30", "percent": "3", "is_drawing": True}}
