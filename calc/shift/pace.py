"""Whether the steps of a shift card were answered faster than they can be read, and whether a run of it counts as seen."""

WORDS_PER_S = 10  # 600 a minute: skimming; adults read 240 a minute with care (reading research, from memory)


def too_quick(records, words):
    """The steps that were answered before their act and sign could even be skimmed.

    records: what was confirmed, each `{"step", "took_s"}`; took_s in seconds, None where nobody knows
    words: how many words the act and the sign of each step have, by step

    Returns a list of steps, in their order. Raises nothing.
    """
    return [record["step"] for record in records
            if record["took_s"] is not None and record["took_s"] < words.get(record["step"], 0) / WORDS_PER_S]


def is_unseen(status, records, quick):
    """Whether a run does not count as seen: done with any step too quick, or left with none that was read.

    status: of the run, see calc.shift.card; a stop is a stop however quickly it came
    records: what was confirmed, as for too_quick
    quick: the steps that were too quick, see too_quick

    Returns a boolean. Raises nothing.
    """
    if status == "done":
        return bool(quick)
    timed = [record for record in records if record["took_s"] is not None]
    return status == "running" and bool(timed) and len(quick) == len(timed)
