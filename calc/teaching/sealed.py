"""A few bytes as text that travels in a link: no word of it can be read at a glance, and a letter changed or lost is noticed.

This hides a planted fault from whoever glances at a link; it keeps nothing secret from somebody who means to read it.
"""
from calc.base.errors import CalcError

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
MOST_LETTERS = 2400
LARGEST_SALT = 65535
_SUM_BYTES = 2


def sealed(values, salt):
    """Bytes as text.

    values: a list of whole numbers, 0 to 255
    salt: a whole number, 0 to 65535, another each time: the same bytes then look different

    Returns letters, digits, - and _. Raises CalcError naming salt.
    """
    if not isinstance(salt, int) or not 0 <= salt <= LARGEST_SALT:
        raise CalcError("salt", "out_of_range", least=0, most=LARGEST_SALT)
    checked = values + _pair(check_sum(values + _pair(salt)))
    return _text(_pair(salt) + _masked(checked, salt))


def opened(text):
    """The bytes of a text that sealed made.

    text: what came in, anything

    Returns a list of whole numbers, 0 to 255. Raises CalcError naming code: "broken", where it is not such a text, unchanged.
    """
    if not isinstance(text, str) or not text or len(text) > MOST_LETTERS or any(letter not in LETTERS for letter in text):
        raise CalcError("code", "broken")
    read = _bytes(text)
    if len(read) < 2 + _SUM_BYTES or _text(read) != text:
        raise CalcError("code", "broken")
    salt = read[0] * 256 + read[1]
    checked = _masked(read[2:], salt)
    values = checked[:-_SUM_BYTES]
    if checked[-_SUM_BYTES:] != _pair(check_sum(values + _pair(salt))):
        raise CalcError("code", "broken")
    return values


def check_sum(values):
    """The check of a row of bytes: any change within 16 bits in a row is noticed.

    values: a list of whole numbers, 0 to 255

    Returns a whole number, 0 to 65535. Raises nothing.
    Source: the CRC-16 of polynomial 0x1021 that begins at 0xFFFF; its check figure for "123456789" is 0x29B1.
    """
    crc = 0xFFFF
    for value in values:
        crc ^= value * 256
        for _ in range(8):
            crc = crc * 2
            if crc > 0xFFFF:
                crc = (crc ^ 0x1021) & 0xFFFF
    return crc


def _pair(number):
    return [number // 256, number % 256]


def _masked(values, salt):
    """Each byte under the next of a row of numbers that the salt begins (multiplier 75, modulus 65537)."""
    state, masked = salt + 1, []
    for value in values:
        state = (state * 75 + 74) % 65537
        masked.append(value ^ (state // 16 % 256))
    return masked


def _text(values):
    letters, held, bits = [], 0, 0
    for value in values:
        held, bits = held * 256 + value, bits + 8
        while bits >= 6:
            bits -= 6
            letters.append(LETTERS[held >> bits])
            held &= (1 << bits) - 1
    if bits:
        letters.append(LETTERS[held << (6 - bits)])
    return "".join(letters)


def _bytes(text):
    values, held, bits = [], 0, 0
    for letter in text:
        held, bits = held * 64 + LETTERS.index(letter), bits + 6
        if bits >= 8:
            bits -= 8
            values.append(held >> bits)
            held &= (1 << bits) - 1
    return values
