"""Build the site into dist/, and serve it if asked.

    .venv/bin/python build.py                     build
    .venv/bin/python build.py --serve [PORT]      build, then serve on this machine
    .venv/bin/python build.py --at /pump/         build for a host where the site lies under /pump/ (for its 404 page)
    .venv/bin/python build.py --report FOLDER     instead of a build: a fleet report of the exported test results and rig logs in FOLDER
    .venv/bin/python build.py --gzip --brotli     build, with a .gz and a .br beside each file for hosts that send those
    .venv/bin/python build.py --check ADDRESS     instead of a build: what is wrong with the site as it is hosted there
    .venv/bin/python build.py --close             instead of a build: a site that says it is closed, to put in place of one that phones have
    .venv/bin/python build.py --rigs FOLDER       bake a department's rigs in place of the made-up ones

A build, a check or a report that fails ends in a sentence with status 1, a command that cannot be meant with status 2, and Ctrl-C with 130;
the last good dist/ stays as it was.
"""
import argparse
import contextlib
import json
import os
import pathlib
import re
import shutil
import sys
import warnings

import flask_frozen

from site_src import bundle, sharing, styles
from site_src.app import create_app
from site_src.content import data, fleet, fleet_hose, languages, reckoners, units
from site_src.publish import check, hosting, release
from site_src.publish.serving import server
from site_src.report import days, pages as report
from site_src.routes import checks, service

write_worker = release.write
ROOT = pathlib.Path(__file__).parent
DIST = ROOT / "dist"
CLOSED = ROOT / "site_src" / "hosts" / "closed"


def build(dist=DIST, site_path="/", rigs_folder=fleet.DEMO, beside=()):
    """Build the whole site into a folder, and return its version and date; the same sources give the same bytes.

    It is built beside the folder and put in its place at the end: a build that fails, or is stopped, leaves the last one as it was.
    """
    with in_place_of(dist) as made:
        freeze(made, site_path, rigs_folder)
        facts = write_worker(made)
        hosting.compress(made, beside)
    return facts


def close(dist=DIST, site_path="/"):
    """Write a site whose every page says that it is closed, in place of what a folder holds, for phones that have the site."""
    with in_place_of(dist) as made:
        shutil.copytree(CLOSED, made, dirs_exist_ok=True, copy_function=shutil.copyfile)  # of today: a host that goes by dates must send it
        page = (made / "index.html").read_text(encoding="utf-8")
        (made / "404.html").write_text(page.replace('"closed.', f'"{site_path}closed.'), encoding="utf-8", newline="\n")
        hosting.write_headers(made, site_path)


@contextlib.contextmanager
def in_place_of(dist):
    """A folder to write a site into, which is put in place of another once all of it is written."""
    dist = pathlib.Path(dist).resolve()
    made, last = (dist.with_name(f".{dist.name}-{os.getpid()}-{what}") for what in ("made", "last"))
    try:
        made.mkdir(parents=True)
        yield made
        if dist.exists():
            dist.rename(last)
        made.rename(dist)
    finally:
        if last.exists() and not dist.exists():
            last.rename(dist)
        for folder in (made, last):
            shutil.rmtree(folder, ignore_errors=True)


def freeze(dist, site_path, rigs_folder):
    """Write every page, in every language, and every static file. A warning of the freezer is an error."""
    bundle.bundled()  # first: what stops it is said before any page is made
    for language in reversed(data.languages()):  # English last: the page for unknown addresses is shared, and stays in English
        freeze_language(dist, create_app(site_path, rigs_folder, language))
        sharing.share(dist, language)
    write_sizes(dist)
    hosting.write_headers(dist, site_path)


def freeze_language(dist, app):
    """Write the pages of one language."""
    app.config.update(
        FREEZER_DESTINATION=str(dist),
        FREEZER_RELATIVE_URLS=True,
        FREEZER_REMOVE_EXTRA_FILES=False,
        FREEZER_STATIC_IGNORE=["__pycache__", ".*", *bundle.parts(), *styles.parts()],
    )
    freezer = flask_frozen.Freezer(app)

    @freezer.register_generator
    def unlinked():
        for part in service.PARTS:
            yield "service.part", {"part": part}
        for work in checks.PARTS:
            yield "checks.work", {"work": work}
        for card in data.cards():
            yield "shift.page_data", {"card": card["id"]}
        for source in reckoners.WATER:
            yield "water.page_data", {"source": source}

    with warnings.catch_warnings():
        warnings.simplefilter("error", flask_frozen.FrozenFlaskWarning)
        freezer.freeze()


def write_sizes(dist):
    """Write beside each list of the fleet how many bytes a phone takes to keep each rig."""
    for language in data.languages():
        folder = dist / languages.folder(language) / languages.FLEET
        rigs = sorted(path.parent for path in folder.glob("*/index.html"))
        sizes = {rig.name: sum(path.stat().st_size for path in rig.iterdir()) for rig in rigs}
        (folder / "rigs.json").write_text(json.dumps(sizes, indent=0), encoding="utf-8", newline="\n")


def site_path(text):
    """The path of a site on its host from what was typed for it: /pump/ for pump, /pump and /pump/."""
    parts = text.strip("/").split("/")
    if parts == [""]:
        return "/"
    if not all(re.fullmatch(r"[\w.~-]+", part, re.ASCII) and part.strip(".") for part in parts):
        raise argparse.ArgumentTypeError(f"{text!r} is no path on a host. Type the path alone, such as /pump/: letters, digits, - _ . ~ and /.")
    return f"/{'/'.join(parts)}/"


