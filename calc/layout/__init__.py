"""Hose layouts as typed, asked and flowing, and the pump under them."""
