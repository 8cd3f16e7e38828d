"""The door to calc as pages use it: promises, what is held crosses once, the newest answer alone is drawn."""
import pytest
from playwright.sync_api import expect

from tests.phone.crossings import count, crossings
from tests.phone.sources import run_from_sources

SHARED = """const at = (name) => new URL(`/sources/js/shared/${name}.js`, location);
const [{ calc, Refusal }, { answering }] = await Promise.all([import(at("engine")), import(at("answering"))]);
const LOSS = "hose.friction_loss_psi";
"""


@pytest.fixture
def page(handset):
    """A page of the site, on which what crosses is counted."""
    count(handset)
    return handset.open("why/heat/")


def run(page, script):
    """What a script of the page returns, with the shared modules at hand."""
    return page.evaluate(f"async () => {{ {SHARED} {script} }}")


def test_ask(page):
    """An answer is a promise; a refusal rejects it with its field and code."""
    assert run(page, "return calc.ask(LOSS, { coefficient: 15.5, flow_gpm: 150, length_ft: 200 })") == pytest.approx(69.75)  # 15.5 x 1.5^2 x 2
    refused = run(page, """const asked = calc.ask(LOSS, { coefficient: 15.5, flow_gpm: -1, length_ft: 200 });
        return asked.then(() => null, (refusal) => [refusal instanceof Refusal, refusal.field, refusal.code])""")
    assert refused == [True, "flow_gpm", "negative"]


def test_held(page):
    """What is held crosses once while it is the same object, again when it is another, and 32 at most stand there."""
    def act():
        losses = run(page, """const loss = (length_ft) => calc.ask(LOSS, { coefficient: 15.5, flow_gpm: 150 }, { length_ft });
            const answers = [];
            for (const length of [100, 100, 200, 100]) answers.push(await loss(length));
            for (let length = 1; length <= 40; length++) answers.push(await loss(length));
            answers.push(await loss(100));
            return answers""")
        assert losses[:4] == pytest.approx([34.875, 34.875, 69.75, 34.875])  # by hand: 15.5 x 1.5^2 x length / 100
        assert losses[4:44] == pytest.approx([0.34875 * length for length in range(1, 41)])
        assert losses[44] == pytest.approx(34.875)

    held = [crossing["text"] for crossing in crossings(page, act) if crossing["door"].startswith("hold") and crossing["text"].isdigit()]
    assert held[:2] == ["100", "200"]
    assert held[2:] == [str(length) for length in range(1, 41)] + ["100"]


ANSWERING = """
const drawn = [];
const entered = () => document.body.dispatchEvent(new Event("input", { bubbles: true }));
const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
let text = "one";
const asked = [];
const { change, redraw } = answering(() => new Promise((answer) => asked.push({ text, answer })), (answer) => drawn.push([text, answer]));
"""


def test_drawn_once(page):
    """An answer that is there before the next paint is drawn once, and no dashes before it."""
    assert run(page, ANSWERING + """
        const changed = change();
        asked[0].answer("of one");
        await changed;
        await frame();
        redraw();
        return drawn""") == [["one", "of one"], ["one", "of one"]]


def test_dashes_meanwhile(page):
    """What stands in its control before the next paint has dashes beside it until its answer comes; anything else that draws leaves them too."""
    assert run(page, ANSWERING + """
        entered();
        change();
        await frame();
        redraw();
        asked[0].answer("of one");
        await frame();
        return drawn""") == [["one", None], ["one", None], ["one", "of one"]]


def test_a_touch_waits_for_its_answer(page):
    """What only the page draws stands as it was until a quick answer comes, and has dashes after a twentieth of a second."""
    assert run(page, ANSWERING + """
        const late = [];
        const changed = () => { // its waiting, in hand: a busy machine's frame is longer
          const wait = window.setTimeout;
          window.setTimeout = (then, ms) => late.push({ then, ms });
          change();
          window.setTimeout = wait;
        };
        changed();
        await frame();
        asked[0].answer("of one");
        await frame();
        late[0].then();
        changed();
        await frame();
        late[1].then();
        asked[1].answer("of one");
        await frame();
        return [...drawn, ...late.map(({ ms }) => ms)]""") == [["one", "of one"], ["one", None], ["one", "of one"], 50, 50]


def test_newest_alone(page):
    """An answer that comes after a newer question was put is never drawn, whichever comes first."""
    assert run(page, ANSWERING + """
        entered();
        change();
        text = "two";
        change();
        asked[0].answer("of one");
        await frame();
        asked[1].answer("of two");
        await frame();
        text = "three";
        change();
        text = "four";
        change();
        asked[3].answer("of four");
        await frame();
        asked[2].answer("of three");
        await frame();
        return drawn""") == [["two", None], ["two", "of two"], ["four", "of four"]]


def test_refusal_unanswered(handset, page):
    """A refusal that a page does not take is a fault of ours: the numbers go, and the page says so."""
    run(page, """setTimeout(() => calc.ask("hose.nothing", {}));""")
    page.locator("#down:not([hidden])").wait_for()
    assert handset.troubles == ["page error: name: unknown"]
    handset.troubles.clear()


LATE = """async () => {
  const { calc } = await import(new URL("/sources/js/shared/engine.js", location));
  const ask = calc.ask;
  calc.ask = async (...asked) => {
    await new Promise((done) => setTimeout(done, 700));
    return ask.apply(calc, asked);
  };
}"""


@pytest.mark.parametrize(("address", "field", "typed", "last"), [
    ("why/heat/", "#power", "90", "output"), ("why/speeds/", "#speeds-idle_pressure", "60", ".figures details"),
])
def test_no_figure_while_its_answer_is_late(handset, address, field, typed, last):
    """Where the answer to an entry takes longer than a frame, the figures of the entry before it are gone until then."""
    run_from_sources(handset.context)
    page = handset.open(address)
    figures = page.locator(last)
    figures.first.wait_for()
    count = figures.count()
    page.evaluate(LATE)
    page.locator(field).fill(typed)
    expect(figures).to_have_count(0)
    expect(figures).to_have_count(count)
    expect(page.locator(field)).to_have_value(typed)
