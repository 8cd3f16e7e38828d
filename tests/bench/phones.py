"""Ten thousand phones on poor links, a static host, three releases in a day: which version each ends on, and what it fetched.

A model of `site_src/worker/` with the real list and the real compressed sizes, from one seed: files many at a time, each compared with its digest, tried
again after a lost request, kept where the rest does not come, in packs where that is less; a version is used once all of it is there, and from the next start on.

    nice .venv/bin/python tests/bench/phones.py [PHONES] [SEED]
"""
import collections
import gzip
import pathlib
import random
import statistics
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

import build
from site_src.publish import packing, release

DAY_S = 86400
RELEASES_S = (0, 28800, 57600)  # at night, in the morning, in the afternoon
TRIES, WAIT_S = 8, 4  # of one file in one go, and about as long between two: WAITS_MS of fetching.js
AT_ONCE = 12
PART, EACH = 0.3, 600  # what a file by itself costs, as parcels.js reckons
# Rates in bytes a second and ways there and back in seconds, as phones meet them; the share of phones on each.
LINKS = {"2G": (50e3 / 8, 0.6, 0.1), "3G, poor": (400e3 / 8, 0.4, 0.2), "3G": (1.5e6 / 8, 0.15, 0.3), "LTE": (12e6 / 8, 0.06, 0.4)}
MOST_LOSS = 0.2


def releases(dist):
    """Three releases of a built site, {name: (digest, compressed bytes, bytes, pack)} each: as built, one sentence on, then scripts, calc and some data.

    A pack is (its bytes, names in it), and None for a file that is in none. Those of later releases are of about the first one's size.
    """
    sizes = {name: len(gzip.compress((dist / name).read_bytes(), 6)) for name in [*release.carried(dist), "sw.js"]}
    listed = release.rows(dist, release.carried(dist))
    spoken = {name: language for name, _, _, language in listed}
    packs = {name: (len(content), tuple(inside)) for _, content, inside in packing.packs(dist, listed) for name in inside}
    first = {name: (1, size, (dist / name).stat().st_size, packs.get(name)) for name, size in sizes.items() if spoken.get(name) in (None, "en")}
    second = changed(first, 2, ["sw.js", "version.json", "cautions/index.html"])
    third = changed(second, 3, ["sw.js", "version.json", "calc.bin", "pressure/page.json", "page.json", *(name for name in first if name.startswith("static/js/"))])
    return first, second, third


def changed(files, digest, names):
    return {**files, **{name: (digest, *files[name][1:]) for name in names if name in files}}


def parcels(missing):
    """How a phone fetches what is missing, {name: its row}: [(bytes, names), ...], the long ones first."""
    inside = collections.defaultdict(list)
    for name, (_, _, _, pack) in missing.items():
        inside[pack].append(name)
    alone = inside.pop(None, [])
    made = []
    for (size, _), names in inside.items():
        if size < sum(missing[name][2] * PART + EACH for name in names):
            made.append((size, names))
        else:
            alone += names
    return sorted([*made, *((missing[name][1], [name]) for name in alone)], reverse=True)


class Phone:
    """One phone: what it keeps by name and digest, the version it answers from, and one that waits for the next start."""

    def __init__(self, chance, versions):
        self.chance, self.versions = chance, versions
        name = chance.choices(list(LINKS), [share for *_, share in LINKS.values()])[0]
        self.link, (self.rate, self.way_s, _) = name, LINKS[name]
        self.loss = chance.uniform(0, MOST_LOSS)
        self.kept, self.uses, self.waits = set(), None, None
        self.bytes = collections.Counter()

    def latest(self, at_s):
        return max(number for number, since in enumerate(RELEASES_S) if since <= at_s)

    def open(self, at_s, until_s):
        """One stay on the site; cut off at its end, whatever was under way. The page goes on by itself as long as it lasts."""
        if self.waits is not None:
            self.uses, self.waits = self.waits, None
            self.kept &= set((name, row[0]) for name, row in self.versions[self.uses].items())
        while at_s < until_s:
            wanted = self.latest(at_s)
            if wanted in (self.uses, self.waits):
                return
            at_s, is_whole = self.install(wanted, at_s, until_s)
            if is_whole:
                if self.uses is None:
                    self.uses = wanted
                else:
                    self.waits = wanted
            else:
                at_s += self.chance.uniform(5, 60)

    def install(self, wanted, at_s, until_s):
        """Fetch what this version has and the phone has not. What the host has by then counts: a file of a later version fails it."""
        version = self.versions[wanted]
        for size, names in parcels({name: row for name, row in version.items() if (name, row[0]) not in self.kept}):
            for _ in range(TRIES):
                at_s += size / self.rate + self.way_s / AT_ONCE
                if at_s >= until_s:
                    return at_s, False
                if self.chance.random() >= self.loss:
                    break
                at_s += WAIT_S / AT_ONCE
            else:
                return at_s, False
            self.bytes[wanted] += size
            host = self.versions[self.latest(at_s)]
            if any(host[name][0] != version[name][0] for name in names):
                return at_s, False
            self.kept |= {(name, version[name][0]) for name in names}
        return at_s, True

    def is_whole(self):
        """Whether every file of the version it answers from is there, as that version has it."""
        return self.uses is not None and all((name, digest) in self.kept for name, (digest, *_) in self.versions[self.uses].items())


def day(count, seed, versions):
    """A day of so many phones, opened at any hour, for seconds or minutes; and then once more, left lying with a page open."""
    phones = []
    for number in range(count):
        chance = random.Random(f"{seed} {number}")
        phone = Phone(chance, versions)
        for at_s in sorted(chance.uniform(0, DAY_S) for _ in range(chance.randint(1, 8))):
            phone.open(at_s, at_s + chance.expovariate(1 / 90))
            assert phone.uses is None or phone.is_whole(), "a version with a part of another"
        phone.whole_in_the_day = phone.is_whole()
        for _ in range(2):  # it fetches, and starts again
            phone.open(DAY_S, DAY_S * 2)
        phones.append(phone)
    return phones


def told(phones):
    """What became of them, as rows to print."""
    ends = collections.Counter((phone.uses, phone.is_whole()) for phone in phones)
    yield f"{len(phones)} phones end on: " + ", ".join(f"version {uses + 1} {'whole' if whole else 'IN PARTS'}: {count}" for (uses, whole), count in sorted(ends.items()))
    yield f"whole within the day, for stays of 90 s on average: {sum(phone.whole_in_the_day for phone in phones) / len(phones):.1%}"
    for number in range(len(RELEASES_S)):
        fetched = sorted(phone.bytes[number] / 1000 for phone in phones if phone.bytes[number])
        if fetched:
            yield f"release {number + 1}: {len(fetched)} phones fetched of it, median {statistics.median(fetched):.0f} kB, most {fetched[-1]:.0f} kB"
    after = [phone.bytes[1] / 1000 for phone in phones if phone.bytes[0] and phone.bytes[1] and phone.bytes[1] < 100_000]
    if after:
        yield f"one sentence, for those that had the release before: median {statistics.median(after):.1f} kB"


def main():
    count, seed = (int(text) for text in [*sys.argv[1:], "10000", "1"][:2]) if len(sys.argv) != 2 else (int(sys.argv[1]), 1)
    with tempfile.TemporaryDirectory() as folder:
        dist = pathlib.Path(folder) / "dist"
        build.build(dist)
        print(*told(day(count, seed, releases(dist))), sep="\n")


if __name__ == "__main__":
    main()
