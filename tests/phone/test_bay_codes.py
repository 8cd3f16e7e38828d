"""A small log from one phone to another by square codes, each opened as a link."""
import json
import random

from playwright.sync_api import expect

from tests.phone.card import beside
from tests.phone.rounds import MIDSHIP, T, key
from tests.phone.sources import source
from tests.phone.store import do
from tests.unit.bay.logs import defect

C = T["codes"]
FRAMES = """async ({ module, text }) => { const { framesOf } = await import(module); return framesOf(text); }"""
LET_IN = """async ({ module, fragments }) => {
  const { frameOf, joined } = await import(module);
  const frames = await Promise.all(fragments.map(frameOf));
  if (frames.includes(null)) return null;
  const parts = [];
  for (const { at, letters } of frames) parts[at - 1] = letters;
  return joined(frames[0].set, parts);
}"""


def records(count):
    """As a phone writes them: random ids, a moment, what was seen."""
    some = random.Random(16)
    return [{**defect(f"{some.getrandbits(128):032x}"), "rig_id": "rig-1", "rig_name": "Pump of the day", "at_ms": 1790000000000 + 60000 * place} for place in range(count)]


def test_a_text_in_frames(handset):
    """What was cut into codes is whole again in any order; no letter that changed on its way gets through; too much is refused, not cut."""
    page = handset.open("404.html")
    module = source(page, "bay/frames.js")
    some = random.Random(7)
    text = "".join(chr(some.randrange(32, 0x2000)) for _ in range(2000))
    fragments = page.evaluate(FRAMES, {"module": module, "text": text})
    assert 3 < len(fragments) <= 12
    for _ in range(5):
        some.shuffle(fragments)
        assert page.evaluate(LET_IN, {"module": module, "fragments": fragments}) == text
    for place in (5, 9, 16, 18, 22, 30, 400):  # set, set, number, how many, sum, letters
        spoiled = [fragment[:place] + ("1" if fragment[place] != "1" else "2") + fragment[place + 1:] for fragment in fragments[:1]]
        assert page.evaluate(LET_IN, {"module": module, "fragments": spoiled}) is None, place
    for strange in ("#log=", "#log=x", fragments[0] + "&", fragments[0][:-1], fragments[0] + "A" * 100000):
        assert page.evaluate(LET_IN, {"module": module, "fragments": [strange]}) is None
    assert page.evaluate(FRAMES, {"module": module, "text": "".join(chr(some.randrange(32, 0x2000)) for _ in range(6000))}) is None


def shown(page):
    """The links of the codes as they are shown, one after another."""
    key(page, C["show"]).tap()
    expect(page.locator("svg.code")).to_be_visible()
    module = source(page, "bay/exchange.js")
    return page.evaluate("""async ([exchange, frames, arrivals, records]) => {
      const [{ contentOf }, { framesOf }, { inOrder }] = await Promise.all([import(exchange), import(frames), import(arrivals)]);
      return framesOf(contentOf({ id: "rig-1", name: "Pump of the day" }, records.sort((one, other) => (one.id < other.id ? -1 : 1)).map((record) => JSON.stringify(inOrder(record)))));
    }""", [module, module.replace("exchange", "frames"), module.replace("exchange", "arrivals"), do(page, "keptRecords", "bay")])