def port(text):
    """A port from what was typed for it."""
    if not (text.isascii() and text.isdigit() and int(text[:9]) <= 65535):
        raise argparse.ArgumentTypeError(f"{text!r} is no port. Type a number from 1024 to 65535, such as 8001, or 0 for any free one.")
    return int(text)


def parsed():
    """The options of the command line; one that has no part in what is to be done is refused."""
    parser = argparse.ArgumentParser(description="Build the site into dist/.")
    building, reporting = parser.add_argument_group("the site"), parser.add_argument_group("the report")
    building.add_argument("--close", action="store_const", const=True, help="write a site that says it is closed")
    building.add_argument("--serve", nargs="?", const=8000, type=port, metavar="PORT", help="serve it afterwards")
    building.add_argument("--at", type=site_path, metavar="PATH", help="path of the site on its host")
    building.add_argument("--rigs", type=pathlib.Path, metavar="FOLDER", help="the department's rigs, as TOML; of a report: whose own check rows and limits it goes by")
    building.add_argument("--gzip", action="store_const", const=True, help="write a .gz beside each file")
    building.add_argument("--brotli", action="store_const", const=True, help="write a .br beside each file")
    parser.add_argument("--check", metavar="ADDRESS", help="say what is wrong with the site as it is hosted")
    reporting.add_argument("--report", type=pathlib.Path, metavar="FOLDER", help="report on the exported test results and rig logs in a folder, into FOLDER/report")
    reporting.add_argument("--units", choices=[system["id"] for system in units.systems()], help="units of the report")
    reporting.add_argument("--zone", metavar="NAME", help="time zone of the report's days, such as America/Chicago; this computer's own where left out")
    reporting.add_argument("--language", choices=data.languages(), help="language of the report")
    options = parser.parse_args()
    if options.check:
        idle = ("close", "serve", "at", "rigs", "gzip", "brotli", "report", "units", "language", "zone")
    elif options.report:
        idle = ("close", "serve", "at", "gzip", "brotli")
    else:
        idle = ("rigs", "gzip", "brotli", "units", "language", "zone") if options.close else ("units", "language", "zone")
    for name in idle:
        if getattr(options, name) is not None:
            kind = ("--check builds nothing" if options.check else "--report builds no site" if options.report else
                    "a closed site has no pages" if options.close and name in ("rigs", "gzip", "brotli") else "without --report no report is made")
            parser.error(f"--{name} has no effect here: {kind}. Leave it out, or run the command twice.")
    return options


def print_report(options):
    """Write the fleet's report in place of the site."""
    profiles = fleet.load(options.rigs).values() if options.rigs else ()
    facts = report.write(options.report, system=options.units or "US", language=options.language or "en", zone=days.zone(options.zone), profiles=profiles)
    print(f"Reported {facts['tests']} tests of {facts['rigs']} rigs and the logs of {facts['logs']} from {facts['files']} files, {facts['bad']} of them unusable: {facts['page']}")


def print_build(options):
    """Build the site, and serve it if asked."""
    if options.close:
        close(site_path=options.at or "/")
        print(f"Wrote the closed site into {DIST}: put it in place of the site, and phones that have that show this instead")
    else:
        print_version(options)
    if options.serve is not None:
        serve(options.serve)


def print_version(options):
    """Build the site, and say which version it is."""
    facts = build(site_path=options.at or "/", rigs_folder=options.rigs or fleet.DEMO, beside=[ending for ending, is_asked in ((".gz", options.gzip), (".br", options.brotli)) if is_asked])
    if options.rigs:
        print("\n".join(fleet_hose.said(fleet.load(options.rigs), options.rigs)) or "Hose: no rig measured any, so the handbook's figures stand alone")
    print(f"Built {sum(path.is_file() for path in DIST.rglob('*'))} files in {DIST}")
    print(f"Version {facts['version']} of {facts['date']}: All pages shows it on every phone that has it")


def print_check(options):
    """Say what is wrong with a hosted site; status 1 where anything is."""
    faults, seen = check.check(options.check)
    print("\n".join(faults) or f"Nothing wrong: {seen}.")
    if faults:
        raise SystemExit(1)


def serve(port):
    """Serve the built site until Ctrl-C."""
    try:
        serving = server(DIST, port)
    except OSError as fault:
        raise SystemExit(f"Port {port} cannot be used ({fault.strerror}). Another program may hold it: try --serve {port + 1 if port < 65535 else 8001}.") from fault
    with serving:
        print(f"Open http://127.0.0.1:{serving.server_port}/ (stop with Ctrl-C)", flush=True)
        serving.serve_forever()


def main():
    sys.stdout.reconfigure(errors="backslashreplace")  # a file's name may hold what this machine's locale cannot say
    sys.stderr.reconfigure(errors="backslashreplace")
    options = parsed()
    try:
        (print_check if options.check else print_report if options.report else print_build)(options)
    except (bundle.BundleError, fleet.FleetError, report.ReportError, days.ZoneError) as fault:
        raise SystemExit(str(fault)) from fault
    except OSError as fault:  # a full disk, a folder that may not be written
        raise SystemExit(f"{fault.filename or fault}: {fault.strerror or 'not done'}. Nothing was put in place of what was there.") from fault
    except KeyboardInterrupt:
        print("Stopped.", file=sys.stderr)
        raise SystemExit(130) from None


if __name__ == "__main__":
    main()
