"""A rig of one's own beside the Pressure page: made at random, changed on the Rig page by touch, and read there."""
import re

import pytest

from site_src.content import data
from tests.phone.claim import desk
from tests.phone.folds import unfold
from tests.phone.test_rig_faults import chosen

R = data.words("rig")
SIZES = ("attack-1.5", "attack-1.75", "attack-2", "attack-2.5", "supply-3", "supply-5")
LINE = {"name": "Crosslay", "hose": "attack-1.75", "length": "200@US", "crew": "2", "end": {"kind": "fog", "flow": "150@US", "pressure": "100@US"}}
# what may be wrong anywhere in a profile; none of it may change a figure elsewhere
SLIPS = ({}, {"idle": "70000"}, {"pump_rated": "1x250@US"}, {"beds": [{**LINE, "length": "0@US"}]}, {"governed": "ten"}, {"floor": "-3@US"})
READ = """() => [...document.querySelectorAll("fieldset.rig-hose")].map((row) => ({
  size: row.querySelector("legend").textContent.trim(), says: row.querySelector(".figure-told")?.textContent.trim() ?? "",
  fields: [...row.querySelectorAll("input")].map((input) => ({
    label: row.querySelector(`label[for="${input.id}"]`)?.textContent.trim(), text: input.value,
    refused: document.getElementById(`${input.id}-refused`)?.textContent.trim() ?? "",
  })),
})).filter((row) => row.fields.length)"""


def profile(chance):
    """A rig with hose figures of its own for some sizes, and perhaps a slip in another field."""
    hoses = []
    for size in chance.sample(SIZES, 3):
        printed = next(row for row in desk.HOSES if row["id"] == size)["coefficient"]
        own = chance.random() < 0.7
        figure = str(round(printed * chance.choice((0.6, 0.8, 1.2)), 2)) + "@US" if own else ""
        if own and chance.random() < 0.15:
            figure = "1..5@US"
        hoses.append({"hose": size, "coefficient": figure, "origin": "measured" if own else "handbook"})
    return {"schema": 1, "id": "claim", "name": "Rig of the day", "units": "US", "beds": [LINE], "hoses": hoses, **chance.choice(SLIPS)}


def coefficients(handset, chance):
    """Choose a rig, change the size of one of its hoses by touch, and read what the Rig page then says of each.

    Returns coefficients by id of hose, None where the page refuses the figure.
    """
    chosen(handset, profile(chance))
    page = handset.open("rig/")
    unfold(page)
    page.get_by_label(R["field"]["coefficient"], exact=True).first.wait_for(state="attached")
    if chance.random() < 0.5:
        page.locator("#field-hoses-0-hose").select_option("attack-2.5" if chance.random() < 0.5 else "supply-4")
    page.wait_for_load_state("networkidle")
    stands = {}
    for row in page.evaluate(READ):
        figure = next((field for field in row["fields"] if field["label"] == R["field"]["coefficient"]), None)
        if figure is None:
            continue  # a bed or supply hose
        hose = next(hose for hose in desk.HOSES if hose["label"] == row["size"])
        named = re.search(r"C ([\d.]+), handbook", row["says"])
        assert not named or float(named[1]) == pytest.approx(desk.handbook(hose), rel=0.01), f"{row['says']} for {row['size']}"
        own = None if figure["refused"] else float(figure["text"]) if figure["text"] else desk.handbook(hose)
        stands[hose["id"]] = None if hose["id"] in stands else own  # the same hose twice says nothing
    page.close()
    assert stands, "no hose was read on the Rig page"
    return stands
