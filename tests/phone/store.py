"""What a phone keeps, put there or read by the site's own door to the database."""
import contextlib
import copy
import fnmatch

from playwright.sync_api import Error

from tests import contracts, service_records
from tests.phone.sources import source

DO = """async ([store, task, given]) => {
  const door = await import(store);
  return door[task](...given);
}"""


# Everything in the database, by store and key; null where this page has none to read.
ALL = """async () => {
  const isThere = (await indexedDB.databases()).some(({ name }) => name === "panelhand");
  if (!isThere) return null;
  const done = (asked) => new Promise((take, fail) => { asked.onsuccess = () => take(asked.result); asked.onerror = () => fail(asked.error); });
  const opened = await done(indexedDB.open("panelhand"));
  const rows = [];
  for (const store of opened.objectStoreNames) {
    const at = opened.transaction(store).objectStore(store);
    const [keys, values] = await Promise.all([done(at.getAllKeys()), done(at.getAll())]);
    keys.forEach((key, place) => rows.push([`${store}/${key}`, values[place]]));
  }
  opened.close();
  return rows;
}"""
SHAPES = [name for name in contracts.tables() if name.split("/")[0] in ("drafts", "rigs", "log", "tests", "bay", "photos") and "page.json" not in name]


def drifts(rows):
    """Where what a phone keeps, as (place, value), is not of the shape that tests/contracts gives for its place."""
    told = []
    for place, value in rows:
        if place == "drafts/probe":  # it comes and goes, to see whether there is room
            continue
        shape = next((name for name in SHAPES if fnmatch.fnmatchcase(place, name)), None)
        told += contracts.drifts(value, shape) if shape else [f"{place}: no shape in tests/contracts/kept.toml"]
    return told


def drifts_on(context, origin):
    """The same of a phone, read by one of its pages that are open; none where no page can read it."""
    for page in context.pages:
        if page.url.startswith(origin):
            with contextlib.suppress(Error):  # a page that crashed, or may not keep anything
                return drifts(page.evaluate(ALL) or [])
    return []


def do(page, task, *given):
    """Call one function of the site's store.js."""
    return page.evaluate(DO, [source(page, "shared/store.js"), task, list(given)])


# What the database itself has, without the notes before it.
HELD = """(store) => new Promise((done, failed) => {
  const opening = indexedDB.open("panelhand");
  opening.onerror = () => failed(opening.error);
  opening.onsuccess = () => {
    const asked = opening.result.transaction(store).objectStore(store).getAll();
    asked.onsuccess = () => { opening.result.close(); done(asked.result); };
  };
})"""


def in_database(page, store):
    return page.evaluate(HELD, store)


def put(handset, task, *given):
    """The same on a page of its own, before any other is open."""
    page = handset.open("404.html")
    do(page, task, *given)
    page.close()


def put_test(handset, record):
    put(handset, "keepRecord", "tests", record)


def running_test():
    """A service test under way, the clock of its first run going."""
    record = copy.deepcopy(service_records.an_unfinished_record())
    record["tests"]["capacity"]["attempts"][0]["clock"]["since"] = record["begun_ms"]
    return record
