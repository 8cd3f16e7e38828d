"""Four sheets of a service test entered by touch with their own figures, and judged as they are: constructed from the formulas of a reference on service tests
(computed there, no record). A clear pass, a miss that the suction table decides, a worn pump, a hydrant."""
import re

import pytest
from playwright.sync_api import expect

from calc.service import page as service_page
from site_src.content import units
from tests.phone.proof import NAME, RIG, Clock, Proof, T, keep_rig
from tests.phone.test_service import keep

RUN = T["run"]
DRAFT = {"depth_ft": "6", "strainer_ft": "3", "suction_length_ft": "20"}  # hose of 6 in, one line, 20 ft; the water's depth is ours
DAY = {"air_f": "68", "water_f": "62", "barometer_inhg": "29.95", "altitude_ft": "400"}
BEFORE_WATER = ("checks_dry", "interlock", "shift")
# run: name, tips, pitot, discharge gauge, engine speed; printed: flow, net pressure, what a figure is live, the run's state
C1 = [("capacity", "2 × 1¾", "49.2", "146.5", "1640", 1276, 153.2, "passed"), ("overload", "2 × 1¾", "49.0", "161.5", "1715", 1273, 168.2, "passed"),
      ("seventy", "1 × 2", "56.5", "198.0", "1790", 893, 203.5, "passed"), ("fifty", "1 × 1¾", "49.1", "249.5", "1915", 637, 254.4, "passed")]
SHEETS = {
    "clear pass": {"rated": "1250", "lift_ft": "10", "tips": ("1¾", "2"), "runs": C1, "vacuum": ("23", "20"), "prime_s": "18"},
    # 1,250 gpm by hand: 2 x 29.7 x 1.75^2 x root 47.3 = 1251; its engine speed is ours
    "suction table": {"rated": "1250", "lift_ft": "10", "tips": ("1¾",), "runs": [("capacity", "2 × 1¾", "47.3", "143.1", "1640", 1250, 149.7, "failed")]},
    "worn pump": {"rated": "1000", "lift_ft": "8", "tips": ("2",), "new": "1760", "runs": [("capacity", "1 × 2", "72.5", "146.0", "1980", 1012, 151.0, "passed")]},
    # engine speed is ours
    "hydrant": {"rated": "750", "tips": ("1 7/8",), "intake": "38", "runs": [("capacity", "1 × 1 7/8", "53.0", "191", "1600", 760, 153, "passed")]},
}


def at_the_site(proof, sheet):
    proof.part("site")
    is_draft = "lift_ft" in sheet
    draft = (("suction_size_in", "6 in"), ("suction_lines", "1")) if is_draft else ()
    for name, label in (("source", T["condition"]["draft" if is_draft else "pressurised"]), *draft, ("meters", "0"), ("gauges", "0"), ("auxiliary", T["condition"]["no"])):
        proof.choose(name, label)
    for name, text in ({**DRAFT, "lift_ft": sheet["lift_ft"], **DAY} if is_draft else DAY).items():
        proof.type(name, text)
    for tip in sheet["tips"]:
        proof.page.get_by_role("group", name=T["condition"]["tips_in"]).get_by_role("checkbox", name=tip, exact=True).tap()


def before_water(proof):
    plan = service_page.answer(proof.record(), units.fine("US"))["plan"]
    for test in plan["tests"]:
        if test["id"] in BEFORE_WATER:
            proof.part(test["id"])
            proof.answer(test)
    return plan


def pumped(proof, clock, plan, sheet, run):
    """One run, its figures read once and held to the end."""
    name, tips, pitot_psi, discharge_psi, engine_rpm, flow_gpm, net_psi, verdict = run
    plan_of = next(test for test in plan["tests"] if test["id"] == name)
    proof.part(name)
    proof.page.locator(".dock").wait_for()
    chip = proof.page.locator(".run-tips label.chip", has_text=re.compile(f"^{tips}(?!\\d)"))
    if chip.count():
        chip.first.tap()
    proof.type("discharge_psi", discharge_psi)
    if "intake" in sheet:
        proof.type("intake_psi", sheet["intake"])
    for place in range(int(tips[0])):
        proof.type("pitot_psi", pitot_psi, place)
    proof.type("engine_rpm", engine_rpm)
    proof.rests()
    for place in range(2):
        expect(proof.page.locator(".live-figure span:first-child b").nth(place)).to_have_text(re.compile(r"\d"))
    net, flow = (float(figure.replace(",", "")) for figure in proof.page.locator(".live-figure span:first-child b").all_inner_texts())
    assert (net, flow) == (pytest.approx(net_psi, abs=0.15), pytest.approx(flow_gpm, abs=1.2))
    if verdict == "failed":  # by 0.3 psi, inside what any gauge may err
        expect(proof.page.locator(".live-figure").first).to_contain_text(T["stance"]["close"])
    proof.press(RUN["begin"])
    at_s = 0
    for due in plan_of["due_s"][1:]:
        clock.passes(due - at_s)
        at_s = due
        proof.still()
        proof.press(keep(due))
        proof.rests()


@pytest.mark.parametrize("sheet", SHEETS.values(), ids=SHEETS.keys())
def test_a_sheet_is_judged_as_it_says(take, sheet):
    """Typed by touch from the site to the last reading: flow, net pressure and verdict are those of the sheet."""
    handset = take()
    clock = Clock(handset.context)
    page = handset.open("test/")
    rig = {**RIG, "pump_rated": f"{sheet['rated']}@US", "governed": "2100", **({"speed_capacity": sheet["new"]} if "new" in sheet else {})}
    keep_rig(page, rig)
    page.reload()
    page.get_by_role("button", name=f"{T['test']['begin']}: {NAME}").tap()
    page.get_by_text(T["test"]["site"], exact=True).wait_for()
    proof = Proof(handset, clock, page)
    at_the_site(proof, sheet)
    plan = before_water(proof)
    if "vacuum" in sheet:
        proof.part("vacuum")
        proof.type("vacuum_reached_inhg", sheet["vacuum"][0])
        proof.press(RUN["begin"])
        clock.passes(300)
        proof.says(RUN["over"])
        proof.type("vacuum_after_inhg", sheet["vacuum"][1])
        proof.part("priming")
        proof.type("prime_s", sheet["prime_s"])
    for run in sheet["runs"]:
        pumped(proof, clock, plan, sheet, run)
    page.evaluate("(id) => { location.hash = id; }", proof.id)
    states = {run[0]: run[-1] for run in sheet["runs"]} | (dict.fromkeys(("vacuum", "priming"), "passed") if "vacuum" in sheet else {})
    for name, state in states.items():
        expect(page.get_by_role("navigation").get_by_role("link", name=T["test_name"][name]).first.locator(".station-state")).to_have_text(re.compile(f"^{T['stage'][state]}"))
    if "intake" in sheet:  # priming and lift are not shown from a hydrant
        assert not any(test["id"] == "priming" and not test["missing"] for test in plan["tests"])
    if "new" in sheet:  # 12.5 percent up: the point is met, its cause is to be looked for
        caution = page.get_by_text(T["caution"]["speed_above_new"].format(value="1980", limit="1936"))
        proof.part("capacity")
        expect(caution).to_be_in_viewport()
        page.goto(f"{handset.host.origin}test/sheet/#{proof.id}")
        expect(caution).to_be_attached()
