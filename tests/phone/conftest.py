"""The built site on a host, and phones to open it with."""
import contextlib

import pytest
from playwright.sync_api import expect, sync_playwright

from tests.phone.handset import Handset, Host
from tests.phone.lay import fresh_lay
from tests.site.conftest import built  # noqa: F401  the same built site

CHROMIUM = "/usr/bin/chromium"
FLAGS = [
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
]
expect.set_options(timeout=10000)


@pytest.fixture(scope="session")
def browser():
    with sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield running
        running.close()


@pytest.fixture(scope="session")
def host(built):  # noqa: F811
    """A host of the site for tests that leave it as it is."""
    serving = Host(built)
    yield serving
    serving.stop()


@contextlib.contextmanager
def _phones(browser, host):
    taken = []

    def take(**settings):
        taken.append(Handset(browser, host, **settings))
        return taken[-1]

    yield take
    for handset in taken:
        handset.close()


@pytest.fixture
def take(browser, host):
    """Take a phone: take(**settings). Whatever went wrong on it fails the test when it is put away."""
    with _phones(browser, host) as one:
        yield one


@pytest.fixture
def handset(take):
    """A phone that has not installed the site."""
    return take()


@pytest.fixture(scope="module")
def shared(browser, host):
    """A phone, not installed, that the tests of a module share; put away after the last."""
    with _phones(browser, host) as one:
        yield one()


@pytest.fixture(scope="module")
def opened_lay(shared):
    return fresh_lay(shared)


@pytest.fixture
def lay(opened_lay):
    """The Pressure page of the shared phone, back at its opening lay."""
    opened_lay.press("afresh")
    opened_lay.shows(170)
    return opened_lay
