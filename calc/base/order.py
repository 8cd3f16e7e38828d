"""Rows in order, the same way on both Pythons."""


def ordered(rows, key=lambda row: row):
    """The rows as a list by their keys, least first; those with one key stay as they came.

    rows: anything that can be walked through
    key: what a row is ordered by, by itself where it is not named, asked once a row; keys compare with each other

    Merges the runs that are in order already, so a log that comes as it was written takes one look. Raises nothing.
    Source: the phone's own sort keeps no order of equals, asks the key at each comparison, and of rows in order already it compares each with each.
    """
    runs = []
    for row in rows:
        entry = (key(row), row)
        if runs and not entry[0] < runs[-1][-1][0]:
            runs[-1].append(entry)
        else:
            runs.append([entry])
    while len(runs) > 1:
        runs = [_merged(runs[at], runs[at + 1]) if at + 1 < len(runs) else runs[at] for at in range(0, len(runs), 2)]
    return [row for _, row in runs[0]] if runs else []


def _merged(one, other):
    """Two runs as one; of equals those of the first come first."""
    answer, at = [], 0
    for entry in one:
        while at < len(other) and other[at][0] < entry[0]:
            answer.append(other[at])
            at += 1
        answer.append(entry)
    return answer + other[at:]
