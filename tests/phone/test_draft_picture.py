"""The draft's picture can be read at every lift: no label over another or over the pump, none cut off."""
import re

import pytest

from tests.phone.sheet import open_sheet

BOXES = """svg => {
  const frame = svg.getBoundingClientRect();
  return { frame: [frame.left, frame.top, frame.right, frame.bottom], labels: [...svg.querySelectorAll("text, .picture-box")].map((text) => {
    const box = text.getBoundingClientRect();
    return { text: text.textContent.trim(), box: [box.left, box.top, box.right, box.bottom] };
  }) };
}"""
FEET = ("0", "1", "3.5", "8", "10", "12.5", "14.7", "18", "22.5", "25", "31", "33.3", "40")
METERS = ("0", "0.5", "1", "2.5", "3", "4.5", "6", "7.5", "9", "10.5", "12")
# address, unit, lifts, and altitude with water temperature: the usual, the lowest and coldest, thin air, the highest and warmest
OPENED = [
    ("water/draft/", "ft", FEET, [("0", "60 °F"), ("-1500", "40 °F"), ("5000", "80 °F"), ("15000", "100 °F")]),
    ("fr/water/draft/", "m", METERS, [("0", "15 °C"), ("-450", "5 °C"), ("1500", "25 °C"), ("4500", "35 °C")]),
]
PLACES = [(address, unit, lifts, *place) for address, unit, lifts, places in OPENED for place in places]


def over(one, other):
    """Whether two boxes share room."""
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


@pytest.mark.parametrize(("address", "unit", "lifts", "altitude", "water"), PLACES)
def test_no_label_over_another(take, address, unit, lifts, altitude, water):
    """From level with the water to past what air can lift, from below the sea to the highest ground that is taken."""
    sheet = open_sheet(take(locale="fr-CA" if address.startswith("fr") else "en-US"), address)
    page = sheet.page
    sheet.open("altitude")
    page.locator("#altitude").fill(altitude)
    sheet.open("water")
    page.get_by_role("radio", name=water, exact=True).tap()
    sheet.open("lift")
    for lift in lifts:
        page.locator("#lift").fill(lift)
        picture = page.locator("svg.picture")
        picture.get_by_text(re.compile(f"^{lift.replace('.', '[.,]')} {unit}$")).wait_for()
        drawn = picture.evaluate(BOXES)
        labels = drawn["labels"]
        assert len(labels) == 6, labels  # lift, practical, greatest, water, loss; and the pump
        for place, label in enumerate(labels):
            left, top, right, bottom = label["box"]
            assert drawn["frame"][0] <= left and drawn["frame"][1] <= top and right <= drawn["frame"][2] and bottom <= drawn["frame"][3], (lift, label)
            for other in labels[place + 1:]:
                assert not over(label["box"], other["box"]), (lift, label, other)
