"""Parts of a page that are drawn only while they are unfolded, and may hold more of the kind."""

UNFOLDED = """async () => {
  const isDrawn = (part) => part.open && part.children.length > 1;
  for (let waited = 0; waited < 200; waited += 1) {
    const parts = [...document.querySelectorAll("main details")];
    if (parts.every(isDrawn)) break;
    for (const part of parts) part.open = true;
    await new Promise((done) => setTimeout(done, 25));
  }
}"""


def unfold(page):
    """Unfold every part of a page, and wait until all of them are drawn."""
    page.locator("main details").first.wait_for()
    page.evaluate(UNFOLDED)
