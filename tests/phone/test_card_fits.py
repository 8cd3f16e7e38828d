"""A shift card on small screens, on its side and in large letters: the act and the keys never hide one another."""
import pytest
from playwright.sync_api import expect

from tests.phone.card import hasten, open_card

SMALL = {"width": 320, "height": 568}
ON_ITS_SIDE = {"width": 740, "height": 360}
LARGE = "document.documentElement.style.fontSize = '200%'"
# the edges of the screen, of the act, of what is to be seen, and of the keys, in CSS px
EDGES = """() => {
  scrollTo(0, 0);
  const box = (part) => document.querySelector(part).getBoundingClientRect();
  const [act, see, keys] = [box(".step-act"), box(".step-see"), box(".dock")];
  const caution = Math.max(0, ...[...document.querySelectorAll(".step .warning, .step-caution")].map((part) => part.getBoundingClientRect().bottom));
  return { caution, height: innerHeight, act: act.bottom, right: act.right, see: see.bottom, top: keys.top, left: keys.left, bottom: keys.bottom };
}"""


def each_step(card, size):
    """The edges at each step of a card on a screen of this size, up to its last."""
    for step in card.steps:
        card.run_to(step)
        card.page.set_viewport_size(size)
        yield step, card.page.evaluate(EDGES)
        card.page.set_viewport_size({"width": 360, "height": 740})


@pytest.fixture
def handset(take):
    return hasten(take())


def fresh(handset, name):
    """A card with priming and a late light left out by its answers, so that its steps are few."""
    card = open_card(handset, name)
    card.steps = [step for step in card.steps if step not in ("light_later", "prime")]
    return card


def test_keys_leave_the_act_in_sight_on_a_small_screen(handset):
    """At 320 by 568 act and caution stand above the keys; where there is no caution to be read first, every key is on the screen."""
    steps = list(each_step(fresh(handset, "scene"), SMALL))
    assert [(step, edges) for step, edges in steps if max(edges["act"], edges["caution"]) > edges["top"]] == []
    assert [(step, edges) for step, edges in steps if not edges["caution"] and edges["bottom"] > edges["height"]] == []
    assert {bool(edges["caution"]) for _, edges in steps} == {True, False}


def test_keys_stand_beside_the_act_on_a_screen_on_its_side(handset):
    """At 740 by 360 the keys are on the screen, beside the act and not over it."""
    hidden = [(step, edges) for step, edges in each_step(fresh(handset, "scene"), ON_ITS_SIDE)
              if edges["right"] > edges["left"] or edges["bottom"] > edges["height"]]
    assert hidden == []


@pytest.mark.parametrize("size", [SMALL, ON_ITS_SIDE], ids=["small", "on its side"])
def test_a_card_taken_up_again_shows_its_act_and_its_keys(handset, size):
    """What is said of a card that was left takes no room from the act, from what is to be seen, or from the keys."""
    card = open_card(handset, "scene")
    card.run_to("pump")
    card.page.reload()
    expect(card.page.locator(".resumed")).to_be_visible()
    card.page.set_viewport_size(size)
    edges = card.page.evaluate(EDGES)
    assert edges["bottom"] <= edges["height"]
    assert edges["see"] <= edges["top"] or edges["right"] <= edges["left"]


# what a step warns of and the way back, each with whether the keys lie over it at the top of the page
COVERED = """() => {
  const keys = document.querySelector(".dock").getBoundingClientRect();
  return [...document.querySelectorAll(".step .warning, .step-caution, .step .notice, .step-act, .step-see, .power-line, .stations")].filter((part) => {
    const { top, bottom } = part.getBoundingClientRect();
    return bottom > keys.top && top < keys.bottom;
  }).map((part) => part.textContent.trim());
}"""


@pytest.mark.parametrize("name", ["road", "bay"])
def test_keys_lie_over_nothing_of_a_step(handset, name):
    """At 360 by 740, as a step comes and after a reload: act, sign, what warns, what turns and the way back never lie under the keys."""
    card = fresh(handset, name)
    covered = []
    for step in card.steps[1:]:
        card.run_to(step)
        covered += [(step, part) for part in card.page.evaluate(COVERED)]
        card.page.reload()
        card.page.locator(".dock").wait_for()
        covered += [(step, part) for part in card.page.evaluate(COVERED)]
        expect(card.button("back")).to_be_visible()
    assert covered == []


OVERHANGS = """() => [...document.querySelectorAll(".dock .key")].filter((key) => {
  const said = document.createRange();
  said.selectNodeContents(key);
  const [inner, outer] = [said.getBoundingClientRect(), key.getBoundingClientRect()];
  return inner.left < outer.left || inner.right > outer.right || inner.top < outer.top || inner.bottom > outer.bottom;
}).map((key) => key.textContent)"""


@pytest.mark.parametrize("size", [SMALL, ON_ITS_SIDE], ids=["small", "on its side"])
@pytest.mark.parametrize("address", ["shift/stages/", "fr/shift/stages/"])
def test_words_stay_within_their_keys(take, address, size):
    """The keys of a question, which share a row, hold their words in either language."""
    page = take(locale="fr-CA" if address.startswith("fr/") else "en-US", viewport=size).open(address)
    page.locator(".dock").wait_for()
    assert page.evaluate(OVERHANGS) == []


def test_large_letters_are_not_covered(handset):
    """With text at twice its size the answers follow what is to be read instead of lying over it; the red key alone stays in reach."""
    card = open_card(handset, "scene")
    for step in ("light_first", "gear"):
        card.run_to(step)
        card.page.evaluate(LARGE)
        see, first = card.page.evaluate("""() => [document.querySelector(".step-see").getBoundingClientRect().bottom,
          Math.min(...[...document.querySelectorAll(".dock .key:not(.key-danger)")].map((key) => key.getBoundingClientRect().top))]""")
        card.page.evaluate("document.documentElement.style.fontSize = ''")
        assert see <= first


@pytest.mark.parametrize("size", [{"width": 360, "height": 740}, SMALL], ids=["360x740", "small"])
def test_the_red_key_is_in_reach_in_letters_twice_as_large(take, size):
    """At 200 % text the act fills the screen, and the way out of danger stands on it all the same: as the step comes and half way down."""
    page = take(viewport=size).open("shift/scene/")
    red = page.locator(".step .key-danger")
    red.wait_for()
    page.evaluate("document.documentElement.style.fontSize = '32px'")
    expect(red).to_be_in_viewport(ratio=1)
    page.evaluate("scrollTo(0, 300)")
    expect(red).to_be_in_viewport(ratio=1)
    red.tap()
    expect(page.locator(".order-danger[role=alert]")).to_be_visible()
