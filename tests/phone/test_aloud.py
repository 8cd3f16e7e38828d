"""A card that is read aloud, and a phone that buzzes when a time is over."""
import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests.phone.card import hasten, open_card
from tests.phone.words import SITE, STEPS

SHIFT = SITE["shift"]


@pytest.fixture
def handset(take):
    return hasten(take())


VOICE = """
  const spoken = window.spoken = [];
  const voices = [{ localService: LOCAL, lang: "en-US", name: "made up" }];
  Object.defineProperty(window, "speechSynthesis", { value: {
    getVoices: () => voices, speak: (said) => spoken.push(said.text), cancel() {}, addEventListener() {},
  } });
  window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
"""


def test_steps_are_read_aloud_when_wanted(handset):
    """Off until it is touched; then each step is read once, and the choice holds on the next card."""
    handset.context.add_init_script(VOICE.replace("LOCAL", "true"))
    card = open_card(handset, "road")
    assert card.page.evaluate("spoken") == []
    card.page.get_by_role("button", name=SHIFT["aloud"]).tap()
    card.see()
    spoken = card.page.evaluate("spoken")
    assert len(spoken) == 2 and STEPS["tell"]["act"] in spoken[0] and STEPS["throttle_down"]["act"] in spoken[1]
    card.press("not_seen")
    assert STEPS["throttle_down"]["never"] in card.page.evaluate("spoken")[-1]
    again = open_card(handset, "freeze")
    assert STEPS["freeze_parted"]["act"] in again.page.evaluate("spoken")[-1]


def test_a_voice_from_afar_is_not_offered(handset):
    """A voice that needs a signal does not count: the card says that there is none."""
    handset.context.add_init_script(VOICE.replace("LOCAL", "false"))
    card = open_card(handset, "road")
    expect(card.page.get_by_text(SHIFT["aloud_none"])).to_be_visible()
    expect(card.page.get_by_role("button", name=SHIFT["aloud"])).to_have_count(0)


def test_no_voice_reads_another_language(take):
    """A French card is not read by an English voice: it says that there is none."""
    handset = take(locale="fr-CA")
    handset.context.add_init_script(VOICE.replace("LOCAL", "true"))
    page = handset.open("fr/shift/road/")
    expect(page.get_by_text(data.shared_words("fr")["shift"]["aloud_none"])).to_be_visible()


def test_the_phone_buzzes_when_a_time_is_over(handset):
    """At the end of a pause, once, and only when wanted."""
    handset.context.add_init_script("window.buzzed = 0; navigator.vibrate = () => { window.buzzed += 1; return true; };")
    card = open_card(handset, "scene")
    card.run_to("centre")
    card.begin_pause()
    expect(card.button("seen")).to_be_enabled()
    assert card.page.evaluate("buzzed") == 0
    card.page.get_by_role("button", name=SHIFT["vibrate"]).tap()
    assert card.page.evaluate("buzzed") == 1  # so that the hand knows it
    card.press("back")
    card.run_to("centre")
    card.begin_pause()
    expect(card.button("seen")).to_be_enabled()
    assert card.page.evaluate("buzzed") == 3  # the wait for zero before it, and this pause
