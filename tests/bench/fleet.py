"""What a fleet costs: build time and size for 1, 10, 100 and 1000 rigs, and what of it a phone carries.

    python tests/bench/fleet.py [MOST]          stops at MOST rigs (1000)
"""
import pathlib
import re
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

import build
from site_src.content import fleet


def write_rigs(folder, count):
    """Copies of the demonstration rigs under numbered names."""
    folder.mkdir()
    texts = [path.read_text(encoding="utf-8") for path in sorted(fleet.DEMO.glob("*.toml"))]
    for number in range(count):
        text = texts[number % len(texts)]
        (folder / f"rig-{number:04}.toml").write_text(re.sub(r'^name = "', f'name = "{number} ', text, count=1, flags=re.M), encoding="utf-8")


def main(most):
    for count in (1, 10, 100, 1000):
        if count > most:
            break
        with tempfile.TemporaryDirectory() as scratch:
            folder, dist = pathlib.Path(scratch, "rigs"), pathlib.Path(scratch, "dist")
            write_rigs(folder, count)
            start = time.perf_counter()
            build.build(dist, rigs_folder=folder)
            seconds = time.perf_counter() - start
            sizes = {path.relative_to(dist).parts[0] == "rigs": 0 for path in dist.rglob("*")}
            for path in dist.rglob("*"):
                if path.is_file():
                    sizes[path.relative_to(dist).parts[0] == "rigs"] += path.stat().st_size
            listed = (dist / "sw.js").read_text(encoding="utf-8").count('\n["')
        print(f"{count:5} rigs: {seconds:6.1f} s, fleet pages {sizes[True] / 1000:7.0f} kB, "
              f"the rest {sizes[False] / 1000:.0f} kB, {listed} files on a phone", flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1000)
