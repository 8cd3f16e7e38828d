"""A department's rigs from TOML to pages."""
import json
import os
import re
import subprocess
import sys

import jsonschema_rs
import pytest

import build
from calc.rig import fields as rig_fields
from site_src.content import data, fleet, fleet_files
from site_src.routes.rig import profile_schema


@pytest.mark.parametrize("name", sorted(fleet.load()))
def test_demonstration_rigs_fit_the_published_schema(name):
    """The JSON Schema beside the site takes what calc.rig.profile takes."""
    jsonschema_rs.validate(profile_schema(), fleet.load()[name])


@pytest.mark.parametrize(
    "change", [{"schema": 2}, {"name": 5}, {"drive": "steam"}, {"odd": 1}, {"beds": [{"name": "x"}]}, {"units": "furlongs"}],
)
def test_the_schema_refuses_what_calc_refuses(change):
    """What calc.rig.profile refuses for its form the schema refuses too."""
    with pytest.raises(jsonschema_rs.ValidationError):
        jsonschema_rs.validate(profile_schema(), {**fleet.load()["tollgate-engine-1"], **change})


SOUND = 'name = "{}"\nunits = "US"\n'
BED = '[[beds]]\nname = "x"\nhose = "attack-1.75"\nlength = 200\nend = {{ kind = "fog", flow = 150, pressure = {} }}\n'
CHECK = '[[checks]]\nitem = "{}"\nact = "change"\n{}\n'


def put(folder, **files):
    """Files of rigs, written as UTF-8, or the very bytes."""
    for name, content in files.items():
        (folder / f"{name}.toml").write_bytes(content if isinstance(content, bytes) else content.encode())


def refused(folder):
    """What is said of a folder, a line each."""
    with pytest.raises(fleet.FleetError) as fault:
        fleet.load(folder)
    return str(fault.value).split("\n")


def reason(code):
    """The words of the Rig page for a code."""
    words = {**data.words("site")["refusal"], **data.words("rig")["carry"]}
    return words[code].rstrip(".")


@pytest.mark.parametrize(
    ("text", "start", "end"),
    [
        (SOUND.format("A") + 'tank = "big"', f'a.toml, tank = "big": {reason("not_a_number")}.', " Allowed: 1 to 20000 gal."),
        (SOUND.format("A") + "tank = 30000", 'a.toml, tank = 30000: ', " Allowed: 1 to 20000 gal."),
        ('name = "A"\nunits = "SI"\ntank = 1', 'a.toml, tank = 1: ', " Allowed: 3.79 to 75700 L."),  # by hand: 3.785 and 75,708 L, rounded inward
        (SOUND.format("A") + "idle = 70000", 'a.toml, idle = 70000: ', " Allowed: 300 to 1500."),
        (SOUND.format("A") + 'drive = "steam"', f'a.toml, drive = "steam": {reason("unknown")}.', " Allowed: midship, pto, front, rear_shaft, rear_pto."),
        (SOUND.format("A") + "tnak = 500", f'a.toml, tnak = 500: {reason("unknown_field")}.', ' Did you mean "tank"?'),
        ('units = "US"', f'a.toml, name: {reason("missing")}.', ""),
        (SOUND.format("A") + BED.format(100) + BED.format(100).replace("attack-1.75", "garden"), 'a.toml, [[beds]] 2, hose = "garden": ', "metric-150."),
        (SOUND.format("A") + BED.format(2), "a.toml, [[beds]] 1, end.pressure = 2: ", " Allowed: 5 to 1500 psi."),
        (SOUND.format("A") + BED.format(100).replace("fog", "jet"), 'a.toml, [[beds]] 1, end.kind = "jet": ', " Allowed: fog, smooth."),
        (SOUND.format("A") + "[beds]\nname = 1", "a.toml, beds: begin each row with [[beds]]", ""),
        (SOUND.format("A") + "hoses = 5", "a.toml, hoses: begin each row with [[hoses]]", ""),
        (SOUND.format("A") + '[[beds]]\nend = "fog"', "a.toml, [[beds]] 1, end: write it as { kind", ""),
        (SOUND.format("A") + '[[beds]]\nname = "x"\n[beds.end]\nkind = [1]', "a.toml, [[beds]] 1, hose: ", ""),
        (SOUND.format("A") + CHECK.format("eng_belt", "months = 6"), f'a.toml, [[checks]] 1, item = "eng_belt": {reason("no_such_item")}.', ' Did you mean "eng_belts"?'),
        (SOUND.format("A") + CHECK.format("eng_belts", "months = 6") * 2, f'a.toml, [[checks]] 2, item = "eng_belts": {reason("duplicate")}.', ""),
        (SOUND.format("A") + CHECK.format("prime_hold", 'unit = "pressure"\nmost = 5'), 'a.toml, [[checks]] 1, unit = "pressure": ', "vacuum."),
        (SOUND.format("A") + CHECK.format("eng_belts", 'lists = ["often"]'), f'a.toml, [[checks]] 1, lists: {reason("no_such_list")}.', ", before_test."),
        (SOUND.format("A") + CHECK.format("eng_belts", "months = 0"), "a.toml, [[checks]] 1, months = 0: ", " Allowed: 1 to 120."),
        (SOUND.format("A") + CHECK.format("eng_belts", "months = 6") * 3000, "a.toml, checks: ", ""),
        (SOUND.format("A") + "[checks]\nitem = 1", "a.toml, checks: begin each row with [[checks]]", ""),
        (SOUND.format("A") + "schema = 2", "a.toml, schema: the build sets this itself.", ""),
        ('name = "A"\nunits = 5', "a.toml, units = 5: ", ""),
        ('name = ["A"]\nunits = "US"', "a.toml, name: ", " Allowed: text of up to 60 characters."),
        ("name = ", "a.toml: not TOML. ", "."),
        ("a = " + "[" * 5000, "a.toml: nested too deep", ""),
        ("a = " + "9" * 5000, "a.toml: holds a number too long", ""),
        (b'name = "\xc9"', "a.toml: not UTF-8 at byte 9.", ""),
        ("#" * 300_000, "a.toml: larger than", ""),
    ],
)
def test_a_bad_file_is_refused_in_a_sentence(tmp_path, text, start, end):
    """The sentence names the file, the row counted from 1, the field, and what is allowed."""
    put(tmp_path, a=text)
    line = refused(tmp_path)[0]
    assert line.startswith(start) and line.endswith(end)