def test_two_phones_by_codes(take):
    """Links in any order, one twice, one damaged; nothing comes into the log before a touch; then both logs are equal."""
    handset = take()
    name = beside(handset, **MIDSHIP)["name"]
    first = handset.open("404.html")
    own = [{**record, "rig_name": name} for record in records(40)]
    do(first, "keepRecords", "bay", own)
    first.goto(handset.host.origin + "checks/log/")
    fragments = [fragment for fragment in shown(first)]
    assert 2 < len(fragments) <= 12
    set_name = fragments[0][5:13].upper()
    for at in range(1, len(fragments) + 1):
        expect(first.get_by_role("status").get_by_text(C["frame"].format(at=at, of=len(fragments), set=set_name))).to_be_visible()
        key(first, C["next"]).tap()
    first.get_by_label(C["since"]).fill("2099-01-01")
    expect(first.get_by_text(C["none"])).to_be_visible()
    do(first, "keepRecords", "bay", [{**record, "id": record["id"] + "x"} for record in records(400)])
    first.reload()
    key(first, C["show"]).tap()
    expect(first.get_by_text(C["too_many"].format(count=440, most=12))).to_be_visible()
    expect(first.locator("svg.code")).to_have_count(0)

    second = take()
    beside(second, **MIDSHIP)
    random.Random(3).shuffle(fragments)
    *some, last = fragments
    spoiled = last[:-1] + ("A" if last[-1] != "A" else "B")
    pages = [second.open("checks/log/" + fragment) for fragment in (some[0], *some)]  # a tab each, as a camera opens them
    other = second.open("checks/log/" + spoiled)
    expect(other.get_by_text(C["damaged"])).to_be_visible()
    missing = last.split(".")[1]
    for page in (other, pages[0]):
        expect(page.get_by_text(C["part"].format(set=set_name, here=len(some), of=len(fragments), missing=missing))).to_be_visible()
    expect(key(other, C["take"])).to_have_count(0)
    other.goto(second.host.origin + "checks/log/" + last)
    expect(other.get_by_text(C["whole"].format(set=set_name, of=len(fragments), count=40, rig=name))).to_be_visible()
    assert do(other, "keptRecords", "bay") == []
    key(other, C["take"]).tap()
    expect(other.get_by_text(T["log"]["taken"].format(file=C["name"], taken=40, same=0))).to_be_visible()
    assert sorted(do(other, "keptRecords", "bay"), key=lambda record: record["id"]) == sorted(own, key=lambda record: record["id"])
    expect(key(other, C["take"])).to_have_count(0)


def test_codes_wait_for_a_rig(take):
    """On a phone without the rig each code that is opened counts and stays: the page says how many of how many."""
    handset = take()
    page = handset.open("404.html")
    text = json.dumps({"format": "bay-log", "schema": 1, "rig_id": "rig-1", "rig_name": "Pump of the day", "records": records(40)})
    first, second, *_ = fragments = page.evaluate(FRAMES, {"module": source(page, "bay/frames.js"), "text": text})
    set_name = first[5:13].upper()
    for here, fragment in enumerate((first, second), 1):
        page = handset.open("checks/log/" + fragment)
        expect(page.get_by_text(T["bay"]["no_rig"])).to_be_visible()
        expect(page.get_by_text(C["no_rig"].format(set=set_name, here=here, of=len(fragments)))).to_be_visible()
    beside(handset, **MIDSHIP)
    page = handset.open("checks/log/")
    expect(page.get_by_text(C["part"].split(".")[0].format(set=set_name, here=2, of=len(fragments)))).to_be_visible()


CAMERA = """(links) => {
  const shown = [...links];
  if (!navigator.mediaDevices) return; // a page without an address
  navigator.mediaDevices.getUserMedia = async () => {
    const canvas = document.createElement("canvas");
    canvas.getContext("2d").fillRect(0, 0, 9, 9);
    return canvas.captureStream(5);
  };
  globalThis.BarcodeDetector = class {
    async detect() { return shown.length ? [{ rawValue: "https://elsewhere.example/" }, { rawValue: shown.shift() }] : []; }
  };
}"""


def test_the_camera_of_the_page_reads_codes(take):
    """Where the browser can read codes: one key, each code as it comes, the camera off once all are there."""
    handset = take()
    name = beside(handset, **MIDSHIP)["name"]
    page = handset.open("checks/log/")
    expect(key(page, C["show"])).to_be_visible()
    module = source(page, "bay/frames.js")
    some = records(20)
    content = json.dumps({"format": "bay-log", "schema": 1, "rig_id": "rig-1", "rig_name": name, "records": some})
    links = [handset.host.origin + "fr/checks/log/" + fragment for fragment in page.evaluate(FRAMES, {"module": module, "text": content})]
    assert len(links) > 1
    page.close()
    handset.context.add_init_script(f"({CAMERA})({json.dumps([links[0], *links[::-1]])})")
    page = handset.open("checks/log/")
    key(page, C["read"]).tap()
    expect(page.get_by_text(C["whole"].format(set=links[0].split("=")[1][:8].upper(), of=len(links), count=20, rig=name))).to_be_visible()
    expect(page.locator("video")).to_have_count(0)
    assert do(page, "keptRecords", "bay") == []
    key(page, C["take"]).tap()
    expect(page.get_by_text(T["log"]["taken"].format(file=C["name"], taken=20, same=0))).to_be_visible()
