"""Terms of the trade, marked in a baked sentence so that a touch explains them: a link to its place, whose words static/js/help/touched.js shows.

Written a second time there (`termed`): what a page draws itself cannot be baked, and what reads without scripts must be. Both take their forms from
the page of terms, the longest first; only how a word ends is said twice, since Python has no \\p{L} and an old phone's browser looks behind nothing.
"""
import re

from markupsafe import Markup, escape


def forms_of(terms):
    """{form in small letters: name of its term}, as they stand in sentences. terms: the words of `terms`, by name."""
    return {form.lower(): name for name, term in terms.items() for form in term["forms"].split("|")}


def marked(text, terms, address):
    """A text, escaped, in which the first mention of each term is a link; of forms that overlap, the longest.

    terms: {name: {"forms", ...}}; address: of the page of terms, to which "#name" is added
    """
    names = forms_of(terms)
    pattern = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, sorted(names, key=len, reverse=True)))})(?![\w-])", re.IGNORECASE)
    parts, end, seen = [], 0, set()
    for hit in pattern.finditer(text):
        name = names[hit[0].lower()]
        if name in seen:
            continue
        seen.add(name)
        parts += [escape(text[end:hit.start()]), Markup('<a class="term" href="{}#{}">{}</a>').format(address, name, hit[0])]
        end = hit.end()
    return Markup("").join([*parts, escape(text[end:])])
