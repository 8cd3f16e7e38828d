"""The built site on a host, and phones to open it with."""
import pytest
from playwright.sync_api import expect, sync_playwright

from tests.browser import ARGUMENTS, chromium_path
from tests.phone.handset import Handset, Host, carried, phones, ready
from tests.phone.layout import fresh_layout
from tests.site.conftest import built  # noqa: F401  the same built site

expect.set_options(timeout=10000)


@pytest.fixture(scope="session")
def browser():
    with sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=chromium_path(), args=ARGUMENTS)
        yield running
        running.close()


@pytest.fixture(scope="session")
def host(built):  # noqa: F811
    """A host of the site for tests that leave it as it is."""
    serving = Host(built)
    yield serving
    serving.stop()


@pytest.fixture(scope="session")
def away(browser, built):  # noqa: F811
    """A phone that installed the site and has then lost every way to it."""
    handset = Handset(browser, Host(built), worker=True)
    start = handset.install()
    expect(start.get_by_text(ready(carried(built)), exact=True)).to_be_visible()
    start.close()
    handset.lose_signal()
    yield handset
    handset.close()


@pytest.fixture
def take(browser, host):
    """Take a phone: take(**settings). Whatever went wrong on it fails the test when it is put away."""
    with phones(browser, host) as one:
        yield one


@pytest.fixture
def handset(take):
    """A phone that has not installed the site."""
    return take()


@pytest.fixture(scope="module")
def take_for_module(browser, host):
    """Take a phone that several tests of a module use; put away after the last of them."""
    with phones(browser, host) as one:
        yield one


@pytest.fixture(scope="module")
def shared(take_for_module):
    """A phone, not installed, that the tests of a module share."""
    return take_for_module()


@pytest.fixture(scope="module")
def opened_layout(shared):
    return fresh_layout(shared)


@pytest.fixture
def layout(opened_layout):
    """The Pressure page of the shared phone, back at its opening layout."""
    opened_layout.press("afresh")
    opened_layout.shows(170)
    return opened_layout
