"""A service test's run and its sheet read as a person reads them, and worked out again by formulas written here, not calc's."""
import math

from site_src.content import data, standards, units

T = data.words("service")
READ_RUN = """() => ({
  cells: [...document.querySelectorAll(".cells input")].map((input) => [input.name, input.value.trim(), input.getAttribute("aria-invalid") === "true"]),
  live: [...document.querySelectorAll(".live-figure")].map((figure) => ({ text: figure.querySelector("span:first-child b").textContent, stance: figure.querySelector("span:last-child b").textContent })),
  point: document.querySelector(".run-point")?.textContent.trim() ?? "",
})"""
READ_SHEET = """() => ({
  facts: Object.fromEntries([...document.querySelectorAll(".site .facts > div")].map((row) => [row.querySelector("dt").textContent, row.querySelector("dd").textContent])),
  attempts: [...document.querySelectorAll("table.runs tbody")].map((body) => ({
    name: body.querySelector("th b").textContent, head: body.querySelector("th").innerText, verdict: body.querySelector("th .verdict b")?.textContent ?? null,
    rows: [...body.querySelectorAll("tr")].filter((row) => row.cells.length > 1).map((row) => [...row.cells].map((cell) => [cell.dataset.label, cell.textContent.trim()])),
    happened: [...body.querySelectorAll("tr")].filter((row) => row.cells.length === 1).slice(1).map((row) => row.textContent).join(" ") })),
})"""
STANDARD = standards.standard("us", "annual")
SHARES = {"capacity": (1, 150), "overload": (1, 165), "seventy": (0.7, 200), "fifty": (0.5, 250)}  # driver/operator study cards, annual test
HOLDS_S = {"capacity": 1200, "overload": 300, "seventy": 600, "fifty": 600}  # a service firm's page: 20, 5, 10, 10 min
EVERY_S, GRACE_S = 300, 30
RUN_OF = {T["test_name"][name]: name for name in SHARES}
CHIPS = {chip: float(tip.partition("@")[0]) for tip, chip in data.load("service/common")["tips"]["customary"]}


def flow_gpm(tip_in, pitots_psi):
    """29.7 d^2 sqrt(p) of each tip: driver/operator study cards."""
    return sum(29.7 * tip_in ** 2 * math.sqrt(pitot_psi) for pitot_psi in pitots_psi)


def loss_ft(site, gpm):
    """Of the table's row nearest in flow, by the square; the table is for 20 ft of hose and adds for each 10 ft more."""
    each_gpm = gpm / site["suction_lines"]
    row = min((row for row in STANDARD["suction"] if row["size_in"] == site["suction_size_in"]), key=lambda row: abs(row["gpm"] - each_gpm))
    return (row["loss_20ft_ft"] + row["add_10_ft"] * (site["suction_length_ft"] - 20) / 10) * (each_gpm / row["gpm"]) ** 2


def net_psi(site, name, discharge_psi):
    """Gauge, lift and suction loss at the run's flow, 2.3 ft to a psi: driver/operator study cards."""
    return discharge_psi + (site["lift_ft"] + loss_ft(site, point(site, name)[0])) / 2.3


def point(site, name):
    share, least_psi = SHARES[name]
    return site["rated_gpm"] * share, least_psi


class Units:
    """How the page's system shows psi, gpm and ft."""

    def __init__(self, system):
        self.kinds, self.is_exact = units.fine(system)["systems"][system], system == "US"

    def read(self, kind, text, most=math.inf):
        """An amount, or None where there is none: no number, or past what such a gauge shows."""
        try:
            amount = float(text.split()[0].replace(",", "")) / self.kinds[kind]["factor"]
        except (ValueError, IndexError):
            return None
        return amount if 0 <= amount <= most else None

    def off(self, kind, amount):
        """How far a figure worked out from what is shown, rounded, may lie from the one that stands."""
        step = 10 ** -self.kinds[kind]["places"] / self.kinds[kind]["factor"]
        return (1 if kind == "flow" else 0.6 * step) if self.is_exact else 0.006 * amount + 2 * step


def site_of(shown, system):
    """The site as the sheet has it."""
    facts, read = shown["facts"], Units(system).read
    fields = {"lift_ft": "length", "suction_length_ft": "length", "suction_size_in": "diameter"}
    site = {name: read(kind, facts[T["field"][name]]) for name, kind in fields.items()}
    sizes = {row["size_in"] for row in STANDARD["suction"]}
    site["suction_size_in"] = min(sizes, key=lambda size: abs(size - site["suction_size_in"]))
    return {**site, "suction_lines": int(float(facts[T["field"]["suction_lines"]])), "rated_gpm": round(read("flow", facts[T["field"]["pump_rated"]]), -1)}


