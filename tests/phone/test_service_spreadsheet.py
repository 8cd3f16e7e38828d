"""The CSV of a French page, opened in a spreadsheet program of a French country: its numbers are numbers."""
import csv
import shutil
import subprocess

import pytest

from site_src.content import data
from tests import service_records as records
from tests.phone.proof import store

FR = data.words("service", "fr")
READ_FR = "59,34,76,1,,1036,false,true"  # parted at semicolons, in UTF-8, by the rules of French, numbers looked for
WRITE_EN = "44,34,76,1,,1033,false,false"  # each cell as the number it is


@pytest.mark.skipif(shutil.which("soffice") is None, reason="no spreadsheet program is installed here")
def test_a_french_file_in_a_french_spreadsheet(take, tmp_path):
    """29.9 inHg is 101.3 kPa (by hand, 3.3864 kPa an inHg): 101,3 in the file, and a number once it is opened."""
    handset = take(locale="fr-CA")
    record = store(handset, records.a_record())
    page = handset.open(f"fr/test/sheet/#{record['id']}")
    page.evaluate("() => { navigator.canShare = undefined; }")
    with page.expect_download() as saved:
        page.get_by_role("button", name=FR["sheet"]["csv"], exact=True).tap()
    source = tmp_path / "essai.csv"
    saved.value.save_as(source)
    written = list(csv.reader(source.read_text(encoding="utf-8-sig").splitlines(), delimiter=";"))
    assert {len(row) for row in written} == {8}
    assert "101,3" in [row[5] for row in written if row[4].startswith(FR["field"]["barometer_inhg"])]
    subprocess.run(["soffice", "--headless", f"-env:UserInstallation={(tmp_path / 'office').as_uri()}", f"--infilter=CSV:{READ_FR}", "--convert-to",
                    f"csv:Text - txt - csv (StarCalc):{WRITE_EN}", "--outdir", str(tmp_path / "opened"), str(source)], check=True, capture_output=True, timeout=120)
    opened = list(csv.reader((tmp_path / "opened" / "essai.csv").read_text(encoding="utf-8").splitlines()))
    assert [row[5] for row in opened if row[4].startswith(FR["field"]["barometer_inhg"])] == ["101.3"]
    assert len(opened) == len(written)
