"""Words and their sources: what a script says exists, what exists is said, and each number has an origin."""
import pathlib
import re
import subprocess
import sys

import pytest

import build
from calc.rig import fields as rig_fields
from site_src.content import data
from tests.site import pages, reached

SCRIPTS = build.ROOT / "site_src" / "static" / "js"
STEPS = data.steps()
TOLD = data.step_words()
BASES = set(data.words("site")["basis"])
ENTRIES = [
    ("pressure.js", "pressure"), ("reckon.js", "water/hydrant"), ("reckon.js", "foam"),
    ("diagnose.js", "diagnose"), ("collar.js", "diagnose/collar"), ("lights.js", "diagnose/lights"),
    ("water_loss.js", "diagnose/water"), ("leak.js", "diagnose/leak"), ("recovery.js", "rig/recovery"),
    ("why.js", "why"), ("practice.js", "practice"), ("speeds.js", "why/speeds"), ("heat.js", "why/heat"),
    ("shift_index.js", "shift"), ("log.js", "log"),
    ("service_years.js", "test"), ("service_quick.js", "test"),
    *(("shift.js", f"shift/{card}") for card in pages.cards()),
]


def with_imports(name, found):
    """A script and every script of ours that it imports, by path."""
    path = (SCRIPTS / name).resolve()
    if path not in found and "vendor" not in path.parts:
        found[path] = path.read_text(encoding="utf-8")
        for link in re.findall(r'from "(\.[^"]+)"', found[path]):
            with_imports(path.parent / link, found)
    return found


@pytest.mark.parametrize(("script", "page"), ENTRIES, ids=[page for _, page in ENTRIES])
def test_scripts_find_their_words(built, script, page):
    """Every words.section.key of a page's scripts is in the JSON that the page brings with it."""
    words = pages.page_data(built / page / "page.json")["words"]
    asked = set()
    for text in with_imports(f"pages/{script}", {}).values():
        asked.update(re.findall(r"\bwords\.(\w+)\.(\w+)", text))
    assert asked
    assert [f"{section}.{key}" for section, key in sorted(asked) if key not in words.get(section, {})] == []


def test_every_step_has_its_words():
    """Each step says what to do, what to see, why, and what to do and not to do where the sign does not come.

    One whose sign that does not come is a hazard names its order, and adds at most where the control is on the rig.
    """
    for name, step in STEPS.items():
        assert set(TOLD[name]) >= {"act", "see", "why"}, name
        assert ("never" in TOLD[name]) == ("order" not in step), name
        assert "order" in step or "not_seen" in TOLD[name], name
        assert {step["order"]} <= set(data.orders()) if "order" in step else True, name
        assert set(step.get("warns", ())) <= set(data.orders()), name
        for word in ("hold", "holding", "over"):
            assert (word in TOLD[name]) == (step["kind"] in ("hold", "limit")), name
        assert ("note" in TOLD[name]) == ("note_for" in step), name
        answers = [answer["id"] for answer in step.get("answers", [])]
        assert sorted(TOLD[name].get("answer", {})) == sorted(answers), name


def test_no_step_is_orphaned():
    """Every step with words is a step, every step is on a card, and every card has its title."""
    assert set(TOLD) == set(STEPS)
    assert {step["id"] for card in pages.cards() for step in data.card_steps(card)} == set(STEPS)
    assert set(data.words("shift")["card"]) == set(pages.cards())
    assert sorted(card for group in data.load("shift")["group"] for card in group["cards"]) == sorted(pages.cards())


def test_every_answer_about_a_rig_has_its_words():
    """Each question that a card may ask of a rig names each of its answers, and a card asks it in the same answers."""
    questions = data.by_id(data.load("shift")["question"])
    told = data.words("shift")["rig_answer"]
    assert {name: sorted(words) for name, words in told.items()} == {name: sorted(row["answers"]) for name, row in questions.items()}
    for step in STEPS.values():
        if "asks" in step:
            assert [answer["id"] for answer in step["answers"]] == questions[step["asks"]]["answers"]
        for question, answers in step.get("note_for", {}).items():
            assert set(answers) <= set(questions[question]["answers"])


