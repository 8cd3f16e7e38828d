"""Some hundred phones on poor links through three releases in a day; the bench has ten thousand of them."""
import pytest

from tests.bench import phones


@pytest.fixture(scope="module")
def versions(built):
    return phones.releases(built)


def test_every_phone_ends_on_one_whole_version(versions):
    """None without one, none with parts of two; one that had the site before fetches little of a release that changes a sentence."""
    day = phones.day(300, 5, versions)
    assert {(phone.uses, phone.is_whole()) for phone in day} == {(2, True)}
    assert len({phone.link for phone in day}) == len(phones.LINKS)
    fetched = [phone.bytes[1] for phone in day if phone.bytes[1] and phone.bytes[0] > 500_000]
    changes = sum(size for name, (digest, size, *_) in versions[1].items() if digest == 2)
    assert changes < 30_000 and min(fetched) <= changes


def test_a_part_of_another_version_is_noticed(versions):
    """The check of the day itself: a phone that lacks one file of its version is not whole."""
    [phone] = phones.day(1, 5, versions)
    phone.kept.discard(("cautions/index.html", 2))
    assert not phone.is_whole()
