"""Bytes as text for a link: whole again when opened, unlike from time to time, and refused when a letter is another."""
import base64
import binascii
import random

import pytest

from calc.base.errors import CalcError
from calc.teaching import sealed

BYTES = [1, 0, 0, 3]


def by_libraries(values, salt):
    """The same text by Python's own CRC and Base64 (RFC 4648, for addresses), under the multiplicative generator 75, 74, 65537."""
    pair = salt.to_bytes(2, "big")
    checked, state = bytes(values) + binascii.crc_hqx(bytes(values) + pair, 0xFFFF).to_bytes(2, "big"), salt + 1
    masked = []
    for value in checked:
        state = (state * 75 + 74) % 65537
        masked.append(value ^ state >> 4 & 255)
    return base64.urlsafe_b64encode(pair + bytes(masked)).decode().rstrip("=")


def test_check_figure(run):
    """The published check figure of this CRC for the digits 1 to 9 is 0x29B1."""
    assert run("teaching.sealed", "check_sum", values=list(b"123456789")) == 0x29B1


@pytest.mark.parametrize("values", [[], [255, 127], list(range(256)), [255, 255]])  # the second carries out of just the highest bit
def test_check_figure_by_a_library(run, values):
    """Python's own CRC of the same polynomial says the same."""
    assert run("teaching.sealed", "check_sum", values=values) == binascii.crc_hqx(bytes(values), 0xFFFF)


@pytest.mark.parametrize("values", [[], BYTES, list(range(256))])
def test_a_link_of_last_year_opens(run, values):
    """The text is no matter of a version: it is what standard libraries make of the bytes and the salt."""
    for salt in (0, 1, 255, 256, 4711, 65535):
        assert run("teaching.sealed", "sealed", values=values, salt=salt) == by_libraries(values, salt)


@pytest.mark.parametrize("values", [[], [0], [255] * 5, BYTES, list(range(256)) * 3])
def test_opened_is_what_was_sealed(run, values):
    """Any bytes come back, whatever the salt."""
    for salt in (0, 1, 4711, 65535):
        text = run("teaching.sealed", "sealed", values=values, salt=salt)
        assert set(text) <= set(sealed.LETTERS)
        assert run("teaching.sealed", "opened", text=text) == values


def test_both_pythons_seal_alike(run):
    """A phone of either kind reads the other's text."""
    assert run("teaching.sealed", "sealed", values=BYTES, salt=777) == sealed.sealed(BYTES, 777)


def test_the_same_fault_looks_different(run):
    """Two links of one fault share no beginning a finder could learn: of 200 salts, no two give one text after the salt's own letters."""
    texts = [sealed.sealed(BYTES, salt)[3:] for salt in range(0, 60000, 300)]
    assert len(set(texts)) == len(texts)


def test_any_other_letter_is_refused(run):
    """Each single letter changed, dropped or doubled is refused; a CRC notices all changes within 16 bits."""
    text = sealed.sealed(BYTES, 4711)
    chance = random.Random(8)
    for at in range(len(text)):
        other = chance.choice([letter for letter in sealed.LETTERS if letter != text[at]])
        for edited in (text[:at] + other + text[at + 1:], text[:at] + text[at + 1:], text[:at] + text[at] + text[at:]):
            if edited == text:
                continue
            with pytest.raises(CalcError) as refusal:
                run("teaching.sealed", "opened", text=edited)
            assert (refusal.value.field, refusal.value.code) == ("code", "broken")


def test_bits_that_say_nothing_are_refused(run):
    """Eight bytes are eleven letters with two bits to spare: a letter that differs in these alone is another text."""
    text = run("teaching.sealed", "sealed", values=BYTES, salt=4711)
    with pytest.raises(CalcError):
        run("teaching.sealed", "opened", text=text[:-1] + sealed.LETTERS[sealed.LETTERS.index(text[-1]) + 1])


def test_as_long_as_a_link_may_be(run):
    """By hand: 2,400 letters are 1,800 bytes, of which four are salt and check; three more are too long."""
    most = [7] * 1796
    assert run("teaching.sealed", "opened", text=by_libraries(most, 5)) == most
    with pytest.raises(CalcError) as refusal:
        run("teaching.sealed", "opened", text=by_libraries(most + [7] * 3, 5))
    assert (refusal.value.field, refusal.value.code) == ("code", "broken")


@pytest.mark.parametrize("text", ["", "A", "AA", "AAA", "AAAA", "a b", "é" * 10, "A" * 2401, None, 5, ["A"]])
def test_anything_else_is_refused(run, text):
    """What is no such text is refused by name."""
    with pytest.raises(CalcError) as refusal:
        run.unheld("teaching.sealed", "opened", text=text)
    assert (refusal.value.field, refusal.value.code) == ("code", "broken")


@pytest.mark.parametrize("salt", [-1, 65536, 1.5, None])
def test_a_salt_out_of_range(run, salt):
    """A salt is a whole number of two bytes."""
    with pytest.raises(CalcError) as refusal:
        run.unheld("teaching.sealed", "sealed", values=BYTES, salt=salt)
    assert (refusal.value.field, refusal.value.code, refusal.value.facts) == ("salt", "out_of_range", {"least": 0, "most": 65535})
