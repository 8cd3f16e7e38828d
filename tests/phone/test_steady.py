"""Nothing moves under a thumb when the calculator arrives after the page."""
import pytest

SHIFTS = """() => new Promise((done) => {
  const seen = [];
  new PerformanceObserver((list) => seen.push(...list.getEntries())).observe({ type: "layout-shift", buffered: true });
  setTimeout(() => done(seen.reduce((sum, { value }) => sum + value, 0)), 100);
})"""
# what a page shows only once it computes
PAGES = {
    "pressure/": "button.lay-line", "water/relay/": "#why details", "diagnose/": "#diagnose .key", "why/": "#bench .key", "shift/bay/": "#card .key",
}


@pytest.mark.parametrize("address", PAGES)
def test_page_stays_where_it_is(handset, address):
    """What is in sight before the calculator is there keeps its place once it is."""
    page = handset.context.new_page()
    held = []
    page.route("**/micropython.wasm", lambda route: held.append(route))
    page.goto(handset.host.origin + address)
    page.wait_for_timeout(300)  # the page stands as it opens, for a time in which it is seen
    for route in held:
        route.continue_()
    page.locator(PAGES[address]).first.wait_for()
    assert page.evaluate(SHIFTS) < 0.01
