"""The voice: each sentence of the words keeps to the glossary at their top, and to American spelling."""
import re

import pytest

from site_src.content import data
from tests.site.test_languages import TOPICS, sentences

GLOSSARY = data.load("words/glossary")
TERMS = GLOSSARY["term"]
SPOKEN = [topic for topic in TOPICS if topic != "find"]  # which holds what people type, never shown
# where a word stands though it is banned: a place in a file (or what it begins with), the word, and why
EXCEPTIONS = [
    ("fr", "steps/other_drives.roll_gear.caution", "turbine"),  # of the torque converter, not the pump's
]


def pattern(words):
    return re.compile(rf"(?<![\w-])(?:{words})(?![\w-])", re.IGNORECASE)


def rules(language):
    """Every pattern that no sentence of a language may have, with what to say in its place."""
    for term in TERMS:
        yield from ((pattern(words), term[language]) for words in term.get(f"gone_{language}", ()))
    for words, better in {**GLOSSARY["banned"].get(language, {}), **(GLOSSARY["spelling"] if language == "en" else {})}.items():
        yield pattern(words), better


RULES = {language: list(rules(language)) for language in ("en", "fr")}


def excused(language, place, word):
    return any((language, word.lower()) == (of, excuse) and place.startswith(start) for of, start, excuse in EXCEPTIONS)


def hits(language, topic):
    """Places of a file where a word stands that the glossary has another for."""
    for place, sentence in sentences(data.load(f"words/{language}/{topic}")):
        if place[-1] == "also":  # what people type, not what the tool says
            continue
        address = ".".join(map(str, (topic, *place)))
        for rule, better in RULES[language] if isinstance(sentence, str) else ():
            for hit in rule.finditer(re.sub(r"\{\w+\}", "{}", sentence)):
                if not excused(language, address, hit[0]):
                    yield f"{address}: {hit[0]} (say: {better}) in {sentence[:120]}"


@pytest.mark.parametrize("topic", SPOKEN)
@pytest.mark.parametrize("language", ["en", "fr"])
def test_no_banned_word(language, topic):
    """No sentence has a word that the glossary bans, another word for one of its terms, or a British spelling."""
    assert list(hits(language, topic)) == []


@pytest.mark.parametrize("term", TERMS, ids=lambda term: term["en"])
def test_a_term_is_not_banned(term):
    """No term of the glossary has a word in it that the glossary bans."""
    for language, rules in RULES.items():
        assert [rule.pattern for rule, _ in rules if rule.search(term[language])] == []


def test_one_term_for_one_thing():
    """A term stands once in each language; what people call it is none of the term's own words."""
    for language in ("en", "fr"):
        terms = [term[language] for term in TERMS]
        assert len(set(terms)) == len(terms)
        assert [term["en"] for term in TERMS if term[language] in term.get(f"heard_{language}", ())] == []


@pytest.mark.parametrize("exception", EXCEPTIONS, ids=" ".join)
def test_an_exception_is_needed(exception):
    """What is excused stands there still."""
    language, start, word = exception
    said = {".".join(map(str, (topic, *place))): sentence for topic in TOPICS for place, sentence in sentences(data.load(f"words/{language}/{topic}"))}
    assert any(place.startswith(start) and isinstance(sentence, str) and word in sentence.lower() for place, sentence in said.items())


@pytest.mark.parametrize(("language", "sentence"), [
    ("en", "Mend the marked entry."), ("en", "Prove it afresh."), ("en", "Lays in which a line runs dry"), ("en", "The centre of the selector"),
    ("en", "Open the delivery."), ("en", "Cannot be."), ("en", "The kept card was old."), ("en", "Travelled 3 ft"),
    ("fr", "Perte par friction"), ("fr", "la boîte de transfert"), ("fr", "Rester sur un signal"), ("fr", "le vacuomètre"),
])
def test_a_banned_word_is_seen(language, sentence):
    """What the glossary bans is found in a sentence that has it."""
    assert any(rule.search(sentence) for rule, _ in RULES[language])


FORMS = {language: data.load(f"words/{language}/formulas")["form"] for language in ("en", "fr")}


@pytest.mark.parametrize("formula", FORMS["en"])
def test_a_formula_is_read_in_its_language(formula):
    """A formula that has words has others in French, and its figures a decimal comma there."""
    english, french = (FORMS[language][formula] for language in ("en", "fr"))
    assert (english != french) or not re.search(r"[a-z]{4}|\d\.\d", english)
    assert not re.search(r"\d\.\d", french)


@pytest.mark.parametrize(("language", "bare"), [("en", r"\bstayed\b(?! (?:lit|dark))"), ("fr", r"\bresté\b(?! (?:allumé|éteint))")])
def test_a_light_stays_lit_or_dark(language, bare):
    """No answer says of a light only that it stayed: beside a dark light that reads both ways."""
    answers = [noun for asked in data.load(f"words/{language}/faults")["asks"].values() for noun in asked[1:]]
    assert [noun for noun in answers if re.search(bare, noun, re.IGNORECASE)] == []
