"""What the site weighs and how fast it answers on a slow phone with the network off.

    python tests/bench/phone.py          builds, measures, prints one line a figure
    python tests/bench/phone.py --keep   and adds them to history.jsonl

Times are medians over cold opens in headless Chromium slowed six times, with a profile on disk as a phone has one. They go
with the machine, so each run also times a yardstick, the same plain work every time: compare two runs by their ratio to it.
"""
import datetime
import gzip
import json
import os
import pathlib
import statistics
import sys
import tempfile
import threading

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[2]))

from playwright.sync_api import sync_playwright

import build
from tests.browser import ARGUMENTS, PHONE, chromium_path
from tests.phone.sources import source

SLOWED = 6
OPENS = 9
CALLS = 200
IS_LIVE = {"expression": 'performance.getEntriesByName("live-answer").length > 0'}
HISTORY = pathlib.Path(__file__).with_name("history.jsonl")
figures = {}  # of this run, by name


def told(name, amount, unit, goal=None):
    """Print one figure and note it."""
    figures[f"{name}, {unit}"] = round(amount, 1)
    print(f"{name}: {amount:.1f} {unit}" + (f" (goal {goal})" if goal else ""))


def weigh(dist):
    files = [path for path in dist.rglob("*") if path.is_file() and path.relative_to(dist).parts[0] != "rigs"]
    packed = sum(len(gzip.compress(path.read_bytes(), 9)) for path in files)
    told("full offline install", len(files), "files")
    told("full offline install, compressed", packed / 1000, "kB", "under 400")


def first_load(context, base):
    page = context.new_page()
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(base + "pressure/")
    page.get_by_role("img", name="psi").first.wait_for()
    told("first load of the Pressure page", len(asked), "requests")
    page.goto(base)
    page.locator("#readiness[data-state=yes]").wait_for(timeout=60000)
    page.close()


def cold_opens(context, base, slowed):
    baked, live = [], []
    for _ in range(OPENS):
        page = context.new_page()
        session = context.new_cdp_session(page)
        session.send("Emulation.setCPUThrottlingRate", {"rate": slowed})
        page.goto(base + "pressure/")
        while not session.send("Runtime.evaluate", IS_LIVE)["result"]["value"]:  # a locator would run code of its own there
            page.wait_for_timeout(100)
        times = page.evaluate("""() => ({
            baked: performance.getEntriesByName("first-contentful-paint")[0].startTime,
            live: performance.getEntriesByName("live-answer")[0].startTime,
        })""")
        baked.append(times["baked"])
        live.append(times["live"])
        page.close()
    told(f"cold offline open to a readable answer, {slowed}x slowed", statistics.median(baked), "ms", "300 at 6x")
    told(f"cold offline open to a live answer, {slowed}x slowed", statistics.median(live), "ms", "600 at 6x")


def recomputations(context, base):
    page = context.new_page()
    page.goto(base + "pressure/")
    page.locator("button.lay-line").wait_for()
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    each_ms = page.evaluate("""async ([engine, site, calls]) => {
        const [{ calc }, { pageData }] = await Promise.all([import(engine), import(site)]);
        const data = await pageData();
        const held = { units: { shown: "US", systems: { US: data.systems.US.kinds } }, shelf: data.shelf, profile: null };
        const one = () => calc.ask("layout_page.answer", { layout: data.ready.customary[0].layout, parts: {}, texts: [] }, held);
        await one();
        const start = performance.now();
        for (let count = 0; count < calls; count += 1) await one();
        return (performance.now() - start) / calls;
    }""", [source(page, "shared/engine.js"), source(page, "shared/site.js"), CALLS])
    told(f"one recomputation of a layout, {SLOWED}x slowed", each_ms, "ms", 4)
    page.close()


def typed_tree(nozzles, name="1"):
    """A typed line of this many nozzles, behind manifolds of two or three."""
    line = {"id": name, "hose": "small", "length": "100@US", "height": "5@US", "end": {"kind": "fog", "flow": "95@US", "pressure": "75@US"}}
    if nozzles > 1:
        branches = min(nozzles, 2 + nozzles % 2)
        shares = [nozzles // branches + (place < nozzles % branches) for place in range(branches)]
        line.update(hose="large", end={"lines": [typed_tree(share, f"{name}.{place}") for place, share in enumerate(shares)]})
    return line


def thirty_nozzles(context, base):
    """Both ways through thirty nozzles, as the Pressure page asks for them."""
    page = context.new_page()
    page.goto(base + "pressure/")
    page.locator("button.lay-line").wait_for()
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    times_ms = page.evaluate("""async ([engine, site, line, calls]) => {
        const [{ calc }, { pageData }] = await Promise.all([import(engine), import(site)]);
        const { shelf, ready, systems } = await pageData();
        const { crew } = ready.customary[0].layout;
        const byLoss = Object.values(shelf.hoses).filter((hose) => hose.coefficient).sort((a, b) => a.coefficient - b.coefficient);
        const small = shelf.hoses[ready.customary[0].layout.lines[0].hose];
        const held = { shelf: { ...shelf, hoses: { small, large: byLoss[0] } }, units: { shown: "US", systems: { US: systems.US.kinds } }, profile: null };
        const layout = { crew, lines: [line], now: { gates: "set", pressure: "250@US" } };
        const times = [];
        for (const parts of [{}, { flowing: true }]) {
            const one = () => calc.ask("layout_page.answer", { layout, parts, texts: [] }, held);
            await one();
            const start = performance.now();
            for (let count = 0; count < calls; count += 1) await one();
            times.push((performance.now() - start) / calls);
        }
        return times;
    }""", [source(page, "shared/engine.js"), source(page, "shared/site.js"), typed_tree(30), 10])
    told(f"30 nozzles required, {SLOWED}x slowed", times_ms[0], "ms", 100)
    told(f"30 nozzles flowing now, {SLOWED}x slowed", times_ms[1] - times_ms[0], "ms", 100)
    page.close()


def yardstick(context):
    """How fast this machine is just now: a fixed piece of plain work, slowed as the pages are."""
    page = context.new_page()
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    times_ms = page.evaluate("""(times) => Array.from({ length: times }, () => {
        const start = performance.now();
        let sum = 0;
        for (let count = 1; count < 2e6; count += 1) sum += Math.sqrt(count) % 7;
        return performance.now() - start;
    })""", OPENS)
    told(f"yardstick, {SLOWED}x slowed", statistics.median(times_ms), "ms")
    page.close()


def keep():
    """Add this run to the history, one line of JSON."""
    run = {"at": datetime.date.today().isoformat(), "load": round(os.getloadavg()[0], 1), "cores": os.cpu_count(), **figures}
    with HISTORY.open("a", encoding="utf-8") as history:
        history.write(json.dumps(run) + "\n")


def main():
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        dist = pathlib.Path(folder) / "dist"
        build.build(dist)
        weigh(dist)
        serving = build.server(dist, 0)
        threading.Thread(target=serving.serve_forever, daemon=True).start()
        base = f"http://127.0.0.1:{serving.server_port}/"
        profile = pathlib.Path(folder) / "profile"
        context = playwright.chromium.launch_persistent_context(profile, executable_path=chromium_path(), args=ARGUMENTS, **PHONE)
        first_load(context, base)
        context.set_offline(True)
        serving.shutdown()
        serving.server_close()
        for slowed in (1, SLOWED):
            cold_opens(context, base, slowed)
        recomputations(context, base)
        thirty_nozzles(context, base)
        yardstick(context)
        context.close()
    if "--keep" in sys.argv[1:]:
        keep()


if __name__ == "__main__":
    main()
