"""What the Evidence page shows: what the tests found, as they kept it, and what still wants a page reference."""
import json

from site_src.content import data

LEAST_SHOWN = 5e-5  # a share that would be set as 0.00 %
GROUPS = {"published": "published", "second-hand": "second_hand", "from memory": "recalled"}  # by basis; what has no source was worked by hand
NAMED = ("formulas", "hoses")  # data files whose rows are told one by one


def found():
    """The parts of the last run of `python -m tests.evidence`, by part and Python."""
    return json.loads((data.FOLDER / "evidence.json").read_text(encoding="utf-8"))


def examples():
    """Printed examples that a phone can work out by itself, written by the same run."""
    return json.loads((data.FOLDER / "examples.json").read_text(encoding="utf-8"))


def percent(share):
    """A deviation as people read it, or None where it is too small for a figure."""
    return f"{100 * share:.2f}\u00a0%".replace(".", data.decimal()) if share >= LEAST_SHOWN else None


def groups(sources):
    """Sources by what they are worth, each with its count of examples and the topic furthest off."""
    kept = {}
    for source in sources:
        name = GROUPS[source["basis"]] if source["source"] else "worked"
        group = kept.setdefault(name, {"sources": [], "examples": 0, "worst": source["topics"][0]})
        group["sources"].append(source)
        group["examples"] += sum(topic["examples"] for topic in source["topics"])
        group["worst"] = max(group["worst"], *source["topics"], key=lambda topic: topic["worst"])
    return kept


def whole_pressures(sources):
    """Examples of a whole pump pressure, counted by what their sources are worth; of those worked by hand, sums of printed losses and figures of charts apart."""
    wholes = [{**source, "topics": [topic for topic in source["topics"] if topic["topic"].startswith("pdp_")]} for source in sources]
    counts = {name: group["examples"] for name, group in groups([source for source in wholes if source["topics"]]).items()}
    for name, apart in (("sums", "pdp_metric"), ("charts", "pdp_chart")):
        counts[name] = sum(topic["examples"] for source in wholes for topic in source["topics"] if topic["topic"] == apart)
        counts["worked"] -= counts[name]
    return counts


def by_topic(sources):
    """Every topic with the deviations of its examples, as signed shares of what is printed; the one furthest off first."""
    points = {}
    for source in sources:
        for topic in source["topics"]:
            points.setdefault(topic["topic"], []).extend(topic["points"])
    rows = [{"topic": topic, "points": sorted(each), "worst": max(map(abs, each))} for topic, each in points.items()]
    return sorted(rows, key=lambda row: (-row["worst"], row["topic"]))


def apart(published):
    """The most that a deviation differs between the two Pythons, as a share."""
    desk, phone = [
        [topic["worst"] for source in published[python] for topic in source["topics"]] for python in ("cpython", "micropython")
    ]
    return max(abs(here - there) for here, there in zip(desk, phone, strict=True))


def told_from_memory():
    """Formulas and hoses that nobody has yet seen on the page, by data file, as what, figure and source."""
    return {file: [_told(row) for row in data.named(file) if row["basis"] == "from memory"] for file in NAMED}


def _told(row):
    if "form" in row:
        return {"what": row["name"], "figure": row["form"], "source": row["source"]}
    figure = f"C {row['coefficient']}" if "coefficient" in row else f"C {row['coefficient_kpa']} kPa, 100 m, 100 L/min"
    return {"what": row["label"], "figure": figure, "source": row["source"]}


def counted_from_memory():
    """How many other figures wait for their page, by data file."""
    files = [path.relative_to(data.FOLDER).with_suffix("").as_posix() for path in sorted(data.FOLDER.rglob("*.toml"))]
    counts = {}
    for file in files:
        if file in NAMED or file.startswith("words/"):
            continue
        name = "checks" if file.startswith("checks/") else file.replace("/", "_")  # the checks' files are one to a reader
        counts[name] = counts.get(name, 0) + _recalled(data.load(file))
    return {file: count for file, count in counts.items() if count}


def _recalled(told):
    if isinstance(told, list):
        return sum(map(_recalled, told))
    if isinstance(told, dict):
        return (told.get("basis") == "from memory") + sum(map(_recalled, told.values()))
    return 0
