"""Whether a signed test still says what was signed: its digest, as static/js/service/digest.js writes it."""
import hashlib
import json

SIGNED = ("schema", "id", "rig_id", "rig_name", "rig", "conditions", "accuracy", "equipment", "people", "tests", "events", "notes", "overrides",
          "photographed", "begun_ms", "finished_ms")


def digest(record):
    """SHA-256 of what a test says, its names in order; of its limits the edition, which the limits themselves are held to elsewhere."""
    told = {name: record[name] for name in SIGNED if name in record}
    told["standard"] = {name: record["standard"][name] for name in ("id", "kind", "edition") if name in record["standard"]}
    return _sha256(told)


def photo_digest(photo):
    """SHA-256 of what a photo shows, of which part, and when."""
    return _sha256([photo["part"], photo["at_ms"], photo["picture"]])


def _sha256(content):
    text = json.dumps(content, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()


def broken(record):
    """Names of those who signed something else than the test says now, or a photo of it shows."""
    signed = record.get("signed") or []
    now = digest(record) if signed else None
    is_strange = record.get("photographed") is not None and any(record["photographed"].get(photo["id"]) != photo_digest(photo) for photo in record.get("photos") or [])
    return [each["name"] for each in signed if is_strange or each["digest"] != now]
