"""A single short reading of a run that is inside the instruments' error: the mean of the run counts."""
from calc.service.judge import FAIL, judged


def counted(rows):
    """The figures of a run that count, where a standard judges it on its mean.

    rows: its judged sets of readings, each contract `set_judged`; where one is left to the mean, its `is_by_mean` is set

    Returns their figures, and in place of one single short figure inside its own band the mean of all of that kind: below the point
    that fails too. A second short reading, or one further off than its band, counts as it is. Raises nothing.
    Source: the averages that a test's form asks for; one reading only, inside the error: common practice.
    """
    figures, forgiven = [figure for row in rows for figure in row["figures"]], []
    for place, name in enumerate(("flow_gpm", "net_psi")):
        read = [row["figures"][place] for row in rows if row["figures"][place]["value"] is not None]
        short = [figure for figure in read if figure["status"] == FAIL]
        if len(read) > 1 and len(short) == 1 and short[0]["is_close"]:
            mean = judged("mean_" + name, short[0]["kind"], sum(figure["value"] for figure in read) / len(read), short[0]["least"], None,
                          max(figure["band"] for figure in read))
            figures = [mean if figure is short[0] else figure for figure in figures]
            if mean["status"] != FAIL:
                forgiven.append(short[0])
    for row in rows:
        failed = [figure for figure in row["figures"] if figure["status"] == FAIL]
        row["is_by_mean"] = bool(failed) and all([any([figure is other for other in forgiven]) for figure in failed])
    return figures


def is_on_mean(figures):
    """Whether a run that passed did so on its mean.

    figures: of counted

    Raises nothing.
    """
    return any([figure["id"][:5] == "mean_" for figure in figures])
