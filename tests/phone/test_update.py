"""A new version waits for a touch, a broken one changes nothing, and a card under way is left alone."""
import shutil

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

    def put_news(self):
        self.page().write_text(self.page().read_text().replace("</main>", f"<p>{NEWS}</p></main>"))

    def publish(self, breakage=None):
        """Put the worker of the files as they stand in place at once, and before it what breaks the changed page."""
        aside = shutil.copytree(self.dist, self.dist.with_name("aside"), ignore=shutil.ignore_patterns("sw.js"))
        build.write_worker(aside)
        if breakage:
            breakage(self.page())
        (aside / "sw.js").replace(self.dist / "sw.js")
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
    for _ in range(20):
        page = handset.open(CHANGED)
        if news(page).count():
            break
        page.close()
    expect(news(page)).to_be_visible()


def held(page):
    """The page tells of the waiting version and does not offer it."""
    expect(page.get_by_text(SITE["version"]["held"])).to_be_visible()
    expect(apply_button(page)).to_have_count(0)


def test_task_under_way_is_left_alone(handset, release):
    """A waiting version is told but not offered on a card and on a service test; taken elsewhere, both go on as they were."""
    record = running_test()
    put_test(handset, record)
    test = handset.open(f"test/run/#{record['id']}/capacity")
    clock = test.get_by_role("timer").locator("b")
    card = open_card(handset, "bay")
    card.see()
    release.put_news()
    release.publish()
    assert card.page.evaluate(OUTCOME) == "installed"
    held(card.page)
    held(test)
    card.shows(card.steps[1])
    card.see()
    card.page.reload()
    card.shows(card.steps[2])
    held(card.page)
    page = handset.open(CHANGED)
    apply_button(page).tap()
    expect(news(page)).to_be_visible()
    card.shows(card.steps[2])
    card.see()
    card.shows(card.steps[3])
    was = clock.inner_text()
    expect(clock).not_to_have_text(was)
