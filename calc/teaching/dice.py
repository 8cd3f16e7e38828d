"""Chance that both Pythons throw alike: the same seed, the same throws, on the phone and on the desk."""

_MASK = 0x7FFFFFFF
_WARMING = 4  # throws passed over, so that seeds side by side do not begin alike


class Dice:
    """Throws of one seed, in their order."""

    def __init__(self, seed):
        self.state = (int(seed) * 2654435761 + 12345) & _MASK
        for _ in range(_WARMING):
            self.below(2)

    def below(self, count):
        """A whole number from 0 to count - 1, each as likely."""
        self.state = (self.state * 1103515245 + 12345) & _MASK
        return (self.state >> 8) % count

    def pick(self, rows):
        """One of the rows."""
        return rows[self.below(len(rows))]

    def mixed(self, rows):
        """The rows in another order."""
        rest, mixed = list(rows), []
        while rest:
            mixed.append(rest.pop(self.below(len(rest))))
        return mixed