def check_run(shown, name, site, system):
    """Flow and net pressure of what is being read follow from the cells, the tip over them and the site."""
    page = Units(system)
    pitots = [page.read("pitot", text, 200) for cell, text, _ in shown["cells"] if cell == "pitot_psi"]
    [discharge] = [page.read("pressure", text, 1000) for cell, text, _ in shown["cells"] if cell == "discharge_psi"]
    is_refused = any(refused for _, _, refused in shown["cells"])
    tips = [tip_in for chip, tip_in in CHIPS.items() if shown["point"].endswith(T["run"]["through"].format(count=len(pitots), tip=f"{chip}\u00a0in"))]
    net, flow = shown["live"] or [{"text": "—"}, {"text": "—"}]
    if is_refused:  # its figure does not stand; the other one's may
        return
    least_gpm, least_psi = point(site, name)
    if None in pitots or not tips:
        assert flow["text"] == "—", shown
    else:
        expected = flow_gpm(tips[0], pitots)
        stands(flow, page.read("flow", flow["text"]), expected, least_gpm, page.off("flow", expected), shown)
    if discharge is None:
        assert net["text"] == "—", shown
    else:
        expected = net_psi(site, name, discharge)
        stands(net, page.read("pressure", net["text"]), expected, least_psi, page.off("pressure", expected), shown)


def stands(figure, amount, expected, least, off, shown):
    assert amount is not None and abs(amount - expected) <= off, (expected, figure, shown)
    if expected - least > off:
        assert figure["stance"] in (T["stance"]["meets"], T["stance"]["close"]), (expected, least, shown)
    if least - expected > off:
        assert figure["stance"] in (T["stance"]["short"], T["stance"]["close"]), (expected, least, shown)


def check_sheet(shown, site, system):
    """Each reading's flow, net pressure and result, and each attempt's verdict, follow from what stands on the sheet."""
    for attempt in shown["attempts"]:
        rows = [_row(attempt, dict(cells), site, Units(system)) for cells in attempt["rows"]]
        if attempt["verdict"] is None:
            assert any(T["stage"][name] in attempt["head"] for name in ("now", "paused")), attempt
        elif not any(row["is_edge"] for row in rows):
            expected = _verdict(attempt, rows)
            assert attempt["verdict"] == T["status"][expected], (expected, attempt)


def _row(attempt, cells, site, page):
    """A row worked out again: its time, and what it proves."""
    name = RUN_OF[attempt["name"]]
    [at] = [text for label, text in cells.items() if label == T["run"]["at"]]

    def cell(field, kind):
        texts = [text for label, text in cells.items() if label.startswith(T["cell"][field])]
        return [page.read(kind, part.removeprefix("= ")) for part in texts[0].partition("(")[0].split(" / ")]

    pitots, [discharge], [engine] = cell("pitot_psi", "pitot"), cell("discharge_psi", "pressure"), cell("engine_rpm", "speed")
    # a set read through other tips than its attempt began with says so beside its pitot
    own = [text for label, text in cells.items() if label.startswith(T["cell"]["pitot_psi"])][0]
    chip = max((chip for chip in CHIPS if f"{len(pitots)} × {chip}\u00a0in" in (own if "(" in own else attempt["head"])), key=len)
    least_gpm, least_psi = point(site, name)
    gpm, psi = flow_gpm(CHIPS[chip], pitots), net_psi(site, name, discharge)
    figures = []
    for label, kind, amount, least in ((T["run"]["flow"], "flow", gpm, least_gpm), (T["run"]["net_short"], "pressure", psi, least_psi)):
        [text] = [text for key, text in cells.items() if key.startswith(label + ",")]
        value, band = (page.read(kind, part) for part in text.split(" ±"))
        off = page.off(kind, amount)
        assert abs(value - amount) <= off, (kind, amount, site, attempt)
        figures.append({"amount": amount, "least": least, "is_short": amount < least, "is_close": least - amount <= band, "edge": min(abs(amount - least), abs(least - amount - band)) <= off})
    row = {"at_s": sum(int(part) * 60 ** power for power, part in enumerate(reversed(at.split(":")))), "figures": figures, "is_whole": engine is not None,
           "is_strayed": not 0.95 * least_gpm <= gpm <= 1.05 * least_gpm, "is_edge": any(figure["edge"] for figure in figures)}
    if not row["is_edge"] and cells[T["sheet"]["result"]] != T["figure_status"]["by_mean"]:
        expected = "fail" if any(figure["is_short"] for figure in figures) else "pass" if row["is_whole"] else "not_proven"
        assert cells[T["sheet"]["result"]] == T["figure_status"][expected], (expected, attempt)
    return row


def _verdict(attempt, rows):
    """A short figure fails, but for a single one within its band where the mean of the run holds; then all that is due must be there."""
    name = RUN_OF[attempt["name"]]
    for place in range(2):
        figures = [row["figures"][place] for row in rows]
        short = [figure for figure in figures if figure["is_short"]]
        mean = sum(figure["amount"] for figure in figures) / max(len(figures), 1)
        is_forgiven = len(figures) > 1 and len(short) == 1 and short[0]["is_close"] and mean >= short[0]["least"]
        if short and not is_forgiven:
            return "fail"
    hold_s = HOLDS_S[name]
    dues = [*range(0, hold_s, EVERY_S), hold_s]
    taken = set()
    for row in rows:
        due = min(dues, key=lambda due: (abs(row["at_s"] - due), due))
        if row["is_whole"] and (due != hold_s or row["at_s"] >= hold_s - GRACE_S):
            taken.add(due)
    minutes = attempt["head"].split(" · ")[1].split(" ")[0].split(":")
    clock_s = sum(int(part) * 60 ** power for power, part in enumerate(reversed(minutes)))
    is_over = any(T["event"][kind] in attempt["happened"] for kind in ("stop", "strayed"))
    return "pass" if taken == set(dues) and clock_s >= hold_s and not is_over and not any(row["is_strayed"] for row in rows) else "not_proven"
