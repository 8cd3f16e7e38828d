"""A phone that already holds rigs and finished service tests."""
from site_src.content import fleet
from tests import service_records

PROFILE = fleet.load()["tollgate-engine-1"]  # of our own invention
YEAR_MS = 31_557_600_000
SEED = """async ({ tests, rig }) => {
  const database = await new Promise((done, failed) => {
    const opening = indexedDB.open("panelhand");
    opening.onsuccess = () => done(opening.result);
    opening.onerror = failed;
  });
  const writing = database.transaction(["tests", "rigs"], "readwrite");
  for (const test of tests) writing.objectStore("tests").put(test, test.id);
  writing.objectStore("rigs").put(rig, rig.id);
  await new Promise((done) => { writing.oncomplete = done; });
  database.close();
  localStorage.setItem("rig", rig.id);
  localStorage.setItem("profiles", String(Date.now())); // as the door to what is kept notes it
}"""


def years(wear=(0.0, 0.01, 0.03, 0.05)):
    """Tests of the rig, one a year: an acceptance, then annual ones with the engine turning faster each time."""
    begun_ms = service_records.BEGUN_MS - (len(wear) - 1) * YEAR_MS
    return [
        service_records.a_record(number, PROFILE["id"], PROFILE["name"], "annual" if number else "acceptance", begun_ms + number * YEAR_MS, each)
        for number, each in enumerate(wear)
    ]


def held(handset, tests=(), rig=PROFILE):
    """The phone beside a rig, with these tests; gives a page of it."""
    page = handset.open("test/")
    page.get_by_role("heading", level=2).first.wait_for()  # the page has opened the database
    page.evaluate(SEED, {"tests": list(tests), "rig": rig})
    return page
