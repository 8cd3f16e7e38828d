"""The answer of a page worked out again at the desk, from the labels and numbers that stand on it and nothing else.

A hose is known by its printed size, a device by its name, an amount by the unit beside it. Units go through Pint, friction
and flow through calc.layout.pressure, which knows nothing of the page's texts. Entries may have been rounded when they were shown in
other units, so each stands for all amounts that read the same; so does the answer.
"""
import re

import pint

from calc.base.errors import CalcError
from calc.hydraulics import outlet
from calc.layout import pressure
from site_src.content import data, units
from tests.phone.words import SITE

WORDS = SITE["pressure"]
REGISTRY = pint.UnitRegistry()
SYSTEMS = data.by_id(units.systems())
FLOWS = {SITE["unit"][name]["flow"] for name in SYSTEMS}
HOSES = data.named("hoses")
TIPS = data.load("nozzles")["tip"]
OURS = {"pressure": "psi", "flow": "gallon/minute", "length": "foot"}
RATE = {"customary": "psi/foot/(gallon/minute)**2", "metric": "kPa/meter/(liter/minute)**2"}
KINDS = {WORDS[name]: name for name in ("fog", "smooth", "automatic", "inlet")}

INTO = re.compile(re.escape(WORDS["into"]).replace(r"\{id\}", "[A-Z][0-9]*").replace(r"\{at\}", "(?P<at>[A-Z][0-9]*)"))
SLACK_PX = 1.5  # between the end of one hose and the start of the next, as drawn


class Unreadable(AssertionError):
    """The page does not tell a person what a number follows from."""


class Refused(Exception):
    """An entry on the page is no amount, so no number may stand."""


def system_of(page):
    """The system whose units stand beside the entries and the flow."""
    beside = {field["unit"] for line in page["lines"] for field in line["fields"].values()}
    beside |= {word for word in page["flow"].split() if word in FLOWS} if page["number"] else set()
    fits = [name for name in SYSTEMS if beside <= set(SITE["unit"][name].values())]
    if not fits:
        raise Unreadable(f"of no system: {beside}")
    return fits[0]


def _row(rows, shown, family):
    """The row a person means by what is chosen: its chip among the sizes of the page, or its whole label."""
    for row in rows:
        if shown == row["label"] or (row["family"] == family and shown == row.get("chip")):
            return row
    raise Unreadable(f"no such size: {shown!r}")


def handbook(hose):
    """The handbook's coefficient of a row of the data, psi per 100 ft at 100 gpm."""
    printed = hose["coefficient"] if hose["family"] == "customary" else hose["coefficient_kpa"]
    return REGISTRY.Quantity(printed, RATE[hose["family"]]).to(RATE["customary"]).magnitude


def bore_in(tip):
    return tip["tip_in"] if "tip_in" in tip else REGISTRY.Quantity(tip["tip_mm"], "millimeter").to("inch").magnitude


def _under(entries, label):
    """What stands under a label, which may carry a unit behind a comma."""
    for name, value in entries.items():
        if name == label or name.startswith(label + ","):
            return value
    raise Unreadable(f"nothing under {label!r}, only {list(entries)}")


def _amount(field, kind, system, end):
    """The least (end -1) or greatest (end 1) amount in calc's unit that reads like this entry."""
    if not re.fullmatch(r"[-\u2212]?\d+([.,]\d+)?", field["text"].strip()) or field["refused"]:
        raise Refused(f"{field}")
    typed = field["text"].strip().replace("\u2212", "-").replace(",", ".")
    if field["unit"] != SITE["unit"][system][kind]:
        raise Unreadable(f"{field['unit']!r} beside a {kind} in {system}")
    places = len(typed.partition(".")[2])
    value = float(typed)
    if value:
        value += end * 0.5 * 10 ** -places
    return REGISTRY.Quantity(value, SYSTEMS[system]["kinds"][kind]["unit"]).to(OURS[kind]).magnitude


