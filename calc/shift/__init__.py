"""The shift cards: their laws, the next step, what stops them."""