def test_every_question_reads_a_field_of_the_profile():
    """What a profile can say of a question are answers of that question."""
    options = {field[0]: field[2] for field in rig_fields.FIELDS if field[1] == "choice"}
    for question in data.load("shift")["question"]:
        if "field" in question:
            says = question.get("says", {answer: answer for answer in question["answers"]})
            assert set(says) <= set(options[question["field"]])
            assert set(says.values()) <= set(question["answers"])


def numbered():
    """Every row and group of the data files that holds figures, with the row that tells its source."""
    for path in sorted([*data.FOLDER.glob("*.toml"), *data.FOLDER.glob("diagnose/*.toml"), *data.FOLDER.glob("why/*.toml")]):
        if path.stem in ("vendor", "shift", "bibliography"):
            continue
        file = data.load(path.relative_to(data.FOLDER).with_suffix("").as_posix())
        for name, content in file.items():
            for row in content if isinstance(content, list) else [content]:
                if isinstance(content, list) or any(not isinstance(value, str) for value in row.values()):
                    group = file.get(f"{name}s", {}) if isinstance(content, list) and "source" not in row else row
                    yield pytest.param(group, id=f"{path.stem}-{name}-{row.get('id', '')}")


@pytest.mark.parametrize("row", list(numbered()))
def test_every_number_has_its_source(row):
    """A figure carries its source, or its group does, with one of the words for what that is worth."""
    assert row.get("source", "").strip()
    assert row.get("basis") in BASES


RUN = reached.functions(reached.opened())


@pytest.mark.parametrize("formula", data.named("formulas"), ids=lambda formula: formula["id"])
def test_formula_lives_where_it_says(formula):
    """The place in the code that the Sources page names is a function that an answer on the phone can run."""
    assert formula["where"] in RUN


@pytest.mark.parametrize("name", ["hydraulics.nozzle.fog_flow_gpm", "pump.rating.flow_at_speed_gpm", "hydraulics.branch.Outlet.no_such_method"])
def test_what_no_answer_uses_is_not_taken_for_used(name):
    """A function that only tests call, or none, is not one that an answer runs."""
    assert name not in RUN


@pytest.mark.parametrize("step", STEPS.values(), ids=STEPS)
def test_every_step_has_its_basis(step):
    """A step carries its basis; one that rests on more than common practice says on what."""
    assert step["basis"] in BASES
    assert step["basis"] == "common practice" or step.get("source", "").strip()


def test_bases_are_the_four():
    """There are four words for what a source is worth."""
    assert BASES == {"published", "second-hand", "from memory", "common practice"}


def test_no_guarded_name_is_written():
    """No brand, product or person stands in any file. The list of them is kept beside the repository, never in it: a clone without that is passed over."""
    asked = ("rev-parse --path-format=absolute --git-common-dir", "config remote.origin.url")  # a worktree's and a clone's own root
    roots = [subprocess.run(["git", *each.split()], cwd=build.ROOT, capture_output=True, encoding="utf-8").stdout.strip() for each in asked]
    places = [folder / "shared" / "hooks" / "guard-names" for root in (build.ROOT, *roots) for folder in pathlib.Path(root).parents]
    guard = next((path for path in places if path.exists()), None)
    if guard is None:
        pytest.skip("the list of guarded names is not on this machine")
    run = subprocess.run([sys.executable, guard, build.ROOT], capture_output=True, encoding="utf-8")
    assert (run.returncode, run.stdout, run.stderr) == (0, "", "")


def test_a_choice_is_never_not_so():
    """An ask whose act is only a question, or a department's rule, is a choice: whoever takes none of its answers cannot tell."""
    words = data.step_words()
    for name, step in data.steps().items():
        is_choice = "asks" in step or step.get("choice", False)
        assert not is_choice or step["kind"] == "ask", name
        if step["kind"] == "ask" and (words[name]["act"].endswith("?") or "rule" in words[name]["act"]):
            assert is_choice, name
