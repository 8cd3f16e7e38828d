"""How well a cause fits what was seen, and how much one more look would settle.

A sign's answer is "seen" or "not_seen"; an answered list holds pairs of a sign of the knowledge and its answer.
"""
import math

# What the classes weigh against one another, and how often a sign is seen: experience of the trade in round figures.
CLASSES = {"common": 4, "occasional": 2, "rare": 1}
SHOWN, MAY, SELDOM = 0.9, 0.5, 0.03
UNLISTED, UNLISTED_WEIGHT = 0.2, 1  # a cause that the knowledge does not list: how often it shows any sign, and its class


def chances(cause):
    """How often each sign that a cause names is seen where that cause is at work.

    cause: one of the knowledge's, see calc.diagnosis.fault

    Raises nothing. Source: experience of the trade, from memory.
    """
    named = {sign: MAY for sign in cause.get("may", ())}
    for sign in cause["shows"] + cause.get("brings", []):
        named[sign] = SHOWN
    return named


def chance(sign, named):
    """How often a sign is seen where a cause is at work.

    sign: one of the knowledge's, see calc.diagnosis.fault
    named: what chances says of the cause

    Raises nothing. Source: experience of the trade, from memory.
    """
    return named.get(sign["id"], MAY if sign.get("either") else SELDOM)


def weight(cause, answered):
    """The weight of a cause by all that was answered, and the ids of the signs that speak against it.

    cause: one of the knowledge's, see calc.diagnosis.fault
    answered: as the module says

    Raises nothing. Source: Bayes' rule, the signs taken as independent.
    """
    named = chances(cause)
    product, against = CLASSES[cause["likelihood"]], []
    for sign, answer in answered:
        seen = chance(sign, named)
        product *= seen if answer == "seen" else 1 - seen
        if seen == (SELDOM if answer == "seen" else SHOWN):
            against.append(sign["id"])
    return product, against


def unlisted_weight(answered):
    """The weight of all causes that the knowledge does not list.

    answered: as the module says

    Raises nothing. Source: Bayes' rule; how often they show a sign, from memory.
    """
    product = UNLISTED_WEIGHT
    for _, answer in answered:
        product *= UNLISTED if answer == "seen" else 1 - UNLISTED
    return product


def gain_bits(shares, seen):
    """Bits that one look tells, on average, of which cause it is: the doubt in its answer less what each cause leaves of it.

    shares: how likely each cause is, in any scale
    seen: how often each of them shows the sign, one of the four chances

    Raises nothing. Source: information theory (mutual information).
    """
    total = sum(shares)
    yes = sum([share * chance for share, chance in zip(shares, seen)])
    left = sum([share * _DOUBT_BITS[chance] for share, chance in zip(shares, seen)])
    return _doubt_bits(yes / total) - left / total


def of_answer(chances, seen):
    """How often an answer is given that says all signs of a question: some are seen, the others are not. In no scale.

    chances: how often each sign of the question is seen, 0 < chance < 1, by its id
    seen: ids of those that are seen with this answer

    Raises nothing. Source: the signs taken as independent, as in weight.
    """
    product = 1
    for sign in chances:
        product *= chances[sign] if sign in seen else 1 - chances[sign]
    return product


def answer_gain_bits(shares, odds):
    """Bits that a question of several answers tells, on average, of which cause it is: see gain_bits.

    shares: how likely each cause is, in any scale
    odds: for each of them how often each answer is given, above 0, in any scale

    Raises nothing. Source: information theory (mutual information).
    """
    total = sum(shares)
    mixed, left = [0] * len(odds[0]), 0
    for share, row in zip(shares, odds):
        whole = sum(row)
        rates = [one / whole for one in row]
        left += share / total * _spread_bits(rates)
        mixed = [sum_ + share / total * rate for sum_, rate in zip(mixed, rates)]
    return _spread_bits(mixed) - left


def _spread_bits(rates):
    """Bits in an answer of several, given how often each comes."""
    return -sum([rate * math.log2(rate) for rate in rates])


def _doubt_bits(chance):
    """Bits that a yes or no of this chance holds."""
    return -chance * math.log2(chance) - (1 - chance) * math.log2(1 - chance)


_DOUBT_BITS = {chance: _doubt_bits(chance) for chance in (SHOWN, MAY, SELDOM, UNLISTED)}
