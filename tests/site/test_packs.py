"""The packs of an install: what lies in them, and that the worker's unpacker reads what Python's lzma wrote."""
import gzip
import lzma
import random
import subprocess

import pytest

from site_src.publish import packing
from tests.conftest import ROOT, node
from tests.site.test_build import release_of

RAW = [{"id": lzma.FILTER_LZMA1, "lc": 3, "lp": 0, "pb": 0}]


def unpacked(path, size):
    """A pack as the worker unpacks it."""
    return subprocess.run([node(), ROOT / "tests/site/unpack.mjs", path, str(size)], capture_output=True, check=True).stdout


def in_packs(built):
    """The names in each pack, {name of a pack: [name, ...]}, in the list's order."""
    release = release_of(built)
    inside = {name: [] for name, *_ in release["packs"]}
    for name, _, _, _, *pack in release["files"]:
        if pack:
            inside[release["packs"][pack[0]][0]].append(name)
    return inside


def test_a_pack_is_its_files(built):
    """Each pack, unpacked by the phone's own code and by Python's, is its files one after another; each has at least two, of one language."""
    languages = {name: language for name, _, _, language, *_ in release_of(built)["files"]}
    for pack, names in in_packs(built).items():
        files = b"".join((built / name).read_bytes() for name in names)
        assert unpacked(built / pack, len(files)) == files, pack
        assert lzma.decompress((built / pack).read_bytes(), lzma.FORMAT_RAW, filters=RAW) == files, pack
        assert len(names) > 1 and len({languages[name] for name in names}) == 1, pack
    assert {path.relative_to(built).as_posix() for path in (built / "packs").iterdir()} == set(in_packs(built))


def test_what_every_phone_has_already_is_in_no_pack(built):
    """The interpreter, calc, the face and what the start page asks for are fetched by themselves, or taken from the browser's cache."""
    packed = set().union(*in_packs(built).values())
    apart = {"calc.bin", "static/vendor/micropython/micropython.wasm", "static/fonts/panel.woff2", "static/css/site.css", "static/js/shared/common.js",
             "static/js/shared/engine_worker.js", "static/js/pages/start.js", "version.json"}
    assert not packed & apart
    assert {"pressure/page.json", "fr/pressure/page.json", "cautions/index.html", "static/js/pages/pressure.js"} <= packed


def test_a_pack_ends_before_it_costs_much_when_lost(built):
    """What is lost with the signal is one pack: none is longer by more than four tenths than the longest file that comes by itself, the interpreter."""
    interpreter = len(gzip.compress((built / "static/vendor/micropython/micropython.wasm").read_bytes(), 9))
    assert max(size for *_, size in release_of(built)["packs"]) <= packing.MOST < 1.4 * interpreter


chance = random.Random(4)
HARD = {
    "nothing": b"", "one byte": b"a", "of no order": chance.randbytes(70000), "all alike": bytes(300000), "far back": chance.randbytes(90000) * 3,
    "short turns": b"".join(chance.choice([b"abcabd", b"abc", b"x", bytes([number % 256])]) for number in range(40000)),
    "four distances": b"".join(chance.choice([b"valve", b"hose lines", b"gauge 170 psi", b"tank"]) + bytes([chance.randrange(256)]) for _ in range(20000)),
}


@pytest.mark.parametrize("content", HARD.values(), ids=HARD)
def test_unpacker(content, tmp_path):
    """Bytes of every kind come out as they went in: literals, long and short matches, near and far, the last four distances again."""
    (tmp_path / "pack").write_bytes(packing.packed(content))
    assert unpacked(tmp_path / "pack", len(content)) == content


def test_a_spoiled_pack_ends(tmp_path):
    """A stream that was cut off or changed ends with as many bytes, which are not those, and not in an endless turn."""
    content = b"".join(b"line %d at 170 psi\n" % number for number in range(5000))
    whole = packing.packed(content)
    for spoiled in (whole[:len(whole) // 2], whole[:40] + b"\xff" + whole[41:], b""):
        (tmp_path / "pack").write_bytes(spoiled)
        assert len(got := unpacked(tmp_path / "pack", len(content))) == len(content) and got != content
