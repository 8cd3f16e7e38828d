"""Two hands on two phones: each logs by itself, each takes the other's file, and both then hold the same."""
from playwright.sync_api import expect

from tests.phone.card import beside
from tests.phone.rounds import MIDSHIP, T, good, key, touched_on, written
from tests.phone.store import do


def left_with(page, handset, tmp_path, name):
    """The rig's log as the phone sends it."""
    page.goto(handset.host.origin + "checks/log/")
    with page.expect_download() as leaving:
        key(page, T["log"]["file"]).tap()
    leaving.value.save_as(tmp_path / name)
    return tmp_path / name


def taken(page, path, count, same):
    page.locator("input[type=file]").set_input_files(path)
    expect(page.get_by_text(T["log"]["taken"].format(file=path.name, taken=count, same=same))).to_be_visible()


def records(page):
    return sorted(do(page, "keptRecords", "bay"), key=lambda record: record["id"])


def test_two_phones_swap_their_logs(take, tmp_path):
    """A check that each begins, a defect that each writes: swapped both ways both hold the union, once each, and say one status; swapped again nothing is new."""
    phones = [take() for _ in range(2)]
    pages = []
    for place, handset in enumerate(phones):
        beside(handset, **MIDSHIP)
        page = handset.open("checks/defect/")
        written(page, handset, f"seen by {place}", rank=("restricted", "out_of_service")[place])
        page.goto(handset.host.origin + "checks/round/#daily")
        touched_on(page, T["round"]["begin"])
        for _ in range(2 + place):
            good(page)
        pages.append(page)
    own = [records(page) for page in pages]
    assert not {record["id"] for record in own[0]} & {record["id"] for record in own[1]}
    files = [left_with(page, handset, tmp_path, f"{place}.json") for place, (page, handset) in enumerate(zip(pages, phones))]
    for place, page in enumerate(pages):
        taken(page, files[1 - place], len(own[1 - place]), 0)
    union = sorted(own[0] + own[1], key=lambda record: record["id"])
    assert records(pages[0]) == records(pages[1]) == union
    again = [left_with(page, handset, tmp_path, f"again-{place}.json") for place, (page, handset) in enumerate(zip(pages, phones))]
    assert again[0].read_bytes() == again[1].read_bytes()
    for place, page in enumerate(pages):
        taken(page, again[1 - place], 0, len(union))
        page.goto(phones[place].host.origin + "checks/")
        expect(page.locator(".bay-sentence")).to_be_visible()
        expect(page.locator(".defect")).to_have_count(2)
    assert pages[0].locator(".bay-status").inner_text() == pages[1].locator(".bay-status").inner_text()
    assert records(pages[0]) == records(pages[1]) == union
