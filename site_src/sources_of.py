"""Where a place in the site's scripts stands in the sources, for an error report: the site has no source maps, but the same sources make the same bundle.

    .venv/bin/python -m site_src.sources_of pages/pressure.js:1:2345      (as a browser's console says it: file, line, column)
"""
import json
import pathlib
import sys
import tempfile

from site_src import bundle

DIGITS = {letter: value for value, letter in enumerate("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/")}


def numbers(text):
    """The numbers of one segment of a source map: base 64, five bits a letter, the lowest bit of a number its sign."""
    read, value, shift = [], 0, 0
    for letter in text:
        value += (DIGITS[letter] & 31) << shift
        shift += 5
        if not DIGITS[letter] & 32:
            read.append(-(value >> 1) if value & 1 else value >> 1)
            value = shift = 0
    return read


def places(mappings):
    """What a map says: (line, column, source, line there) of each segment, lines from 1, columns from 1."""
    found, source, there = [], 0, 0
    for line, segments in enumerate(mappings.split(";"), 1):
        column = 0
        for segment in filter(None, segments.split(",")):
            by, *rest = numbers(segment)
            column += by
            if rest:
                source += rest[0]
                there += rest[1]
                found.append((line, column + 1, source, there + 1))
    return found


def source(file, line, column):
    """The source and its line, such as "js/shared/site.js:25", of a place in a file of scripts such as pages/pressure.js."""
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        files, _, made = bundle.run(folder, "--sourcemap=external")
        if line == 1:  # where shared files are named, all of them before the first code, by shorter names in the site
            column += len((folder / "out" / made[file]).read_text(encoding="utf-8")) - len(files[file].decode())
        known = json.loads((folder / "out" / f"{made[file]}.map").read_text(encoding="utf-8"))
        place = max(place for place in places(known["mappings"]) if place[:2] <= (line, column))
    return f"{known['sources'][place[2]].replace('../', '')}:{place[3]}"


if __name__ == "__main__":
    print(source(*(int(part) if part.isdigit() else part for part in sys.argv[1].split(":"))))
