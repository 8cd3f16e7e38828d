"""The folder a fleet's report is made in: what lies there stays, and what is no regular file is named, never followed."""
import os

import pytest

from site_src.report import pages as report
from tests.site.test_report import FAILED, ON, WHOLE, YEARS, put, reported, section


def test_no_folder_and_no_file(tmp_path):
    """Where there is nothing to report on, that is said."""
    for folder in (tmp_path / "nowhere", tmp_path):
        with pytest.raises(report.ReportError):
            report.write(folder, ON)


def test_only_pages_of_an_earlier_report_are_deleted(tmp_path):
    """A folder called report may hold more: it stays, and where a page would be written over it that is refused."""
    put(tmp_path, one=WHOLE, two=FAILED)
    out = tmp_path / "report"
    out.mkdir()
    others = {"notes.html": "<p>mine</p>", "rig-notes.html": "<p>mine too</p>", "data.json": "[]"}
    for name, text in others.items():
        (out / name).write_text(text, encoding="utf-8")
    report.write(tmp_path, ON)
    before = {path.name for path in out.glob("rig-*.html")} - others.keys()
    assert len(before) == 2
    (tmp_path / "two.json").unlink()
    report.write(tmp_path, ON)
    assert len({path.name for path in out.glob("rig-*.html")} - others.keys()) == 1
    assert {name: (out / name).read_text(encoding="utf-8") for name in others} == others
    (out / "index.html").write_text("<p>mine</p>", encoding="utf-8")
    with pytest.raises(report.ReportError, match="index.html: not a page of an earlier report"):
        report.write(tmp_path, ON)
    assert (out / "index.html").read_text(encoding="utf-8") == "<p>mine</p>"


def test_a_file_in_the_reports_place(tmp_path):
    """Where the folder would stand there is a file: said, and left."""
    put(tmp_path, one=WHOLE)
    (tmp_path / "report").write_text("mine", encoding="utf-8")
    with pytest.raises(report.ReportError, match="this is a file or a link"):
        report.write(tmp_path, ON)
    assert (tmp_path / "report").read_text(encoding="utf-8") == "mine"


def test_a_link_in_the_reports_place(tmp_path):
    """A link called report leads elsewhere: nothing is deleted or written there."""
    elsewhere, folder = tmp_path / "elsewhere", tmp_path / "tests"
    elsewhere.mkdir()
    folder.mkdir()
    put(folder, one=WHOLE)
    (elsewhere / "rig-x.html").write_text(report.MARK, encoding="utf-8")
    (folder / "report").symlink_to(elsewhere)
    with pytest.raises(report.ReportError, match="a link"):
        report.write(folder, ON)
    assert [path.name for path in elsewhere.iterdir()] == ["rig-x.html"]


@pytest.mark.parametrize("make", [
    lambda path: path.mkdir(), os.mkfifo, lambda path: path.symlink_to("nowhere"), lambda path: path.symlink_to(path),
    lambda path: path.symlink_to("/dev/zero"), lambda path: path.symlink_to("good.json"),
], ids=["folder", "pipe", "broken link", "link to itself", "link without an end", "link to a test"])
def test_what_is_no_file_is_named(tmp_path, make):
    """A folder, a pipe that never ends, a link to nothing: each is named, and the report is made."""
    put(tmp_path, good=WHOLE)
    make(tmp_path / "odd.json")
    text, counts = reported(tmp_path)
    assert (counts["tests"], counts["bad"]) == (1, 1) and "odd.json" in section(text, YEARS["report"]["bad"])
