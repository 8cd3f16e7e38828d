"""The entries that a caution of a water or foam page follows from are known, so that one from examples only is marked."""
from site_src.content import data


def test_every_caution_has_its_entries():
    """Each caution with words has them, and each is a field that is no rule."""
    water = data.load("water")
    warns = {code: entries for code, entries in water["warns"].items() if code not in ("source", "basis")}
    names = {field["name"] for field in water["field"] if not field.get("rule")}
    assert warns.keys() == data.words("water")["caution"].keys()
    for code, entries in warns.items():
        assert entries and names.issuperset(entries), code
