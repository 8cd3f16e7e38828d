"""The baked tables against figures worked by hand."""
import re

import pytest

from site_src.content import data, languages
from site_src.routes import tables as tables_page
from tests.site import pages

WORDS = data.shared_words()


def assert_shows(text, worked):
    """The text is the worked figure, rounded to the decimals it shows."""
    places = len(text.partition(".")[2])
    assert float(text) == pytest.approx(worked, abs=0.5 * 10 ** -places + 1e-9)


@pytest.mark.parametrize(
    ("hose", "flow_gpm", "per_50_psi", "per_100_psi", "speed_ft_per_s"),
    [
        # by hand: C (Q/100)^2 for 100 ft, half of it for 50; speed 0.4085 Q / d^2
        ("attack-1.75", "150", 17.4375, 34.875, 20.0),  # 15.5 x 1.5^2; 0.4085 x 150 / 3.0625
        ("attack-2.5", "300", 9.0, 18.0, 19.6),         # 2 x 3^2; 0.4085 x 300 / 6.25
        ("booster-1", "30", 6.75, 13.5, 12.3),          # 150 x 0.3^2; 0.4085 x 30 / 1
        ("supply-5", "1000", 4.0, 8.0, 16.3),           # 0.08 x 10^2; 0.4085 x 1000 / 25
    ],
)
def test_friction(built, hose, flow_gpm, per_50_psi, per_100_psi, speed_ft_per_s):
    """A row of the friction page shows the loss of the coefficient rule, and the speed of the water."""
    row = data.by_id(data.named("hoses"))[hose]
    caption = WORDS["tables"]["friction_caption"].format(label=row["label"], coefficient=f"{row['coefficient']:g}")
    shown = pages.Page(built / "tables/US/friction/index.html").row(caption, flow_gpm)
    for text, worked in zip(shown[1:], (per_50_psi, per_100_psi, speed_ft_per_s), strict=True):
        assert_shows(text, worked)


@pytest.mark.parametrize(
    ("tip", "nozzle_psi", "flow_gpm", "reaction_lbf"),
    [
        # by hand: 29.7 d^2 sqrt(P) and 1.57 d^2 P
        ("1", "50", 210.0, 78.5),       # 29.7 x 7.0711; 1.57 x 50
        ("15/16", "50", 184.6, 69.0),   # 29.7 x 0.87891 x 7.0711; 1.57 x 0.87891 x 50
        ("2", "80", 1062.6, 502.4),     # 29.7 x 4 x 8.9443; 1.57 x 4 x 80
    ],
)
def test_tips(built, tip, nozzle_psi, flow_gpm, reaction_lbf):
    """A row of the tips page shows flow and reaction of that tip at that pressure."""
    caption = WORDS["tables"]["tips_caption"].format(label=f"{data.by_id(data.load('nozzles')['tip'])[tip]['label']} in")
    shown = pages.Page(built / "tables/US/tips/index.html").row(caption, nozzle_psi)
    assert_shows(shown[1], flow_gpm)
    assert_shows(shown[2], reaction_lbf)


@pytest.mark.parametrize(
    ("page", "caption", "first", "cells"),
    [
        # by hand: 0.0505 Q sqrt(P), sqrt(50, 75, 100) = 7.0711, 8.6603, 10
        ("reaction", "reaction_caption", "150", (53.6, 65.6, 75.75)),
        # 0.434 and 0.5 psi per ft
        ("elevation", "elevation_heights", "50", (21.7, 25.0)),
        # 5 psi a floor above the first
        ("elevation", "elevation_floors", "3", (10.0,)),
    ],
)
def test_smaller_tables(built, page, caption, first, cells):
    """Rows of the reaction and height pages show the rule's figures."""
    shown = pages.Page(built / "tables" / "US" / page / "index.html").row(WORDS["tables"][caption].format(unit={"reaction": "lbf"}.get(page, "psi"), floor=5), first)
    for text, worked in zip(shown[1:], cells, strict=True):
        assert_shows(text, worked)


