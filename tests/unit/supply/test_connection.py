"""A fire department connection against what is printed of standpipes and sprinklers."""
import pytest

from calc.base.errors import CalcError
from site_src.content import reckoners
from tests.unit.supply.reckoned import ask, called_to_mind, row


def pumped(run, **changes):
    """What the page says to pump, psi."""
    return float(ask(run, "connection", **changes)["figure"]["text"])


@pytest.mark.parametrize("storey", [1, 5, 10, 20, 40])
def test_a_city_s_rule(run, storey):
    """A fire trade magazine, "Overcoming Standpipe Problems": 100 psi plus 5 a floor above the first, for 100 ft of 3 1/2 in feed
    and 150 ft of 2 1/2 in with a 1 1/8 in tip; by hand 266 gpm at 50 psi, 50 + 2 x 2.66^2 x 1.5 = 71 psi at the outlet.
    """
    said = pumped(run, storey=str(storey), needed="71", flow="266", hose="supply-3.5", lines="1")
    assert said == pytest.approx(100 + 5 * (storey - 1), abs=2)


def test_height_rule(run):
    """A training community, "High-Rise Pumping": 844 ft with 100 psi at the roof is printed as 470 psi, rounded up."""
    said = pumped(run, by="height", climb="844", allowance="0", length="0")
    assert 466 <= said <= 470


def test_floors_against_height(run):
    """"Fires and Fire-Fighters" (1913), page 310: the 16th floor, about 170 ft: 80 psi by 5 a floor from the street, 73 exactly."""
    assert row(ask(run, "connection", storey="17"), "floors")["text"] == "80"
    assert row(ask(run, "connection", by="height", climb="170"), "head")["text"] == "74"  # 73.8


@pytest.mark.parametrize(("riser", "loss_psi"), [("4", 9.35), ("5", 3.15), ("6", 1.3)])
def test_riser(run, riser, loss_psi):
    """500 gpm in 100 ft of riser, handbooks' coefficients from memory; one of 230.4 ft is as tall as 100 psi."""
    terms = row(ask(run, "connection", by="height", climb="100", riser=riser, flow="500"), "riser")["terms"]
    assert float(terms["friction"]) == pytest.approx(loss_psi, abs=0.01)


def test_a_dry_riser_fills(run):
    """Geometry, by hand: 500 ft of 4 in pipe hold 326.4 gal, 1.31 min at 250 gpm."""
    filled = row(ask(run, "connection", by="height", climb="500", riser="4", length="0"), "fill")
    assert float(filled["terms"]["held"]) == pytest.approx(326.4, abs=0.1)
    assert filled["text"] == "1.3"
    assert not [each for each in ask(run, "connection")["rows"] if each["name"] == "fill"]  # its bore is not known


def test_sprinklers_without_a_sign(run):
    """150 psi at the connection where no sign asks for another (NFPA 13E as quoted by fire-code consultants); 0.8 / 4 x 2.5^2 psi in the feed."""
    assert row(ask(run, "connection", system="sprinkler"), "taught")["text"] == "150"
    assert pumped(run, system="sprinkler") == 151


@pytest.mark.parametrize("system", ["standpipe", "sprinkler"])
def test_the_sign_comes_first(run, system):
    """A posted pressure is what is held at the connection, over any rule; what the outlet lacks by it is said."""
    answer = ask(run, "connection", system=system, sign="120", length="0")
    assert answer["figure"]["text"] == "120"
    assert called_to_mind(answer) == (["sign_low"] if system == "standpipe" else [])


def test_a_set_valve_is_not_helped_by_pressure(run):
    """Common practice: a regulating valve gives its setting; less than the lines need stops, as much as they need does not."""
    assert called_to_mind(ask(run, "connection", device="set")) == ["device_unknown"]
    assert called_to_mind(ask(run, "connection", device="set", setting="99.5")) == ["device_low"]
    assert called_to_mind(ask(run, "connection", device="set", setting="100")) == []


def test_limit_of_the_building(run):
    """350 psi is the most anywhere in the pipe by NFPA 14 of the 2000s editions; hose stops long before, said beside it."""
    assert "system_over" not in called_to_mind(ask(run, "connection", needed="100", allowance="25", storey="46"))  # 225 of height: 350
    assert "system_over" in called_to_mind(ask(run, "connection", needed="101", allowance="25", storey="46"))


def test_inlets_as_planned(run):
    """Installers plan 250 gpm an inlet."""
    assert called_to_mind(ask(run, "connection", flow="500")) == []
    assert called_to_mind(ask(run, "connection", flow="501")) == ["more_inlets"]


def test_past_one_pumper(run):
    """A pump is rated to 250 psi net at the most (driver/operator study cards); of what is past it the intake must bring as much."""
    assert "in_series" not in called_to_mind(ask(run, "connection", sign="250", length="0"))
    past = [each for each in ask(run, "connection", sign="300", length="0")["cautions"] if each["code"] == "in_series"]
    assert [(each["amount"], each["limit"], each["needed"]) for each in past] == [("300", "250", "50")]


def test_what_is_not_asked_is_not_refused(run):
    """Sprinklers have no floor and no outlet: what stands in those entries does not matter."""
    assert ask(run, "connection", system="sprinkler", storey="", needed="x", device="?")["figure"]["text"] == "151"
    with pytest.raises(CalcError) as refusal:
        ask(run, "connection", storey="")
    assert refusal.value.field == "storey"


@pytest.mark.parametrize("family", ["customary", "metric"])
def test_opens_in_order(run, family):
    """It opens on figures that call nothing to mind, in either family."""
    shown = "US" if family == "customary" else "SI"
    assert ask(run, "connection", shown, family)["cautions"] == []
    assert set(reckoners.opening("connection", family)) >= {"system", "sign", "setting"}
