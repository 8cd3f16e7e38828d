"""Whether a signed test still says what was signed: its digest, as static/js/service/digest.js writes it."""
import hashlib
import json

SIGNED = ("schema", "id", "rig_id", "rig_name", "rig", "conditions", "accuracy", "equipment", "people", "tests", "events", "notes", "overrides",
          "begun_ms", "finished_ms")


def digest(record):
    """SHA-256 of what a test says, its names in order; of its limits the edition, which the limits themselves are held to elsewhere."""
    told = {name: record[name] for name in SIGNED if name in record}
    told["standard"] = {name: record["standard"][name] for name in ("id", "kind", "edition") if name in record["standard"]}
    text = json.dumps(told, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()


def broken(record):
    """Names of those who signed something else than the test says now."""
    signed = record.get("signed") or []
    now = digest(record) if signed else None
    return [each["name"] for each in signed if each["digest"] != now]
