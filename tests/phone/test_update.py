"""A new version waits for a touch, a broken one changes nothing, and a card under way is left alone."""
import shutil
import time

import pytest
from playwright.sync_api import expect

import build
from tests.phone.card import open_card
from tests.phone.handset import Handset, Host
from tests.phone.store import put_test, running_test
from tests.phone.words import SITE

CHANGED = "cautions/"
NEWS = "This line came with the second version."
# resolves to where a new version has got to: "installed", "redundant", or "none" where there is none
OUTCOME = """async () => {
  const registration = await navigator.serviceWorker.ready;
  await registration.update().catch(() => {});
  const worker = registration.installing;
  if (!worker) return registration.waiting?.state ?? "none";
  await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
  return worker.state;
}"""


class Release(Host):
    """A host whose site can be changed, with the worker written anew."""

    def page(self):
        return self.dist / CHANGED / "index.html"

    def with_news(self):
        return self.page().read_text(encoding="utf-8").replace("</main>", f"<p>{NEWS}</p></main>")

    def put_news(self):
        self.page().write_text(self.with_news(), encoding="utf-8")

    def publish(self, breakage=None, text=None):
        """Put the worker of the files as they stand in place at once, or with the changed page's `text`, which `breakage` breaks before it is there.

        So a phone that tries an older release again never finds the page whole.
        """
        aside = shutil.copytree(self.dist, self.dist.with_name("aside"), ignore=shutil.ignore_patterns("sw.js"))
        if breakage:
            page = aside / self.page().relative_to(self.dist)
            page.write_text(text, encoding="utf-8")
            build.write_worker(aside)
            breakage(page)
            page.replace(self.page()) if page.exists() else self.page().unlink()
        else:
            build.write_worker(aside)
        shutil.copytree(aside / "packs", self.dist / "packs", dirs_exist_ok=True)
        for name in ("version.json", "sw.js"):
            (aside / name).replace(self.dist / name)
        shutil.rmtree(aside)


@pytest.fixture
def release(built, tmp_path):
    serving = Release(shutil.copytree(built, tmp_path / "dist"))
    yield serving
    serving.stop()


@pytest.fixture
def handset(browser, release):
    """A phone with the first version installed."""
    taken = Handset(browser, release, worker=True)
    taken.install().close()
    yield taken
    taken.close()


def news(page):
    return page.get_by_text(NEWS)


def apply_button(page):
    return page.get_by_role("button", name=SITE["version"]["apply"])


def test_new_version_waits_for_a_touch(handset, release):
    """The old version serves through reloads and new pages until the offer is taken; then the new one does."""
    page = handset.open(CHANGED)
    expect(apply_button(page)).to_have_count(0)
    release.put_news()
    release.publish()
    assert page.evaluate(OUTCOME) == "installed"
    for again in (page, handset.open(CHANGED)):
        again.reload()
        expect(apply_button(again)).to_be_visible()
        expect(news(again)).to_have_count(0)
    apply_button(page).tap()
    expect(news(page)).to_be_visible()
    expect(apply_button(page)).to_have_count(0)
    handset.lose_signal()
    expect(news(handset.open(CHANGED))).to_be_visible()
    release.start()


def test_new_version_is_taken_at_the_next_start(handset, release):
    """Once every page is closed, the next start brings the new version without a touch."""
    page = handset.open()
    release.put_news()
    release.publish()
    assert page.evaluate(OUTCOME) == "installed"
    page.close()
    until_s = time.monotonic() + 10  # a browser takes its time to see that the last page is gone
    while not news(page := handset.open(CHANGED)).count() and time.monotonic() < until_s:
        page.close()
    expect(news(page)).to_be_visible()


ASK_WORKER = """async () => {
  const { waiting } = await navigator.serviceWorker.ready;
  const channel = new MessageChannel();
  const answer = new Promise((resolve) => { channel.port1.onmessage = ({ data }) => resolve(data.taken); });
  waiting.postMessage({ ask: "take over" }, [channel.port2]);
  return answer;
}"""


def held(page, why="held"):
    """The page tells of the waiting version and does not offer it."""
    expect(page.get_by_text(SITE["version"][why])).to_be_visible()
    expect(apply_button(page)).to_have_count(0)


def test_no_page_with_a_task_is_taken_over(handset, release):
    """While one tab runs a card and another a test, a third is told why it is offered nothing; once both are left, it is offered at once."""
    record = running_test()
    put_test(handset, record)
    test = handset.open(f"test/run/#{record['id']}/capacity")
    clock = test.get_by_role("timer").locator("b")
    card = open_card(handset, "scene")
    card.see()
    release.put_news()
    release.publish()
    assert card.page.evaluate(OUTCOME) == "installed"
    held(card.page)
    held(test)
    other = handset.open(CHANGED)
    held(other, "elsewhere")
    assert other.evaluate(ASK_WORKER) is False  # the offer of an older page, or one made a moment before the card was opened
    expect(news(handset.open(CHANGED))).to_have_count(0)
    was = clock.inner_text()
    expect(clock).not_to_have_text(was)
    card.shows(card.steps[1])
    card.page.reload()
    card.shows(card.steps[1])
    held(card.page)
    test.close()
    held(other, "elsewhere")
    card.page.goto(release.origin)  # the card is left, its tab is not
    apply_button(other).tap()
    expect(news(other)).to_be_visible()


def test_two_tabs_without_a_task_are_both_on_the_new_version(handset, release):
    """Taken in one tab, the new version is in the other too: none goes on with a part of each."""
    first, second = handset.open(CHANGED), handset.open(CHANGED)
    release.put_news()
    release.publish()
    assert first.evaluate(OUTCOME) == "installed"
    expect(apply_button(first)).to_be_visible()
    apply_button(second).tap()
    expect(news(second)).to_be_visible()
    expect(news(first)).to_be_visible()
    expect(apply_button(first)).to_have_count(0)
