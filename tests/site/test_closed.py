"""The site that says it is closed: what build.py writes in place of the site, and that it goes by the names the site goes by."""
import re
import time

import pytest

import build

SOURCES = build.ROOT / "site_src"


@pytest.mark.parametrize("path", ["/", "/pump/"])
def test_the_closed_site_takes_the_place_of_all(tmp_path, path):
    """Nothing of the site is left in the folder; the page for any other address finds its script from there."""
    dist = tmp_path / "dist"
    (dist / "pressure").mkdir(parents=True)
    (dist / "pressure" / "index.html").write_text("225 psi", encoding="utf-8")
    build.close(dist, path)
    assert {file.relative_to(dist).as_posix() for file in dist.rglob("*")} == {"index.html", "404.html", "closed.css", "closed.js", "sw.js", "_headers"}
    assert f'<script src="{path}closed.js">' in (dist / "404.html").read_text(encoding="utf-8")
    assert (dist / "_headers").read_text(encoding="utf-8").startswith(f"{path}*\n")
    assert [entry.name for entry in tmp_path.iterdir()] == ["dist"]


def test_the_page_says_why_and_shows_no_figure():
    """In both languages: that it is closed, why no figure is shown, where entries are; no number that one could pump by, nothing inline."""
    page = (build.CLOSED / "index.html").read_text(encoding="utf-8")
    body = page.partition("<body>")[2]
    for said in ("This site is closed", "shows no figures any more", "What you entered is still on this phone",
                 "Ce site est fermé", "ne montre plus de chiffres", "encore sur ce téléphone"):
        assert said in body, said
    assert not re.search(r"\d", re.sub(r"<[^>]*>", "", body)) and "<style" not in page and not re.search(r"<script(?! src)", page)


def test_its_worker_deletes_what_the_site_keeps():
    """Each cache that the site's worker names by its scope, and none by another name."""
    named = {name for file in (SOURCES / "worker").glob("*.js") for name in re.findall(r"`([a-z-]+ )\$\{scope\}`", file.read_text(encoding="utf-8"))} - {"task "}
    deleted = re.search(r"\[(`files.*?)\]\.map", (build.CLOSED / "sw.js").read_text(encoding="utf-8"))[1]
    assert named and {f"`{name}${{scope}}`" for name in named} == set(deleted.split(", "))


def test_its_page_reads_what_the_site_keeps():
    """Database and notes by the names that the site has for them."""
    script = (build.CLOSED / "closed.js").read_text(encoding="utf-8")
    assert 'OLDEST = "panelhand"' in (SOURCES / "static" / "js" / "shared" / "older.js").read_text(encoding="utf-8") and '"panelhand"' in script
    assert 'scoped("note:")' in (SOURCES / "static" / "js" / "shared" / "notes.js").read_text(encoding="utf-8") and '"note:"' in script


def test_its_files_are_newer_than_the_site(tmp_path):
    """A phone asks for a worker that changed since; a host that goes by dates sends it only where it is dated later than the one there was."""
    began = time.time() - 2  # some disks keep every other second
    build.close(tmp_path / "dist")
    assert all(file.stat().st_mtime >= began for file in (tmp_path / "dist").iterdir())
