"""A run of a service test handled the wrong way: the phone's clock a day off, Back, a wrong tip, readings in any order, no room, a huge photo. No reading is lost."""
import pytest
from playwright.sync_api import expect

from tests.phone.proof import FULL, START_MS, T, run_of  # noqa: F401  the fixture
from tests.phone.store import in_database

RUN = T["run"]
DAY_S = 86_400
HUGE = """async (input) => {
  const canvas = Object.assign(document.createElement("canvas"), { width: 4000, height: 3000 });
  const pen = canvas.getContext("2d");
  for (let row = 0; row < 300; row += 1) {
    for (let column = 0; column < 400; column += 1) {
      pen.fillStyle = `hsl(${(row * 37 + column * 91) % 360} 80% ${(row * 13 + column * 7) % 100}%)`;
      pen.fillRect(column * 10, row * 10, 10, 10);
    }
  }
  const picture = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.95));
  const files = new DataTransfer();
  files.items.add(new File([picture], "gauge.jpg", { type: "image/jpeg" }));
  input.files = files.files;
  input.dispatchEvent(new Event("change", { bubbles: true }));
  return picture.size;
}"""


def sets(one):
    return one.record()["tests"]["capacity"]["attempts"][-1]["sets"]


@pytest.mark.parametrize("wrong_s", [DAY_S, -DAY_S], ids=["ahead", "behind"])
def test_a_phone_a_day_wrong_is_set_right(run_of, wrong_s):
    """Begun with the phone's clock a day off and set right in the middle: test time counts on, the change is said and stands on the sheet, no reading is lost."""
    one = run_of(1, is_started=False)
    one.clock.is_set(wrong_s)
    one.press(RUN["begin"])
    one.clock.passes(120)
    one.clock.is_set(-wrong_s)
    one.clock.passes(180)
    one.counts("5:00")
    one.says(T["steady"]["moved"].split("{")[0])
    one.still()
    one.press(RUN["take_at"].format(at="5:00"))
    one.says(RUN["take_back"].format(at="5:00"))
    assert [each["at_s"] for each in sets(one)] == pytest.approx([0, 300], abs=0.5)
    assert [event["s"] for event in one.record()["events"] if event["kind"] == "moved"] == pytest.approx([-wrong_s], abs=2)
    sheet = one.handset.open(f"test/sheet/#{one.id}")
    expect(sheet.locator(".exceptions")).to_contain_text(T["steady"]["moved"].split("{")[0])


def test_back_in_the_middle_of_a_run(run_of):
    """The browser's Back leads to the parts or out of the test; what was typed stands there again, and the clock ran on."""
    one = run_of(1)
    one.clock.passes(60)
    one.type("discharge_psi", "151")
    one.rests()
    one.page.evaluate("(id) => { location.hash = id; }", one.id)
    one.page.get_by_role("navigation", name=T["test"]["title"]).wait_for()
    one.page.go_back()
    expect(one.page.locator("input[name=discharge_psi]")).to_have_value("151")
    one.page.goto(f"{one.handset.host.origin}test/")
    one.clock.passes(30)
    one.page.go_back()
    expect(one.page.locator("input[name=discharge_psi]")).to_have_value("151")
    one.counts("1:30")
    assert one.record()["tests"]["capacity"]["draft"]["values"]["discharge_psi"] == "151@US"


def test_a_wrong_tip_is_put_right(run_of):
    """Taken back and kept through the right tips: the flow is theirs, and the sheet says them beside the pitots. By hand: 2 x 29.7 x 1.75^2 x root 48 = 1260."""
    one = run_of(1)
    one.page.locator(".run-back").tap()
    one.page.get_by_text(RUN["more"], exact=True).tap()
    one.page.locator(".run-tips label.chip", has_text="2 × 1¾").tap()
    for place in range(2):
        one.type("pitot_psi", "48", place)
    one.press(RUN["take_at"].format(at="0:00"))
    one.page.locator(".run-back").wait_for()
    (kept,) = sets(one)
    assert (kept["tip"], kept["values"]["pitot_psi"]) == ({"tip_in": "1.75@US", "count": 2}, ["48@US", "48@US"])
    sheet = one.handset.open(f"test/sheet/#{one.id}")
    row = sheet.locator("table.runs tbody tr").nth(1)
    expect(row).to_contain_text("48 / 48 (2 × 1¾\u00a0in)")
    expect(row).to_contain_text("1260")


def test_readings_in_the_opposite_order(run_of):
    """The last cell first and the first last, and the tip after its pitot: what is kept is what stands there."""
    one = run_of(1, is_started=False)
    for name, text in (("pitot_psi", "72"), ("engine_rpm", "1610"), ("discharge_psi", "149")):
        one.type(name, text)
    one.press(RUN["begin"])
    one.counts("0:00")
    (kept,) = sets(one)
    assert {name: kept["values"][name] for name in ("pitot_psi", "engine_rpm", "discharge_psi")} == {"pitot_psi": ["72@US"], "engine_rpm": "1610@US", "discharge_psi": "149@US"}


def test_no_room_in_the_middle_of_a_reading(run_of):
    """The database full as a reading is kept: it is said above the page, and the reading is there when the page comes back."""
    one = run_of(1)
    one.clock.passes(300)
    one.still()
    one.page.evaluate(FULL)
    one.type("discharge_psi", "152")
    one.press(RUN["take_at"].format(at="5:00"))
    one.is_kept("noted")
    one.reborn()
    one.says(RUN["take_back"].format(at="5:00"))
    one.type("engine_rpm", "1611")  # there is room again, and what was noted is written
    one.rests()
    assert [each["values"]["discharge_psi"] for each in sets(one)] == ["145@US", "152@US"]


def test_a_picture_of_twelve_million_points(run_of):
    """A phone's own photo, 4000 by 3000: kept with the run in at most 200 kB, and the clock runs on."""
    one = run_of(1)
    one.page.get_by_text(RUN["more"], exact=True).tap()
    assert one.page.locator("input[type=file]").evaluate(HUGE) > 1_000_000
    one.page.locator("canvas[data-photo][data-painted]").first.wait_for()
    [photo] = in_database(one.page, "photos")
    assert (photo["part"], photo["at_ms"]) == ("capacity", START_MS)
    assert 20_000 < len(photo["picture"]) * 3 / 4 <= 200_100
    one.clock.passes(5)
    one.counts("0:05")
