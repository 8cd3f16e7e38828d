"""The baked tables in metric and imperial units, against figures worked by hand."""
import pytest

from site_src.content import data, units
from site_src.routes import tables
from tests.site import pages

WORDS = data.shared_words()


def row(built, system, page, caption, first, **facts):
    """A row of a baked table in a system of units."""
    return pages.Page(built / "tables" / system / page / "index.html").row(WORDS["tables"][caption].format(**facts), first)


@pytest.mark.parametrize(
    ("system", "label", "coefficient", "flow", "losses"),
    [
        # by hand with the printed metric set, 24.6 kPa per 100 m at 100 L/min: 24.6 x 25 = 615 per 100 m at 500 L/min
        ("SI", "45 mm", "24.6", "500", ["92", "123", "185"]),         # 15, 20 and 30 m of it
        ("bar", "45 mm", "0.246", "500", ["0.92", "1.2", "1.8"]),     # 0.9225, 1.23, 1.845
        # 15.5 psi at 100 US gpm is 15.5 x (1 / 0.83267)^2 = 22.36 at 100 imperial: 150 imperial gpm lose 50.3 per 100 ft
        ("imperial", "1¾ in", "22.355", "150", ["25", "50"]),
    ],
)
def test_friction(built, system, label, coefficient, flow, losses):
    """A row of a friction page shows the loss over each usual length of that system."""
    assert row(built, system, "friction", "friction_caption", flow, label=label, coefficient=coefficient)[1:-1] == losses


@pytest.mark.parametrize(
    ("system", "first", "cells"),
    [
        ("SI", "10", ["98", "100"]),        # 9.817 kPa per m; the field rule is 10
        ("bar", "10", ["0.98", "1"]),
        ("imperial", "100", ["43.4", "50"]),
    ],
)
def test_height(built, system, first, cells):
    """Height costs what water weighs, whatever the units."""
    assert row(built, system, "elevation", "elevation_heights", first)[1:] == cells


@pytest.mark.parametrize(
    ("system", "page", "caption", "facts", "first", "cells"),
    [
        # greatest lift in m at 5, 15, 25, 30 and 35 C: a pump-hire firm's 10.33 m at the sea, less the steam tables'
        # 0.87, 1.71, 3.17, 4.25 and 5.63 kPa, over the weight of the water
        ("SI", "draft", "draft_caption", {"unit": "m"}, "0", ["10.2", "10.2", "10.0", "9.9", "9.8"]),
        # 1 inHg is 3.386 kPa and stands for 1.13 ft: 20 kPa for 6.674 ft, 2.03 m
        ("SI", "draft", "vacuum_caption", {}, "20", ["2.0"]),
        ("bar", "draft", "vacuum_caption", {}, "0.20", ["2.0"]),
        # printed metric set, to the 5 m below: 1260 kPa over 3.17 x 16 per m = 24.8; supply hose at 0.9 of its test
        # pressure: 1100 over 1.27 x 16 = 54.1; over 0.305 x 16 = 225.4; over 0.138 x 16 = 498
        ("SI", "supply", "relay_caption", {"unit": "m"}, "4000", ["20", "50", "225", "495"]),
        # AA from 1,500 US gallons a minute: 5678 L/min
        ("bar", "supply", "class_caption", {"pressure": "1.4", "unit": "bar"}, "AA,", ["5678"]),
    ],
)
def test_water(built, system, page, caption, facts, first, cells):
    """Lift, vacuum, relay spacing and classes read in metric steps."""
    assert row(built, system, page, caption, first, **facts)[1:] == cells


def test_every_system_has_every_table(built):
    """Each of the four systems has each of the tables, and each page names its units."""
    for system in units.systems():
        for page in tables.PAGES:
            assert (built / "tables" / system["id"] / page / "index.html").is_file()