OF_ANY_TYPE = (
    "1979-05-27", "1979-05-27T07:32:00Z", "07:32:00", "inf", "nan", "true", "[]", "{}", "[1]", "[[1]]", "[{}]", "{ a = 1 }", "9" * 29, "1e400", "-1", '""',
    '"\\u0000"', "[1979-05-27]", "[nan]", '{ kind = "fog" }', "{ kind = 1979-05-27 }", '{ kind = "fog", flow = 07:00:00, pressure = nan }', "{ kind = [1] }",
)


def files_of_any_type():
    """A file for each field of a rig and each type that TOML has."""
    bed = {"name": '"x"', "hose": '"attack-1.75"', "length": "200", "end": '{ kind = "fog", flow = 150, pressure = 100 }'}
    for value in OF_ANY_TYPE:
        for field in [*(field[0] for field in rig_fields.FIELDS), *fleet_files.SECTIONS, "odd"]:
            sound = {"name": '"A"', "units": '"US"', field: value}
            yield "\n".join(f"{name} = {written}" for name, written in sound.items())
        for section, fields in fleet_files.SECTIONS.items():
            for field in [*(field[0] if isinstance(field, tuple) else field for field in fields), "odd"]:
                row = {**(bed if section == "beds" else {}), field: value}
                yield SOUND.format("A") + f"[[{section}]]\n" + "\n".join(f"{name} = {written}" for name, written in row.items())


def test_no_type_of_toml_ends_in_a_traceback(tmp_path):
    """Times, dates, tables and numbers beyond any, in each field: a sound rig or a sentence that names the file."""
    taken = 0
    for text in files_of_any_type():
        put(tmp_path, a=text)
        try:
            taken += len(fleet.load(tmp_path))
        except fleet.FleetError as fault:
            assert str(fault).startswith("a.toml, "), text
    assert 0 < taken < 400


def test_nothing_but_files_is_opened(tmp_path):
    """A pipe and a link to an endless device would hold the build for ever, and a link may lead anywhere: each is refused in a sentence."""
    put(tmp_path, a=SOUND.format("A"))
    os.mkfifo(tmp_path / "b.toml")
    (tmp_path / "c.toml").symlink_to("/dev/zero")
    (tmp_path / "d.toml").symlink_to(tmp_path / "a.toml")
    (tmp_path / "e.toml").mkdir()
    (tmp_path / "f.toml").symlink_to(tmp_path / "nowhere")
    said = refused(tmp_path)
    assert [line[:8] for line in said] == [f"{name}.toml: " for name in "bcdef"]
    assert all("link" in line and "device" in line for line in said)


