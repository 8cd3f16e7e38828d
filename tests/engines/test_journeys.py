"""The same journeys in other engines than Chromium: installed once, and from then on with the host gone."""
import socket

import pytest

from tests.phone.handset import carried, ready
from tests.phone.words import SITE, STEPS, said

LENGTH = SITE["pressure"]["length"]
PSI = SITE["unit"]["US"]["pressure"]

pytestmark = pytest.mark.filterwarnings("ignore:setting remote_server_addr")  # selenium of itself


def pressure(phone):
    """The Pressure page, once it computes."""
    phone.open("pressure/")
    phone.entry(LENGTH)


def test_installs(away, built):
    """The start page says Ready once every file is held, and then the host is gone."""
    assert away.told_ready == ready(carried(built))
    with pytest.raises(OSError):
        socket.create_connection(("127.0.0.1", away.host.port), timeout=5)


def test_computes(away):
    """Pressure opens cold from the worker, with nothing from elsewhere, and answers a touch."""
    pressure(away)
    assert away.run("return navigator.serviceWorker.controller !== null")
    named = away.run("return [...document.querySelectorAll('script[src], link[rel=modulepreload], link[rel=preload], link[rel=stylesheet]')].map(({ src, href }) => src || href)")
    loaded = away.run("return performance.getEntriesByType('resource').map((entry) => entry.name)")
    assert {address.rpartition("/")[2] for address in named} >= {"site.css", "page.json", "engine_start.js", "common.js", "pressure.js"}
    assert set(named) <= set(loaded)  # seen to load, each file that the page names
    assert [address for address in loaded if not address.startswith(away.host.origin)] == []
    away.shows("output", f"170 {PSI}")  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    away.touch(said("pressure", "more", what=LENGTH))
    away.shows("output", f"187 {PSI}")  # by hand: 15.5 x 2.25 x 2.5 + 100 = 187.19


def test_entries_survive(away):
    """A layout is as it was left when its page is loaded again, and when it was closed and is opened."""
    pressure(away)
    away.touch(SITE["pressure"]["afresh"])
    away.touch(said("pressure", "less", what=LENGTH))
    away.shows("output", f"152 {PSI}")  # by hand: 15.5 x 2.25 x 1.5 + 100 = 152.31
    for again in (away.reload, lambda: pressure(away)):
        again()
        assert away.entry(LENGTH) == "150"
        away.shows("output", f"152 {PSI}")


def answer(phone):
    """Answer the step on the card with its first answer, or as seen, and wait for the next; gives what was to be done."""
    done = phone.wait(lambda: phone.text("h2"))
    answers = [list(step["answer"].values()) for step in STEPS.values() if step["act"] == done and "answer" in step]
    wanted = answers[0][0] if answers else SITE["shift"]["seen"]

    def moved_on():  # a card takes no answer in the first moment of a step
        return phone.text("h2") != done or phone.touch(wanted)

    phone.wait(moved_on)
    return done


def test_card_resumes(away):
    """A shift card goes from step to step, and is where it was when its page was closed and is opened again."""
    away.open("shift/scene/")
    done = [answer(away) for _ in range(4)]
    away.open("shift/scene/")
    resumed = SITE["shift"]["resumed"].partition("{")[0].strip()
    away.wait(lambda: any(told.startswith(resumed) for told in away.texts(".resumed")))
    away.touch(SITE["shift"]["record"])
    assert away.texts(".record li span") == done
    answer(away)
