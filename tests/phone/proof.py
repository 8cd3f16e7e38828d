"""A service test at the pump as a tester handles it, on a phone whose clocks stand still until the test moves them."""
import datetime
import json

import pytest
from playwright.sync_api import expect

from site_src.content import data
from tests import service_records as records
from tests.phone.handset import kill
from tests.phone.store import do
from tests.phone.words import SITE

T = data.words("service", "en")
START = datetime.datetime(2026, 9, 21, 8, 0, tzinfo=datetime.UTC)
START_MS = int(START.timestamp() * 1000)
NAME = "Tollgate Engine 1"
RIG = {"schema": 1, "id": "rig-1", "name": NAME, "units": "US", "standard": "us",
       **{key: value for key, value in records.RIG.items() if key not in ("new", "last", "meters", "gauges", "auxiliary")}}
# A database without room, as it answers then; and a phone that stores nothing at all.
FULL = """() => { IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError"); }; }"""
REFUSE = """() => { Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }; }"""


def keep_rig(page, rig):
    """Put a rig on a phone, and choose it."""
    do(page, "keepRecord", "rigs", rig)
    page.evaluate("(id) => localStorage.setItem('rig', id)", rig["id"])


def kept_test(page, name):
    """A test that a phone keeps, by its id."""
    return next((test for test in do(page, "keptRecords", "tests") if test["id"] == name), None)


class Clock:
    """Both clocks of a phone: time goes by on both, the phone's own can be set, and neither moves by itself."""

    def __init__(self, context):
        self.clock, self.wall = context.clock, START
        self.clock.install(time=START)
        self.clock.pause_at(START)

    def passes(self, seconds):
        self.wall += datetime.timedelta(seconds=seconds)
        self.clock.fast_forward(round(seconds * 1000))

    def is_set(self, seconds):
        self.wall += datetime.timedelta(seconds=seconds)
        self.clock.set_system_time(self.wall)


class Proof:
    """One test's page. `moment` is called before each touch: there the page may be killed."""

    words = T

    def __init__(self, handset, clock, page, moment=lambda proof: None):
        self.handset, self.clock, self.page, self.moment = handset, clock, page, moment

    @property
    def id(self):
        return self.page.url.split("#")[1].split("/")[0]

    def reborn(self, meanwhile_s=0):
        """The page dies without a farewell, and is opened again where it was."""
        address = self.page.url.removeprefix(self.handset.host.origin)
        kill(self.page)
        if meanwhile_s:
            self.clock.passes(meanwhile_s)
        self.page = self.handset.open(address)
        self.page.locator("#test h2, #test .outcome, #test .standing, #test .chips, #test .clock").first.wait_for()

    def rests(self):
        """The answer to the last touch is in: the interpreter's thread keeps the real time, whatever the page's clock is set to."""
        self.page.wait_for_timeout(80)
        expect(self.page.locator("[aria-busy=true]")).to_have_count(0)

    def press(self, label):
        self.moment(self)
        self.page.get_by_role("button", name=label, exact=True).tap()

    def still(self):
        """Every gauge that was not read since the last reading shows what it showed, and is read."""
        self.rests()
        for name in self.page.locator(".cell[data-old] input").evaluate_all("(inputs) => inputs.map(({ id }) => id)"):
            field = self.page.locator(f"[id='{name}']")
            field.fill(field.input_value())
        expect(self.page.locator(".cell[data-old]")).to_have_count(0)

    def carry(self):
        """Keep what was not read since the last reading as it was: a second touch, once it stood there to be read."""
        key = self.page.get_by_role("button", name=self.words["run"]["carry"], exact=True)
        expect(key).to_be_visible()
        self.clock.passes(1)
        key.tap()
        expect(key).to_have_count(0)

    def part(self, name):
        """Straight to a part of the test."""
        self.page.evaluate("(part) => { location.hash = part; }", f"{self.id}/{name}")
        expect(self.page.locator("h1")).to_have_text(T["test"]["site"] if name == "site" else T["test_name"][name])

    def type(self, name, text, number=0):
        self.moment(self)
        self.page.locator(f'input[name="{name}"]').nth(number).fill(text.split("@")[0])

    def choose(self, name, label):
        self.moment(self)
        self.page.locator("label.chip").filter(has=self.page.locator(f'[name="{name}"]')).filter(has_text=label).first.tap()

    def unfold(self, name):
        """Open the state that a reading is of, where it is folded."""
        fold = self.page.locator("details.state:not([open])").filter(has=self.page.locator(f'[name="{name}"]'))
        if fold.count():
            fold.locator("summary").tap()

    def answer(self, test):
        """Every field of a part that is no pumping run, with a good reading."""
        for field in test["fields"]:
            value = records.value_of(field)
            self.unfold(field["id"])
            if field["kind"] == "check":
                self.choose(field["id"], T["condition"]["yes"])
            else:
                self.type(field["id"], value)

    def counts(self, text):
        expect(self.page.get_by_role("timer").locator("b")).to_have_text(text)

    def says(self, text):
        expect(self.page.locator("main").get_by_text(text).first).to_be_visible()

    def is_kept(self, state):
        """What stands above the page of how entries are kept: "noted" or "unkept"."""
        expect(self.page.locator(f"#{state}")).to_have_text(SITE["site"][state])
        expect(self.page.locator(f"#{state}")).to_be_visible()

    def record(self):
        return kept_test(self.page, self.id)


def cells_of(values):
    """The readings of a set as a record names them, each tip's apart."""
    return [cell for name, text in values.items() for cell in ([f"{name}.{place}" for place in range(len(text))] if isinstance(text, list) else [name])]


def begun(record, wall_ms, test="capacity", ready=("checks_dry", "interlock", "shift")):
    """A record whose run can begin, with readings that can be kept as they stand; `ready` are the checks before water answered yes."""
    record = json.loads(json.dumps(record))
    values = record["tests"][test]["attempts"][0]["sets"][0]
    record["tests"] = {**{name: record["tests"][name] for name in ("conditions", *ready)}, test: {"draft": {"tip": values["tip"], "values": values["values"], "touched": True, "read": cells_of(values["values"])}}}
    return {**record, "finished_ms": None, "result": None, "begun_ms": wall_ms}


def store(handset, record):
    """Have a service test on this phone before any page of it is open; gives the record."""
    start = handset.open("test/")
    do(start, "keepRecord", "tests", record)
    start.close()
    return record


@pytest.fixture
def run_of(take, request):
    """Begin the run of a rig, by number, in a page of its own on one phone: run_of(1). In French where the test is parametrised so, its words in `words`."""
    is_french = getattr(request, "param", "en") == "fr"
    handset = take(locale="fr-CA" if is_french else "en-US")
    handset.clock = Clock(handset.context)

    def begin(number, is_started=True, **facts):
        record = store(handset, begun(records.a_record(number, rig=f"rig-{number}", name=f"Tollgate Engine {number}"), START_MS, **facts))
        proof = Proof(handset, handset.clock, handset.open(f"{'fr/' if is_french else ''}test/run/#{record['id']}/capacity"))
        proof.words = data.words("service", "fr" if is_french else "en")
        if is_started:
            proof.press(proof.words["run"]["begin"])
        return proof

    return begin