@pytest.mark.parametrize(
    ("page", "caption", "facts", "first", "cells"),
    [
        # a study's table of greatest lift, within its rounding, at 40, 60, 80, 90 and 100 F
        ("draft", "draft_caption", {"unit": "ft"}, "5000", (27.9, 27.6, 27.1, 26.7, 26.2)),
        ("draft", "draft_caption", {"unit": "ft"}, "0", (33.6, 33.3, 32.8, 32.4, 31.9)),
        # driver/operator study cards: 1.13 ft per inHg
        ("draft", "vacuum_caption", {}, "22", (24.9,)),
        # NFPA annex table, from memory: 7.6 ft for 20 ft of hose, 1.4 less or more for each 10 ft
        ("draft", "suction_caption", {"label": "6 in", "unit": "ft"}, "1500", (6.2, 7.6, 9.0)),
        # 2 1/2 in: driver/operator handbook, relay table, from memory. Supply hose by hand at 0.9 of 200 psi, less 20: 160 psi over
        # 5, 1.25 and 0.5 psi per 100 ft; 20, 5 and 2; 80, 20 and 8
        ("supply", "relay_caption", {"unit": "ft"}, "250", (1440, 3200, 12800, 32000)),
        ("supply", "relay_caption", {"unit": "ft"}, "500", (360, 800, 3200, 8000)),
        ("supply", "relay_caption", {"unit": "ft"}, "1000", (90, 200, 800, 2000)),
        # NFPA 291 as study cards report it
        ("supply", "class_caption", {"pressure": "20", "unit": "psi"}, "A,", (1000,)),
    ],
)
def test_water(built, page, caption, facts, first, cells):
    """Rows of the lift and supply pages agree with printed tables."""
    shown = pages.Page(built / "tables" / "US" / page / "index.html").row(WORDS["tables"][caption].format(**facts), first)
    for text, printed in zip(shown[1:], cells, strict=True):
        assert float(text) == pytest.approx(printed, abs=0.11 if printed < 50 else 0)


def test_wye_loss(built):
    """The appliances page gives a wye nothing at low flow and 10 psi from 350 gpm, as its source does."""
    label = data.by_id(data.named("losses"))["wye"]["label"]
    page = pages.Page(built / "tables/US/appliances/index.html")
    shown = page.row(WORDS["tables"]["appliances_caption"].format(unit="psi"), label.split()[0])
    from_350 = WORDS["tables"]["from_flow"].format(flow=350, unit="gpm")
    assert shown == [label, f"0 {WORDS['tables']['any_flow']} 10 {from_350}"]


def test_usual_pressure_is_marked_once(built):
    """Each tip's table marks one row as usual: 50 psi for a handline tip, 80 for a master stream's."""
    page = pages.Page(built / "tables/US/tips/index.html")
    for table, tip in zip(page.tables, [tip for tip in data.load("nozzles")["tip"] if "tip_in" in tip], strict=True):
        marked = [row[0].split()[0] for row in table["rows"] if WORDS["tables"]["usual"] in row[0]]
        # study cards: handline tips to 1 1/4 in, larger tips are master streams
        assert marked == ["50" if tip["tip_in"] <= 1.25 else "80"]


def test_practical_lift(built):
    """NWCG, Firefighter Math, 3.5: two thirds of a study's table of greatest lift, at 40, 60, 80, 90 and 100 F."""
    page = pages.Page(built / "tables" / "US" / "draft" / "index.html")
    for first, greatest in (("0", (33.6, 33.3, 32.8, 32.4, 31.9)), ("5000", (27.9, 27.6, 27.1, 26.7, 26.2))):
        shown = page.row(WORDS["tables"]["practical_caption"].format(unit="ft"), first)
        for text, printed in zip(shown[1:], greatest, strict=True):
            assert float(text) == pytest.approx(printed * 2 / 3, abs=0.13)


@pytest.mark.parametrize("language", data.languages())
@pytest.mark.parametrize("address", ["water/", "water/draft/", "water/hydrant/"])
def test_water_pages_lead_to_tables_in_their_own_units(built, language, address):
    """An English page opens in US units and a French one in metric; the tables it leads to are in the same."""
    text = (built / languages.folder(language) / address / "index.html").read_text(encoding="utf-8")
    linked = set(re.findall(r'href="[^"]*tables/(\w+)/(?:draft|supply)/', text))
    assert linked == {data.by_id(data.load("languages")["language"])[language]["system"]}


@pytest.mark.parametrize(("text", "column", "lacks"), [
    # worked by hand: what makes the marks stand in line
    ("10", ["9.0", "10", "1.4"], ".0"), ("9.0", ["9.0", "10"], ""), ("10", ["10", "12"], ""), ("1.4", ["1.4", "0.25"], "0"), ("3", ["3", "0,25"], ",00"),
    ("\u2013", ["9.0", "\u2013"], ""),
])
def test_decimals_stand_in_line(text, column, lacks):
    """A figure has room for the decimals that it lacks beside the others of its column."""
    assert tables_page.padding(text, column) == lacks


def test_every_column_of_friction_has_one_width_of_decimals(built):
    """On the page itself: text and room together have as many decimals in every row of a column."""
    page = (built / "tables/US/friction/index.html").read_text(encoding="utf-8")
    for table in re.findall(r"<tbody>.*?</tbody>", page, flags=re.DOTALL):
        rows = [re.findall(r'<td class="\w+"(?: data-pad="([.0]+)")?>([\d.]+)</td>', row) for row in table.split("</tr>") if "<td" in row]
        for column in zip(*rows, strict=True):
            assert len({len((text + pad).partition(".")[2]) for pad, text in column}) == 1
