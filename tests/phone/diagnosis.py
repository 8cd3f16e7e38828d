"""A diagnosis on a phone: its places, its looks, its answers and its orders, as a person taps them."""
import contextlib
import json

from playwright.sync_api import TimeoutError, expect

from site_src.content import data

D = data.words("diagnose")
F = data.words("faults")
ASK = D["diagnose"]
ORDERS = data.orders()
ORDER = data.words("orders")["order"]
SIGN = {row["id"]: row for row in data.load("faults")["sign"]}
QUESTIONS = {row["id"]: row["answers"] for row in data.load("faults")["question"]}


def button(page, name):
    return page.get_by_role("button", name=name, exact=True)


def place(page, name):
    """The key of a place in the drawn cab and panel."""
    return button(page, D["at"][name])


def open_fresh(away):
    """The diagnosis at its first screen."""
    page = away.open("diagnose/")
    first = place(page, "lamp")
    again = button(page, ASK["again"])
    so_far = page.get_by_text(ASK["so_far"], exact=True)
    first.or_(again).or_(so_far).first.wait_for()
    if not first.is_visible():
        if not again.is_visible():
            so_far.tap()
        again.tap()
    first.wait_for()
    return page


def tap_until(page, touched, what):
    """Touch a button until the page has changed: a look settles before it takes an answer."""
    for _ in range(20):
        try:
            touched.tap(timeout=2000)
        except TimeoutError:
            pass  # gone already: the page changes now
        try:
            return expect(page.locator("#page")).not_to_have_text(what, use_inner_text=True, timeout=250)
        except AssertionError:
            continue
    raise AssertionError("never answered")


def tap(page, name):
    tap_until(page, button(page, name), page.locator("#page").inner_text())


def keys_of(look):
    """The nouns that answer a look, by what each says: of a sign seen and not_seen, of a question its answers."""
    return F["said"][look] if look in QUESTIONS else dict(zip(("seen", "not_seen"), F["asks"][look][1:], strict=True))


def asked(page):
    """The sign or question that the page asks about, or None where it asks for none."""
    before = ...
    for _ in range(50):  # heading and keys are read one after the other, and between two looks there is neither: what it asks stands
        with contextlib.suppress(StopIteration):
            look = _read(page)
            if look == before:
                return look
            before = look
        page.wait_for_timeout(60)
    raise AssertionError("the keys are of no look with this heading")


def _read(page):
    title = page.locator(".look h2")
    if not title.count():
        return None
    text = title.inner_text()
    looks = [name for name, question in F["question"].items() if question == text]
    looks += [name for name, words in F["asks"].items() if words[0] == text]
    nouns = set(page.locator("#acts .key-noun").all_inner_texts())
    return next(look for look in looks if not nouns or nouns <= set(keys_of(look).values()))


def answer(page, said):
    """Give one answer to the look on the screen, by the key that says it: "unknown", or one of keys_of."""
    tap(page, ASK["unsure"] if said == "unknown" else keys_of(asked(page))[said])


def truly(page, look, says):
    """Answer a look by what is true of each sign."""
    if look not in QUESTIONS:
        return answer(page, says(look))
    offered = set(page.locator("#acts .key-noun").all_inner_texts())
    possible = [row for row in QUESTIONS[look] if F["said"][look][row["id"]] in offered]
    seen = [row["id"] for row in possible if row["seen"] and all(says(sign) == "seen" for sign in row["seen"])]
    nothing = [row["id"] for row in possible if not row["seen"]]
    return answer(page, (seen + nothing + ["unknown"])[0])


def begin(page, sign):
    """Open the diagnosis with a sign, at its place; where that is a hazard, its order comes first and is carried out."""
    choose(page, sign)
    if "order" in SIGN[sign]:
        carried_out(page, SIGN[sign]["order"])


def choose(page, sign):
    """Tap a sign at its place."""
    tap_until(page, place(page, SIGN[sign]["at"]), page.locator("#page").inner_text())
    tap(page, F["sees"][sign])


def carried_out(page, name):
    """The order stands whole on the screen, and no look is offered before it is carried out."""
    order = ORDERS[name]
    expect(page.get_by_role("alert").get_by_role("listitem")).to_have_text(order["do"])
    expect(page.get_by_role("alert")).to_contain_text(order["never"])
    expect(page.locator(".look")).to_have_count(0)
    tap(page, ASK["carried_out"])


def open_at(away, signs):
    """A diagnosis that another page begins with these signs, seen."""
    page = away.context.new_page()
    page.goto(away.host.origin + "diagnose/#from=" + json.dumps({"signs": dict.fromkeys(signs, "seen")}))
    return page


def log_of(page):
    """Every record in the phone's log."""
    return page.evaluate("""() => new Promise((resolve) => {
        const opening = indexedDB.open("panelhand");
        opening.onsuccess = () => {
            const asked = opening.result.transaction("log").objectStore("log").getAll();
            asked.onsuccess = () => { opening.result.close(); resolve(asked.result); };
        };
    })""")


def age(page, minutes):
    """Put the diagnosis that was left so many minutes back, as the phone keeps it."""
    page.evaluate("""(minutes) => new Promise((resolve) => {
        const opening = indexedDB.open("panelhand");
        opening.onsuccess = () => {
            const store = opening.result.transaction("drafts", "readwrite").objectStore("drafts");
            const asked = store.get("diagnosis");
            asked.onsuccess = () => {
                const text = JSON.stringify(asked.result).replace(/"\\d{4}-\\d\\d-[^"]*Z"/g, (at) => JSON.stringify(new Date(Date.parse(JSON.parse(at)) - minutes * 60000).toISOString()));
                store.put(JSON.parse(text), "diagnosis");
                store.transaction.oncomplete = () => { opening.result.close(); resolve(); };
            };
        };
    })""", minutes)
