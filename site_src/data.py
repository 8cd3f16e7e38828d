"""The data files and words of the site, read once."""
import functools
import pathlib
import tomllib

FOLDER = pathlib.Path(__file__).parent / "data"


@functools.cache
def load(name):
    """One data file as plain data.

    name: path below site_src/data without its ending, such as "hoses"

    Raises FileNotFoundError where there is none.
    """
    with open(FOLDER / f"{name}.toml", "rb") as file:
        return tomllib.load(file)


def by_id(rows):
    """Rows by their `id`, in their order."""
    return {row["id"]: row for row in rows}


def sequence(name):
    """The logic of one shift sequence, as calc.shift takes it."""
    shifts = load("sequences")
    steps = by_id(shifts["step"])
    listed = by_id(shifts["sequence"])[name]
    kept = ("id", "kind", "act", "hold_s", "needs", "proves", "voids", "skip_if", "answers")
    return {
        "id": name,
        "anchor": listed["anchor"],
        "rig": shifts["rig"],
        "steps": [{key: steps[step][key] for key in kept if key in steps[step]} for step in listed["steps"]],
    }
