"""A page worked by keys alone: at every stop the focus is somewhere, in sight, and under nothing."""
import pathlib

MEASURE = (pathlib.Path(__file__).parent / "measure.js").read_text(encoding="utf-8")
HAS_FOCUS = "(element) => element === document.activeElement"
BEFORE = "(element) => Boolean(document.activeElement.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING)"
RING = 3  # contrast, WCAG 2.2, 1.4.11 and 2.4.13
MOST = 120  # stops of one page


def fault(focus, may_move=False):
    """What is wrong with where the focus stands, or None; with `may_move` the page may have grown and moved it out of sight."""
    if focus["isLost"]:
        return "nowhere"
    if focus["ring"] < RING:
        return f"ring of {focus['name']}: {focus['ring']:.1f}"
    return f"covered: {focus['name']}" if focus["isCovered"] and not may_move else None


class Keys:
    """The keyboard at an open page."""

    def __init__(self, page):
        self.page = page
        page.evaluate(MEASURE)

    def stand(self, **may):
        """What has the focus."""
        focus = self.page.evaluate("measure.focus()")
        assert not fault(focus, **may), fault(focus, **may)
        return focus["name"]

    def at(self, wanted):
        return wanted.evaluate(HAS_FOCUS)

    def to(self, wanted):
        """Tab on to a control, or back where it lies before."""
        lies_before = wanted.evaluate(BEFORE)
        passed = []
        while not self.at(wanted) and len(passed) < MOST:
            self.page.keyboard.press("Shift+Tab" if lies_before else "Tab")
            passed.append(self.stand())
        assert self.at(wanted), f"not reached: {wanted}, passed {passed}"

    def press(self, wanted, key="Enter"):
        """Tab on to a control and press it; the focus is somewhere afterwards."""
        self.to(wanted)
        self.page.keyboard.press(key)
        self.page.evaluate("new Promise(requestAnimationFrame)")
        return self.stand(may_move=True)

    def type(self, wanted, text):
        """Tab on to a field, which selects what stands there, and type over it."""
        self.to(wanted)
        self.page.keyboard.type(text)
        assert self.at(wanted)

    def hold(self, key, times):
        """Hold a key down: it repeats."""
        for _ in range(times):
            self.page.keyboard.down(key)
            self.page.wait_for_timeout(40)
        self.page.keyboard.up(key)