def test_all_that_is_wrong_is_said_at_once(tmp_path):
    """Every fault of every file has its line; a sound file among them has none."""
    put(tmp_path, a=SOUND.format("A") + "idle = 1\ntank = 0", b=SOUND.format("B"), c="name =")
    assert [line[:6] for line in refused(tmp_path)] == ["a.toml", "a.toml", "c.toml"]


@pytest.mark.parametrize(("first", "second"), [("Engine 1", "Engine 1"), ("Engine 1", "engine 1 "), ("Échelle", "échelle")])
def test_two_rigs_of_one_name_are_refused(tmp_path, first, second):
    """Nobody could tell them apart on the phone; the sentence names both files."""
    put(tmp_path, a=SOUND.format(first), b=SOUND.format(second))
    [line] = refused(tmp_path)
    assert line.startswith("b.toml, name = ") and "a.toml" in line


@pytest.mark.parametrize("name", ["a#b", "a?b", "a%41", "échelle-9", " a", "a ", "index.html", "a&b", "a\\b", ".a", "a:b", ".", "..", "", "Engine-9", "a_b", "a.b", "a b", "-a", "a-"])
def test_a_name_that_breaks_addresses_is_refused(tmp_path, name):
    """The file is named, with a name that would do; nothing else is wrong with it."""
    put(tmp_path, **{name: SOUND.format("A")})
    said = " ".join(refused(tmp_path))
    assert name in said and "web address" in said
    (tmp_path / f"{name}.toml").rename(tmp_path / re.search(r'such as "([^"]+)"', said)[1])
    assert len(fleet.load(tmp_path)) == 1


def test_names_that_differ_by_capitals_are_refused(tmp_path):
    """On many hosts they would be one folder: the one with capitals is named with its letters, and so is a second ending of the same name."""
    put(tmp_path, **{"Engine-1": SOUND.format("A"), "engine-1": SOUND.format("B")})
    [line] = refused(tmp_path)
    assert line.startswith("Engine-1.toml: ") and "Small letters a to z" in line
    (tmp_path / "Engine-1.toml").rename(tmp_path / "engine-1.TOML")
    assert refused(tmp_path) == ["engine-1.toml: engine-1.TOML has the same name but for its ending. Rename one of them."]


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
def test_a_rig_is_read_as_utf8_on_any_machine(tmp_path, mark):
    """Accents stay right, and a byte order mark is taken, where Python would read files as ASCII."""
    put(tmp_path, e9=mark + 'name = "Échelle 9 à Québec"\nunits = "SI"\n'.encode())
    code = f"from site_src.content import fleet; print(ascii(fleet.load({str(tmp_path)!r})['e9']['name']))"
    environment = {**os.environ, "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    run = subprocess.run([sys.executable, "-c", code], cwd=build.ROOT, env=environment, capture_output=True, encoding="utf-8")
    assert run.stdout.strip() == ascii("Échelle 9 à Québec"), run.stderr


def test_a_department_is_baked_and_not_carried(tmp_path):
    """Each rig has its page, its card and its file; a phone's list holds none of them."""
    folder, dist = tmp_path / "rigs", tmp_path / "dist"
    folder.mkdir()
    (folder / "ladder-9.toml").write_text('name = "Ladder 9"\nunits = "US"\n[[beds]]\nname = "Side"\nhose = "attack-1.75"\n'
                                          'length = 200\nend = { kind = "fog", flow = 150, pressure = 100 }\n', encoding="utf-8")
    build.build(dist, rigs_folder=folder)
    page = (dist / "rigs" / "ladder-9" / "index.html").read_text(encoding="utf-8")
    assert "<td>170</td>" in page  # by hand: 15.5 x 1.5^2 x 2 + 100 = 169.75
    assert json.loads((dist / "rigs" / "ladder-9" / "rig.json").read_text(encoding="utf-8"))["name"] == "Ladder 9"
    assert 'rigs/ladder-9' not in (dist / "sw.js").read_text(encoding="utf-8")