class Reader:
    """One reading of a page, with every entry at one end of what it may stand for."""

    def __init__(self, page, coefficients, end):
        self.page, self.coefficients, self.end = page, coefficients, end
        self.system = system_of(page)
        self.family = SYSTEMS[self.system]["family"]

    def amount(self, line, label, kind):
        return _amount(_under(line["fields"], label), kind, self.system, self.end)

    def layout(self):
        rows = list(self.page["lines"])
        left = min(row["drawn"]["from"][0] for row in rows)
        lines = [self._line(rows, row, 0) for row in list(rows) if abs(row["drawn"]["from"][0] - left) <= SLACK_PX]
        if rows:
            raise Unreadable(f"the drawing leaves over {rows}")
        return {"lines": lines}

    def _behind(self, rows, joint, joint_ft):
        """The lines that begin where a hose to a joint ends, each with what hangs behind it, taken off the rows."""
        at = joint["drawn"]["to"]
        return [self._line(rows, row, joint_ft) for row in list(rows)
                if max(abs(one - other) for one, other in zip(row["drawn"]["from"], at)) <= SLACK_PX]

    def _second(self, row, at):
        """A hose that is called a second one into another line and drawn to where that one ends: it has no height or nozzle of its own."""
        [first] = [line for line in self.page["lines"] if line["name"].split()[-1] == at]
        if max(abs(one - other) for one, other in zip(row["drawn"]["to"], first["drawn"]["to"])) > 2 * SLACK_PX:
            raise Unreadable(f"{row['title']} is drawn to {row['drawn']['to']}, {at} to {first['drawn']['to']}")
        hose = _row(HOSES, _under(row["groups"], WORDS["hose"]), self.family)
        return {
            "id": row["name"], "coefficient": self._coefficient(hose), "bore_in": 1,
            "length_ft": max(self.amount(row, WORDS["length"], "length"), 0), "parallel": self._parallel(row), "end": {"into": first["name"]},
        }

    def _coefficient(self, hose):
        coefficient = self.coefficients.get(hose["id"], handbook(hose))
        if coefficient is None:
            raise Refused(f"the rig's figure for {hose['label']}")
        return coefficient

    def _parallel(self, row):
        parallel = int(row["groups"][WORDS["runs"]])
        if row["drawn"]["count"] != parallel:
            raise Unreadable(f"{row['drawn']['count']} hoses drawn, {parallel} chosen")
        return parallel

    def _line(self, rows, row, joint_ft):
        rows.remove(row)
        second = INTO.match(row["title"])
        if second:
            return self._second(row, second["at"])
        hose = _row(HOSES, _under(row["groups"], WORDS["hose"]), self.family)
        above_pump_ft = self.amount(row, WORDS["height"], "length")
        device = next((value for name, value in row["groups"].items() if name == WORDS["device"]), SITE["device"]["none"])
        line = {
            "id": row["name"],
            "coefficient": self._coefficient(hose),
            "bore_in": 1,  # speeds are no part of this claim
            "length_ft": max(self.amount(row, WORDS["length"], "length"), 0),
            "rise_ft": above_pump_ft - joint_ft,
            "parallel": self._parallel(row),
            "appliance_psi": 0 if device == SITE["device"]["none"] else max(self.amount(row, WORDS["loss"], "pressure"), 0),
        }
        nozzle = row["groups"].get(WORDS["nozzle"])
        line["end"] = {"lines": self._behind(rows, row, above_pump_ft)} if nozzle is None else self._nozzle(row, KINDS[nozzle])
        if row["fields"].get(WORDS["device_most"], {}).get("text", "").strip() and self.amount(row, WORDS["device_most"], "flow") <= 0:
            raise Refused("a device for no flow")
        if WORDS["loss_at"] in row["fields"]:  # at this flow it loses that, by the square: at the greatest of it the least
            at_gpm = _amount(row["fields"][WORDS["loss_at"]], "flow", self.system, -self.end)
            if at_gpm <= 0:
                raise Refused("a loss at no flow")
            line["appliance_psi"] *= (outlet.rating(line["end"])[1] / at_gpm) ** 2
        return line

    def _nozzle(self, row, kind):
        wanted = self.amount(row, WORDS["inlet_pressure" if kind == "inlet" else "nozzle_pressure"], "pressure")
        if kind == "smooth":
            tip = _row(TIPS, _under(row["groups"], WORDS["tip"]), self.family)
            return {"kind": "smooth", "tip_in": bore_in(tip), "nozzle_psi": wanted}
        flow = self.amount(row, WORDS["greatest" if kind == "automatic" else "flow"], "flow")
        if kind == "inlet":
            return {"kind": "open", "pressure_psi": wanted, "flow_gpm": flow}
        if kind == "automatic":
            least = self.amount(row, WORDS["least"], "flow")
            if least > flow:
                raise Refused("least above greatest")
            return {"kind": "automatic", "min_gpm": least, "max_gpm": flow, "rated_psi": wanted}
        return {"kind": "fog", "rated_gpm": flow, "rated_psi": wanted}


def least_and_greatest_psi(page, coefficients):
    """Between which pressures the answer must lie, or Refused where nothing follows from the entries; and the greatest
    loss in 100 ft of any hose."""
    found, loss_psi = [], 0
    for end in (-1, 1):
        try:
            report = pressure.discharge_pressure(Reader(page, coefficients, end).layout())
        except CalcError as error:
            raise Refused(f"{error.field} {error.code}") from error
        found.append(report["discharge_psi"])
        loss_psi = max(loss_psi, *(line["friction_per_100_ft_psi"] for line in report["lines"]))
    return *found, loss_psi


def claim_psi(page):
    """The biggest number of the page in psi, with half of the step it is set to as slack, or None where there is none."""
    if page["number"] is None:
        return None
    system = system_of(page)
    unit = SITE["unit"][system]["pressure"]
    match = re.fullmatch(rf"([\u2212-]?\d+(?:[.,]\d+)?) {re.escape(unit)}", page["number"])
    if not match:
        raise Unreadable(page["number"])
    typed = match[1].replace("\u2212", "-").replace(",", ".")
    name = SYSTEMS[system]["kinds"]["pressure"]["unit"]
    half = 0.5 * SYSTEMS[system]["kinds"]["pressure"].get("set", 10 ** -len(typed.partition(".")[2]))
    return [REGISTRY.Quantity(float(typed) + end * half, name).to("psi").magnitude for end in (-1, 1)]


MOST_PSI = 2000  # the page says of more, at the pump or lost in 100 ft, that it is beyond any hose


def check(page, coefficients):
    """Fail where the biggest number does not follow from what stands on the page, or stands where none may."""
    claimed = claim_psi(page)
    try:
        least_psi, greatest_psi, loss_psi = least_and_greatest_psi(page, coefficients)
    except Refused as why:
        assert claimed is None, f"{page['number']} stands although {why}"
        assert page["instead"], "nothing is said in place of the number"
        return
    if claimed is None:
        assert least_psi < 0 or max(greatest_psi, loss_psi) > MOST_PSI or any(field["refused"] for line in page["lines"] for field in line["fields"].values()), (
            f"{page['instead']!r} where {least_psi:.1f} to {greatest_psi:.1f} psi follows from the entries")
        return
    slack_psi = 0.02 * max(abs(greatest_psi), 1) / 100
    assert claimed[0] <= greatest_psi + slack_psi and claimed[1] >= least_psi - slack_psi, (
        f"the page says {page['number']}, its entries give {least_psi:.1f} to {greatest_psi:.1f} psi")
