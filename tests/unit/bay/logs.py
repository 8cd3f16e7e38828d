"""Records as a phone writes them, and logs made at random."""
from hypothesis import strategies as st

RIG = {"rig_id": "r1", "rig_name": "Engine 1"}
DAY_MS = 86400000
NOW_MS = 1795996800000  # November 30, 2026, 00:00 UTC, by hand: 20,787 days


def record(kind, id, at_ms=NOW_MS, by="Hart", replaces=(), **body):
    return {"id": id, **RIG, "at_ms": at_ms, "by": by, "kind": kind, "replaces": list(replaces), **body}


def defect(id, rank="out_of_service", scope="pump", **more):
    body = {"origin": "check", "item": None, "what": "Low gear oil", "seen": "metal", "place": "", "state": "off", "limit": "", "rule": "list"}
    return record("defect", id, **{**body, "class": rank, "scope": scope, **more})


def decision(id, of, rank, replaces, scope="pump", limits="", **more):
    return record("decision", id, replaces=replaces, **{"defect": of, "class": rank, "scope": scope, "limits": limits, **more})


def release(id, defects, replaces, repaired_by="Moss", by="Hart", **more):
    body = {"opened": ["gear_case"], "proofs": ["leaks"], "limits": ""}
    return record("release", id, replaces=replaces, by=by, **{"defects": list(defects), "repaired_by": repaired_by, **body, **more})


@st.composite
def logs(draw, most=14):
    """A log in which officers decide on, repair, release and withdraw what they have seen, and sometimes have not."""
    made, opinions = [], {}
    for count in range(draw(st.integers(1, most))):
        id, at_ms = f"x{count:02d}", NOW_MS + draw(st.integers(-30, 30)) * DAY_MS
        ranks, scopes = st.sampled_from(["out_of_service", "restricted", "report", "note"]), st.sampled_from(["apparatus", "pump", "foam"])
        kind = draw(st.sampled_from(["defect", "decision", "release", "repair", "withdrawn"])) if opinions else "defect"
        if kind == "defect":
            made.append(defect(id, draw(ranks), draw(scopes), at_ms=at_ms))
            opinions[id] = [id]
            continue
        of = draw(st.sampled_from(sorted(opinions)))
        seen = draw(st.lists(st.sampled_from(opinions[of]), unique=True, max_size=3))
        if kind == "decision":
            made.append(decision(id, of, draw(ranks), seen, draw(scopes), at_ms=at_ms))
            opinions[of].append(id)
        elif kind == "release":
            made.append(release(id, [of], seen, at_ms=at_ms))
        elif kind == "repair":
            made.append(record("repair", id, at_ms=at_ms, defects=[of], done="replaced", parts="", hours="2"))
        else:
            made.append(record("withdrawn", id, at_ms=at_ms, replaces=[draw(st.sampled_from([other["id"] for other in made]))], reason="wrong rig"))
    return made


def long_log(count):
    """A log of years, as checks make it: of a hundred records one defect, its decision, its release, four checks, and the rest answers."""
    made = []
    for place in range(count):
        id, at_ms, turn = f"n{place:05d}", NOW_MS - (count - place) * 60000, place % 100
        if turn == 0:
            made.append(defect(id, at_ms=at_ms))
        elif turn == 1:
            made.append(decision(id, f"n{place - 1:05d}", "restricted", [f"n{place - 1:05d}"], at_ms=at_ms))
        elif turn == 2:
            made.append(release(id, [f"n{place - 2:05d}"], [f"n{place - 1:05d}"], at_ms=at_ms))
        elif turn % 25 == 3:
            made.append(record("round", id, at_ms=at_ms, list="weekly", items=[f"item_{number}" for number in range(22)]))
        else:
            begun = f"n{place - (turn - 3) % 25:05d}"
            made.append(record("answer", id, at_ms=at_ms, round=begun, item=f"item_{turn % 22}", answer="good", entry="12", amount=12, clock="run"))
    return made
