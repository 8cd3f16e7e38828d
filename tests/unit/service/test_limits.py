"""Whose limits a file's standard is: ours to the last limit, and the first that is another is named."""
import pytest

from calc.base.errors import CalcError

DAY_MS = 86_400_000
OURS = {"id": "us", "kind": "annual", "runs": [{"net_psi": 150, "id": "capacity"}, {"net_psi": 200, "id": "seventy"}], "by_mean": True, "prime_s": 30}
STANDARDS = {"us": {"annual": OURS}}
FORMER = [
    {"id": "2027", "last_ms": 20_500 * DAY_MS, "standards": {"canada": {}}},  # in which nothing of ours was changed
    {"id": "2026", "last_ms": 20_000 * DAY_MS, "standards": {"us": {"annual": {"was": {"prime_s": 45}, "later": ["by_mean"]}}}},
    {"id": "2025", "last_ms": 19_000 * DAY_MS, "standards": {"us": {"annual": {"was": {"prime_s": 60}, "later": []}}}},
]
OF_2026 = {**{name: section for name, section in OURS.items() if name != "by_mean"}, "prime_s": 45}


def edition(run, standard, begun_ms=None, former=FORMER):
    return run("service.limits", "edition_of", standard=standard, begun_ms=begun_ms, standards=STANDARDS, former=former)


def refused(run, *arguments):
    with pytest.raises(CalcError) as refusal:
        edition(run, *arguments)
    return refusal.value.field, refusal.value.code, refusal.value.facts


@pytest.mark.parametrize("prime_s", [30, 30.0, 30 * (1 + 9e-10)])
def test_ours(run, prime_s):
    """Numbers to nine digits, since phones write the last one differently."""
    assert edition(run, {**OURS, "prime_s": prime_s}) is None


@pytest.mark.parametrize(("change", "at"), [
    ({"prime_s": 30 * (1 + 2e-9)}, "prime_s"), ({"prime_s": "30"}, "prime_s"), ({"prime_s": None}, "prime_s"), ({"prime_s": []}, "prime_s"), ({"prime_s": {}}, "prime_s"),
    ({"by_mean": 1}, "by_mean"), ({"by_mean": False}, "by_mean"),  # a yes is no number, and a no is no yes
    ({"runs": OURS["runs"][:1]}, "runs"), ({"runs": OURS["runs"][::-1]}, "runs.id"), ({"runs": [OURS["runs"][0], {**OURS["runs"][1], "net_psi": 199}]}, "runs.net_psi"),
    ({"runs": {}}, "runs"), ({"runs": [OURS["runs"][0], {"id": "seventy"}]}, "runs.net_psi"), ({"more": 1}, "more"), ({"runs": [], "by_mean": 0}, "by_mean"),
])
def test_the_first_limit_that_is_another_is_named(run, change, at):
    assert refused(run, {**OURS, **change}) == ("file", "other_limits", {"at": "standard." + at})


def test_a_limit_that_is_missing_is_named(run):
    assert refused(run, {name: section for name, section in OURS.items() if name != "runs"}) == ("file", "other_limits", {"at": "standard.runs"})


def test_a_name_without_end_is_cut(run):
    assert refused(run, {**OURS, "a" * 300: 1})[2] == {"at": "standard." + "a" * 191}


@pytest.mark.parametrize("change", [{"id": "eu"}, {"kind": "acceptance"}])
def test_a_standard_that_we_have_none_of(run, change):
    assert refused(run, {**OURS, **change}) == ("file", "damaged", {"at": "standard"})


@pytest.mark.parametrize(("standard", "begun_ms", "id"), [
    (OF_2026, 20_090 * DAY_MS, "2026"), (OF_2026, 1, "2026"), ({**OURS, "prime_s": 60}, 19_090 * DAY_MS, "2025")])
def test_of_its_day(run, standard, begun_ms, id):
    """Sections as they were, and without those that came later; for 90 days after its last one."""
    assert edition(run, standard, begun_ms) == id
    late_ms = {"2026": 20_090, "2025": 19_090}[id] * DAY_MS + 1
    for begun_ms in (late_ms, None):
        assert refused(run, standard, begun_ms) == ("file", "former_limits", {"at": id})
    assert refused(run, standard, 1, [])[1] == "other_limits"


@pytest.mark.parametrize(("standard", "is_ours"), [
    (OURS, True), ({**OURS, "prime_s": 31}, False), ({**OURS, "by_mean": 1}, False), ({**OURS, "id": ["us"]}, False), ({**OURS, "kind": None}, False),
    ({**OURS, "id": "eu"}, False), ({**OURS, "kind": "acceptance"}, False), ([], False), (None, False)])
def test_ours_as_it_is(run, standard, is_ours):
    assert run("service.limits", "is_ours", standard=standard, standards=STANDARDS) is is_ours
