"""Former editions of our own limits: what every standard was before a change of its data."""
import datetime
import functools
import hashlib
import json

from site_src.content import data, standards

FOLDER = data.FOLDER / "service" / "former"
DAY_MS = 86_400_000


def text_of(limits):
    """The limits of every standard as one text, the same for the same limits."""
    return json.dumps(limits, sort_keys=True)


def digest(text):
    return hashlib.sha256(text.encode()).hexdigest()


def hold():
    """Write the edition in force, as its data stands, where former ones lie; run it before a limit is changed.

    Then close its row in service/editions.toml with its last day and open the next one. Returns its digest.
    """
    text = text_of(standards.every())
    (FOLDER / f"{standards.edition()}.json").write_text(text, encoding="utf-8")
    return digest(text)


def limits(edition):
    """The limits of a former edition by standard and kind, whole."""
    return json.loads((FOLDER / f"{edition}.json").read_text(encoding="utf-8"))


@functools.cache
def every():
    """Former editions, newest first, as calc.service.limits takes them: each only by how it differs from ours."""
    return [
        {"id": row["id"], "last_ms": _last_ms(row["last"]), "standards": _unlike(limits(row["id"]), standards.every())}
        for row in reversed(data.load("service/editions")["edition"][:-1])
    ]


def _last_ms(day):
    """The end of a day, UTC."""
    return int(datetime.datetime.fromisoformat(f"{day}T00:00+00:00").timestamp() * 1000) + DAY_MS


def _unlike(old, new):
    return {
        name: {
            kind: {"was": {key: section for key, section in old[name][kind].items() if new[name][kind].get(key) != section},
                   "later": [key for key in new[name][kind] if key not in old[name][kind]]}
            for kind in old[name] if kind in new[name]
        } for name in old if name in new
    }
