"""One answer to a leak hunt: the hunt, the list of plugs, the last minute and the inputs, as each is by itself."""
from site_src.content import data, units

LEAKS = data.load("diagnose/water_loss")
SHOWN_IN = units.shown_in("SI")
RUNS = [{"shut": [], "from": "22@US", "to": "12@US"}]
LAST = {"shut": [], "from": "22@US", "to": "20@US"}


def asked(run, last):
    return run("diagnosis.leak_page", "answer", parts=LEAKS["part"], plugs=[{"id": "relief", "first": True}], runs=RUNS, last=last,
               listed=["relief"], opened=[], role="operator", texts=["20@US", ""], units=SHOWN_IN)


def test_answer(run):
    """An inch of mercury is 3.3864 kPa: ten lost are 33.86, two 6.77 (6.773), and 20 stand in the input as 68."""
    answer = asked(run, LAST)
    assert answer["hunt"] == run("diagnosis.leak", "hunt", parts=LEAKS["part"], runs=RUNS, role="operator", units=SHOWN_IN)
    assert answer["hunt"]["losses"] == ["33.86"] and answer["last_loss"] == "6.77"
    assert answer["left"] == {"next": ["relief"], "open": ["relief"]}
    assert answer["shown"] == ["68", ""]


def test_before_the_last_minute(run):
    """Without a last minute nothing was lost in it."""
    assert asked(run, None)["last_loss"] is None
