"""Hydraulics, test rules and shift sequences: numbers and codes, never words.

The same files run under CPython in the tests and under MicroPython on the phone.
Where a docstring says "contract `name`", that shape stands under this name in tests/contracts.
"""
