"""The words a person should see, from the site's own files."""
import re

from site_src.content import data

SITE = data.shared_words()
STEPS = data.step_words()
PRACTICE = data.words("practice")["practice"]
US = {f"u_{kind}": word for kind, word in SITE["unit"]["US"].items()}
KINDS = {name: step["kind"] for name, step in data.steps().items()}


def said(section, key, **facts):
    """One sentence of the site with its {names} filled in."""
    return SITE[section][key].format(**US, **facts)


def beginning(section, key):
    """A pattern for a sentence whose first {name} is not known beforehand."""
    return re.compile("^" + re.escape(SITE[section][key].split("{")[0]))


def answer_of(step, number=0):
    """The id of one of the answers of an ask, or None for any other step."""
    return list(STEPS[step]["answer"])[number] if "answer" in STEPS[step] else None
