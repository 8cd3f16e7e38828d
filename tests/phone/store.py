"""What a phone keeps, put there or read by the site's own door to the database."""
import copy

from tests import service_records

DO = """async ([store, task, given]) => {
  const door = await import(store);
  return door[task](...given);
}"""


def do(page, task, *given):
    """Call one function of the site's store.js."""
    origin = page.evaluate("location.origin")
    return page.evaluate(DO, [f"{origin}/static/js/shared/store.js", task, list(given)])


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
