"""Pages as claims: walks of touches at random after which a page's number must follow from what a person reads there.

Each run walks anew: SEED, settled once for a run and printed at its end, takes the same walks again. WALKS=n makes n of each.
"""
import os
import random


def chance(*names):
    """The luck of one walk of this run."""
    return random.Random(" ".join(map(str, (os.environ["SEED"], *names))))


def walks(usual):
    """The numbers of a kind's walks; how many of them a run takes, tests.sampling says."""
    return range(int(os.environ.get("WALKS", usual)))
