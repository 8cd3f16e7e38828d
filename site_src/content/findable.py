"""What help's search looks through: every question and page under the words that people find it by, weighed once at build."""
import collections
import math
import re
import unicodedata

from site_src.content import data

ASKED, NAMED_PAGE, HEARD, ALSO, ANSWERED, TITLED, NAMED_TERM, NAMED_FAULT = 6, 7, 2, 4, 1.5, 1.5, 4, 4  # weight of a word by where it stands
HEARD_SO = 0.9  # of it, what people call a term or a fault
WORD = re.compile(r"[^\W_]+")


def folded(text):
    """Text in small letters without accents, as static/js/help/search.js folds what is typed."""
    return "".join(letter for letter in unicodedata.normalize("NFKD", text.lower()) if not unicodedata.combining(letter))


def words_of(text, silent=()):
    """The words of a text that say something, folded."""
    return [word for word in WORD.findall(folded(text)) if word not in silent]


def silent_words():
    """Words that every question has, in the language of the page that is being made."""
    return set(words_of(data.words("find")["silent"]))


def _heard(text, silent):
    """What people call the terms of the glossary that stand in a text."""
    language = data.LANGUAGE.get()
    return [
        word
        for term in data.load("words/glossary")["term"]
        if re.search(rf"(?<!\w){re.escape(term[language].split(' (')[0])}s?(?!\w)", text, re.IGNORECASE)
        for heard in term.get(f"heard_{language}", ())
        for word in words_of(heard, silent)
    ]


def index(questions, pages, terms=(), faults=()):
    """Words with the rows that each leads to: {"rows": [...], "words": {word: [[row, weight], ...]}}.

    questions: rows {"ask", "answer", "topic", "also", "address"}; pages: rows {"name", "address", "also", "of"}
    terms, faults: what has its place on a page: rows {"name", "address", "also", "of"}
    """
    silent = silent_words()
    rows, weights = [], []
    for row in questions:
        told = {ASKED: words_of(row["ask"], silent), ANSWERED: words_of(row["answer"], silent), TITLED: words_of(row["topic"], silent),
                ALSO: words_of(row["also"], silent), HEARD: _heard(row["ask"], silent)}
        rows.append({"name": row["ask"], "address": row["address"], "of": row["topic"]})
        weights.append(_weights(told))
    for row in pages:
        rows.append({"name": row["name"], "address": row["address"], "of": row["of"]})
        weights.append(_weights({NAMED_PAGE: words_of(row["name"], silent), ALSO: words_of(row["also"], silent), HEARD: _heard(row["name"], silent)}))
    for weight, row in [*((NAMED_TERM, row) for row in terms), *((NAMED_FAULT, row) for row in faults)]:
        rows.append({"name": row["name"], "address": row["address"], "of": row["of"]})
        weights.append(_weights({weight: words_of(row["name"], silent), weight * HEARD_SO: words_of(row["also"], silent)}))
    commonness = collections.Counter(word for row in weights for word in row)
    found = collections.defaultdict(list)
    for count, row in enumerate(weights):
        for word, weight in row.items():
            found[word].append([count, round(weight * math.log(1 + len(rows) / commonness[word]))])
    return {"rows": rows, "words": dict(found)}


def _weights(told):
    """The greatest weight that a word has in a row, by the word."""
    weights = {}
    for weight, words in told.items():
        for word in words:
            weights[word] = max(weights.get(word, 0), weight)
    return weights
