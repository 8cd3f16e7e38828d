"""The command line: what cannot be meant is refused, what fails ends in a sentence, and dist/ is the last good build."""
import signal
import socket
import subprocess
import sys

import pytest

import build

FACTS = {"version": "0123-4567-89ab-cdef", "date": "2026-11-28"}  # of a build


@pytest.fixture
def command(monkeypatch, tmp_path, capsys):
    """Run build.py with arguments in a folder of its own: its status and all that it said."""
    monkeypatch.setattr(build, "DIST", tmp_path / "dist")

    def run(*arguments):
        monkeypatch.setattr(sys, "argv", ["build.py", *map(str, arguments)])
        monkeypatch.setattr(sys.stdout, "reconfigure", lambda **given: None, raising=False)
        monkeypatch.setattr(sys.stderr, "reconfigure", lambda **given: None, raising=False)
        with pytest.raises(SystemExit) as end:
            build.main()
        said = capsys.readouterr()
        return (end.value.code if isinstance(end.value.code, int) else 1), f"{said.out}{said.err}{end.value}"

    return run


def records(monkeypatch):
    """What build.build is called with, in place of building."""
    calls = []
    monkeypatch.setattr(build, "build", lambda **given: calls.append(given) or FACTS)
    return calls


@pytest.mark.parametrize(("typed", "path"), [("/", "/"), ("/pump/", "/pump/"), ("pump", "/pump/"), ("/a/b", "/a/b/"), ("a.b-c_d/", "/a.b-c_d/")])
def test_a_path_is_taken_with_or_without_its_slashes(monkeypatch, typed, path):
    """The page for unknown addresses finds its way whichever was typed."""
    calls = records(monkeypatch)
    monkeypatch.setattr(sys, "argv", ["build.py", "--at", typed])
    build.main()
    assert [call["site_path"] for call in calls] == [path]


@pytest.mark.parametrize("typed", ["https://a.example/pump/", "/pump?x", "/pump#x", "../pump", "/a//b/", "/a b/", "C:/pump/"])
def test_what_is_no_path_is_refused(command, typed):
    """A whole address, a part of one, or a machine's own path is refused in a sentence."""
    status, said = command("--at", typed)
    assert status == 2 and "is no path on a host. Type the path alone, such as /pump/" in said


@pytest.mark.parametrize("typed", ["70000", "-1", "x", "8e3"])
def test_what_is_no_port_is_refused(command, typed):
    status, said = command(f"--serve={typed}")
    assert status == 2 and "is no port. Type a number from 1024 to 65535" in said


@pytest.mark.parametrize(
    ("arguments", "named"),
    [(("--gzip",), "--gzip"), (("--brotli",), "--brotli"), (("--at", "/p/"), "--at"), (("--serve",), "--serve"), ((), None)],
)
def test_what_a_report_does_not_use_is_refused(command, tmp_path, arguments, named):
    """Nothing that was asked for is passed over in silence."""
    status, said = command("--report", tmp_path, *arguments)
    assert (f"{named} has no effect here" in said and status == 2) if named else status == 1  # by itself: no file in the folder


@pytest.mark.parametrize(("arguments", "said"), [(("--zone", "Mars/Base"), "Mars/Base: no time zone of this computer"), (("--rigs", "nowhere"), "nowhere")])
def test_a_report_by_no_zone_or_no_rigs_ends_in_a_sentence(command, tmp_path, arguments, said):
    """What the report is to go by is looked at first; nothing is written."""
    (tmp_path / "log.json").write_text("{}", encoding="utf-8")
    status, told = command("--report", tmp_path, *arguments)
    assert status == 1 and said in told and "Traceback" not in told and not (tmp_path / "report").exists()


@pytest.mark.parametrize("arguments", [("--units", "SI"), ("--language", "fr"), ("--zone", "UTC")])
def test_what_a_build_does_not_use_is_refused(command, arguments):
    status, said = command(*arguments)
    assert status == 2 and f"{arguments[0]} has no effect here: without --report" in said


@pytest.mark.parametrize(("arguments", "beside"), [((), []), (("--gzip",), [".gz"]), (("--brotli",), [".br"]), (("--gzip", "--brotli"), [".gz", ".br"])])
def test_what_is_written_beside_the_files(monkeypatch, arguments, beside):
    """Each of the two by its own option."""
    calls = records(monkeypatch)
    monkeypatch.setattr(sys, "argv", ["build.py", *arguments])
    build.main()
    assert [call["beside"] for call in calls] == [beside]


def test_a_failed_build_says_why_and_serves_nothing(command, tmp_path):
    """Under --serve too a failing rig ends in its sentence, and the last good site stands."""
    (tmp_path / "dist").mkdir()
    (tmp_path / "dist" / "index.html").write_text("good", encoding="utf-8")
    (tmp_path / "a.toml").write_text("tank = 0", encoding="utf-8")
    status, said = command("--rigs", tmp_path, "--serve", "0")
    assert status == 1 and "a.toml, tank = 0: " in said and "Open http" not in said
    assert (tmp_path / "dist" / "index.html").read_text(encoding="utf-8") == "good"


def test_a_folder_that_may_not_be_written(command, monkeypatch):
    """A full disk or a guarded folder ends in a sentence that names it."""
    def refuse(**given):
        raise PermissionError(13, "Permission denied", "/there/dist")

    monkeypatch.setattr(build, "build", refuse)
    assert command() == (1, "/there/dist: Permission denied. Nothing was put in place of what was there.")


def test_a_port_that_is_in_use(command, monkeypatch):
    """It is said, with one to try."""
    records(monkeypatch)
    with socket.socket() as holder:
        holder.bind(("127.0.0.1", 0))
        holder.listen()
        port = holder.getsockname()[1]
        status, said = command("--serve", port)
    assert status == 1 and f"Port {port} cannot be used" in said and f"--serve {port + 1}" in said


def test_ctrl_c_ends_in_a_word(tmp_path):
    """A server that is stopped by hand says so, and shows no traceback."""
    code = f"import build, pathlib, signal, sys; signal.signal(signal.SIGINT, signal.default_int_handler); build.build = lambda **given: {FACTS}; sys.argv = ['build.py', '--serve', '0']; build.main()"
    run = subprocess.Popen([sys.executable, "-c", code], cwd=build.ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8")
    while "Open http" not in run.stdout.readline():
        assert run.poll() is None
    run.send_signal(signal.SIGINT)
    _, said = run.communicate(timeout=20)
    assert (run.returncode, said) == (130, "Stopped.\n")
