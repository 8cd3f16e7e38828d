"""The leak hunt, by touch: one timed minute a change, and nothing left plugged."""
from playwright.sync_api import expect

from tests.phone.diagnosis import D, ORDERS, button
from tests.phone.words import SITE

QUICK = """for (const clock of [performance, Date]) {
  const now = clock.now.bind(clock), began = now();
  clock.now = () => began + (now() - began) * 100;
}"""


def minute(page, start, end):
    """One timed minute of the leak hunt, with its two readings."""
    expect(button(page, D["leak"]["enter"])).to_have_count(0)  # the one before is judged
    page.get_by_label(D["leak"]["from"]).fill(start)
    button(page, D["leak"]["start"]).tap()
    page.get_by_label(D["leak"]["to"]).fill(end)
    button(page, D["leak"]["enter"]).tap()


def test_leak_hunt_ends_unplugged(take):
    """What was plugged stays listed through a reload and a new start; the hunt ends only ticked off, reliefs first, and timed once more."""
    handset = take()
    handset.context.add_init_script(QUICK)
    page = handset.open("diagnose/leak/")
    page.get_by_role("radio", name=D["role"]["technician"]).tap()
    minute(page, "22", "12")
    minute(page, "22", "12")  # not the suction side: the technician's parts are left
    minute(page, "22", "21")
    rows = page.locator(".plugs li")
    open_rows = rows.filter(has_text=D["leak"]["tagged"])
    expect(open_rows.first).to_be_visible()
    count = open_rows.count()
    assert count >= 4
    button(page, D["leak"]["again"]).tap()
    page.reload()
    expect(open_rows).to_have_count(count)
    finish = button(page, D["leak"]["finish"])
    expect(finish).to_have_count(0)
    button(page, D["leak"]["stop"]).tap()
    expect(page.get_by_role("alert")).to_contain_text(ORDERS["plugged"]["never"])
    relief = page.get_by_role("button", name=D["plug"]["intake_relief"])
    caps = page.get_by_role("button", name=D["plug"]["discharge_caps"])
    expect(relief).to_be_enabled()
    expect(caps).to_be_disabled()
    for left in range(count, 0, -1):
        expect(finish).to_have_count(0)
        expect(page.get_by_label(D["leak"]["from"])).to_have_count(0)
        expect(open_rows).to_have_count(left)
        page.locator(".plugs button:enabled").first.tap()
    minute(page, "22", "21.5")
    finish.tap()
    expect(rows).to_have_count(0)
    expect(page.get_by_role("heading", name=D["leak"]["run_first"])).to_be_visible()


def test_leak_hunt_halves(take):
    """One timed minute a change: the half that mattered is kept, and a bad reading is refused at its field."""
    handset = take()
    handset.context.add_init_script(QUICK)
    page = handset.open("diagnose/leak/")
    page.get_by_label(D["leak"]["from"]).fill("60")
    button(page, D["leak"]["start"]).tap()
    inhg = SITE["unit"]["US"]["vacuum"]
    expect(page.get_by_text(D["leak"]["out_of_range"].format(most="30", u_vacuum=inhg))).to_be_visible()
    minute(page, "22", "23")
    expect(page.get_by_text(D["leak"]["rose"])).to_be_visible()
    page.get_by_label(D["leak"]["to"]).fill("12")
    button(page, D["leak"]["enter"]).tap()
    minute(page, "22", "21")  # a tenth of the first loss: what was shut off held the leak
    expect(page.get_by_text(D["leak"]["mattered"])).to_be_visible()
    expect(page.get_by_text(D["part"]["gland"])).to_have_count(0)
