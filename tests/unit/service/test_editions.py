"""A test is judged by our limits in force, or by those of its day: former editions are held to the last figure."""
import copy

import pytest

from calc.base.errors import CalcError
from calc.service import page
from site_src.content import data, former, standards
from tests import service_records

US = service_records.US
ROWS = data.load("service/editions")["edition"]
DAY_MS = 86_400_000


def judged(run, record):
    return run("service.file", "judged", record=record, standards=standards.every(), former=former.every(), units=US)


def of_edition(id, **changes):
    """The whole record as a phone of that edition wrote it: its limits, and what they made of the readings."""
    record = {**service_records.a_record(), "standard": former.limits(id)["us"]["annual"], **changes}
    return {**record, "result": page.answer(copy.deepcopy(record), US)["summary"]}


def test_a_change_of_limits_makes_an_edition():
    """The edition in force is the data's, and no former one was touched: what a test was judged by stays what it was."""
    assert former.digest(former.text_of(standards.every())) == ROWS[-1]["sha256"], \
        "Limits changed: hold the former edition (site_src.content.former.hold, on the old data), then open a new row in service/editions.toml."
    for row in ROWS[:-1]:
        assert former.digest((former.FOLDER / f"{row['id']}.json").read_text(encoding="utf-8")) == row["sha256"], row["id"]
    assert [row["id"] for row in ROWS] == sorted(row["id"] for row in ROWS) and "last" not in ROWS[-1]


@pytest.mark.parametrize("id", [row["id"] for row in ROWS[:-1]])
def test_the_limits_of_its_day(run, id):
    """A test of a former edition is let in with its result, and the edition is named; one in force names none."""
    told = judged(run, of_edition(id))
    assert (told["edition"], told["claimed"]) == (id, None)
    assert judged(run, service_records.a_record())["edition"] is None


@pytest.mark.parametrize("id", [row["id"] for row in ROWS[:-1]])
def test_a_former_edition_ends(run, id):
    """A phone without signal may go on with it for 90 days, by hand from its last day; after that its limits are named and not counted."""
    end_ms = former.every()[[row["id"] for row in former.every()].index(id)]["last_ms"]
    assert judged(run, of_edition(id, begun_ms=end_ms + 90 * DAY_MS))["edition"] == id
    for begun_ms in (end_ms + 90 * DAY_MS + 1, None):
        with pytest.raises(CalcError) as refused:
            judged(run, of_edition(id, begun_ms=begun_ms))
        assert (refused.value.code, refused.value.facts["at"]) == ("former_limits", id)


def test_a_mix_of_editions_is_none(run):
    """Each limit of its own day, but never all on one: not ours."""
    record = of_edition("2026-11-25")
    record["standard"] = {**record["standard"], "edition": standards.edition()}
    with pytest.raises(CalcError) as refused:
        judged(run, record)
    assert refused.value.code == "other_limits"
    record = of_edition("2026-11-25")
    record["standard"]["vacuum"]["most_loss_inhg"] = 20
    with pytest.raises(CalcError) as refused:
        judged(run, record)
    assert refused.value.code == "other_limits"


def test_last_days():
    """By hand: 28 November 2026 ends 20,786 days after 1970 began."""
    assert {row["id"]: row["last_ms"] for row in former.every()}["2026-11-28"] == 20_786 * DAY_MS


def test_the_suction_table_of_its_day(run):
    """By hand, 6 in at 1,250 gpm and 20 ft: 5.2 ft now; 6.1 where the table was taken for the first 10 ft, as those tests were judged."""
    for rows, loss_ft in ((former.limits("2026-11-25")["us"]["annual"]["suction"], 6.1), (standards.standard("us", "annual")["suction"], 5.2)):
        assert run("pump.draft", "suction_loss_ft", rows=rows, size_in=6, flow_gpm=1250, length_ft=20) == pytest.approx(loss_ft)
