"""What a phone keeps is of the shape that tests/contracts gives: every phone of every test is looked at as it is put away."""
import time

from playwright.sync_api import expect

from tests.phone import store
from tests.phone.layout import fresh_layout


def test_a_drift_is_seen(handset):
    """What the Pressure page keeps is of its shape; a name more, or a number for a text, is not, and is named by its place."""
    layout = fresh_layout(handset)
    layout.step("flow", "more")
    layout.shows(174)  # by hand: 15.5 x 1.55^2 x 2 + 100 = 174.48
    layout.page.reload()  # what was noted is in the database by then
    expect(layout.page.get_by_role("main")).to_be_visible()
    layout.shows(174)
    rows, until = {}, time.monotonic() + 20
    while "drafts/pressure" not in rows and time.monotonic() < until:
        rows = dict(layout.page.evaluate(store.ALL) or [])
    assert store.drifts(rows.items()) == []
    kept = rows["drafts/pressure"]
    assert len(store.drifts([("drafts/pressure", {**kept, "odd": 1})])) == 1
    assert len(store.drifts([("drafts/pressure", {**kept, "crew": 2})])) == 1
    assert store.drifts([("drafts/odd", kept)]) == ["drafts/odd: no shape in tests/contracts/kept.toml"]
