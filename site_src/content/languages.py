"""Where each language's pages lie: English at the root, every other in a folder of its name."""
from site_src.content import data

ANY_DEPTH = "/404.html"  # served at whatever address is unknown, so no relative link leads from it
FLEET = "rigs/"  # not carried by the phone: no page sends on to one of these


def prefix(language):
    """The folder of a language's pages, as a URL prefix; None at the root."""
    return None if language == "en" else f"/{language}"


def folder(language):
    """The folder of a language's pages below the site's root, with its slash; empty for English."""
    return "" if language == "en" else f"{language}/"


def is_fleet(name):
    """Whether a file of the built site is of a fleet's page, in any language."""
    return any(name.startswith(f"{folder(language)}{FLEET}") for language in data.languages())


def alternates(path, language):
    """The same page in every language: [(language, relative address), ...]; none where a phone could be sent astray.

    path: of the page, such as "/fr/pressure/"
    language: its language
    """
    page = path.removeprefix(prefix(language) or "").removeprefix("/")
    if path == ANY_DEPTH or page.startswith(FLEET) or len(data.languages()) == 1:
        return []
    root = "../" * (path.count("/") - 1)
    name = page if page and not page.endswith("/") else f"{page}index.html"
    return [(other, f"{root}{folder(other)}{name}") for other in data.languages()]
