"""The file that the page of a closed site hands out: all that a phone held, by store and key, as the files that phones export by themselves."""
from site_src.report.logs import FORMAT as LOG

FORMAT = "entries"
PHOTO = ("id", "part", "at_ms", "picture")  # of a test, as its own file has it
LARGEST_BYTES = 64_000_000  # of such a file, as a phone takes it


def is_entries(content):
    """Whether what a file holds says that it is all of a phone's entries."""
    return isinstance(content, dict) and content.get("format") == FORMAT


def parts(content):
    """What a file holds, one after another: the tests of a phone in one list, each rig's log; a file of another kind whole."""
    if not is_entries(content):
        return [content]
    logs = {}
    for record in rows(content, "bay"):
        rig_id = record.get("rig_id") if isinstance(record, dict) else None
        logs.setdefault(rig_id if isinstance(rig_id, str) else None, []).append(record)
    return [[_with_photos(test, rows(content, "photos")) for test in rows(content, "tests")], *({"format": LOG, "schema": 1, "rig_id": rig_id, "records": records} for rig_id, records in logs.items())]


def _with_photos(test, photos):
    own = [{name: photo.get(name) for name in PHOTO} for photo in photos if isinstance(photo, dict) and isinstance(test, dict) and photo.get("test") == test.get("id")]
    return {**test, "photos": own} if own else test


def rows(content, store):
    """The records of one store."""
    kept = content.get(store)
    return list(kept.values()) if isinstance(kept, dict) else []
