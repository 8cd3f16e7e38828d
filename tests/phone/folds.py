"""Parts of a page that are drawn only while they are unfolded."""


def unfold(page):
    """Unfold every part of a page that was drawn."""
    page.locator("main details").first.wait_for()
    page.evaluate("for (const part of document.querySelectorAll('main details')) part.open = true")
