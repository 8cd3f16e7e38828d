"""The water and foam pages as a person uses them: opened, one entry changed, read."""
from site_src.content import data, reckoners, units

TOLD = data.words("water")


def ask(run, page, shown="US", family="customary", shelf=None, **changes):
    """The answer of a page at its opening entries but for the changes."""
    entries = {**reckoners.opening(page, family), **changes}
    return run(f"supply.{page}_answer", "answer", entries=entries, shelf=shelf or reckoners.shelf(page), units=units.shown_in(shown))


def row(answer, name):
    """The figure of this name."""
    return [each for each in answer["rows"] if each["name"] == name][0]


def called_to_mind(answer):
    """The codes of the cautions, in their order."""
    return [each["code"] for each in answer["cautions"]]


def fill(sentence, facts):
    """A sentence with its facts in it; fails where one is missing."""
    unit = {f"u_{kind}": word for kind, word in data.words("units")["unit"]["US"].items()}
    return sentence.format(**{**unit, **facts})
