"""The reference tables, baked from calc in each system of units: headings and rows of text."""
from calc.base import display
from calc.hydraulics import hose as hoses, nozzle, water
from calc.pump import draft
from calc.supply import hydrant, sources
from site_src.content import catalogue, data, reckoners, units


class Tables:
    """Every table in one system of units."""

    def __init__(self, system):
        """system: a row of units.systems()"""
        self.system = system
        self.metric = system["family"] == "metric"
        self.units = units.shown_in(system["id"])

    def canonical(self, kind, amount):
        """A round figure of this system in calc's unit."""
        return amount / self.units["systems"][self.system["id"]][kind]["factor"]

    def text(self, kind, amount):
        return display.text(self.units, kind, amount)

    def loss_text(self, loss_psi):
        """A decimal more than an answer where the loss is small, and as an answer above."""
        scale = self.units["systems"][self.system["id"]]["pressure"]
        shown = loss_psi * scale["factor"]
        return display.rounded(self.units, shown, scale["places"] + (shown < 10 * 10 ** -scale["places"]))

    def of_family(self, rows):
        return [row for row in rows if row["family"] == self.system["family"]]

    def pressures(self, row, name):
        """Round pressures of a data row in calc's unit: printed in kPa for metric systems, in psi for the others."""
        if not self.metric:
            return row[f"{name}_psi"]
        return [units.canonical("pressure", kpa, "kPa") for kpa in row[f"{name}_kpa"]]

    def friction(self):
        """One table a hose: flow, loss over each usual length, velocity; with the hose's coefficient as text."""
        tables = []
        for row in self.of_family(data.named("hoses")):
            facts = catalogue.hose(row)
            flows = row["table_lpm"] if self.metric else row["table_gpm"]
            tables.append({
                "hose": row,
                "coefficient": display.working(self.units, "coefficient", facts["coefficient"]),
                "rows": [self._friction_row(facts, flow) for flow in flows],
            })
        return tables

    def _friction_row(self, facts, flow):
        flow_gpm = self.canonical("flow", flow)
        losses = [
            self.loss_text(hoses.friction_loss_psi(facts["coefficient"], flow_gpm, self.canonical("length", length)))
            for length in self.system["table_lengths"]
        ]
        return [str(flow), *losses, self.text("velocity", hoses.velocity_ft_per_s(flow_gpm, facts["bore_in"]))]

    def tips(self):
        """One table a tip: pressure, flow, reaction, and whether the tip is usually run at it."""
        nozzles = data.load("nozzles")
        tables = []
        for tip in self.of_family(nozzles["tip"]):
            tip_in = tip["tip_in"] if "tip_in" in tip else units.canonical("diameter", tip["tip_mm"], "millimeter")
            usual = tip["usual_kpa"] if self.metric else tip["usual_psi"]
            printed = nozzles["tips"]["table_kpa" if self.metric else "table_psi"]
            tables.append({
                "tip": tip,
                "rows": [
                    (
                        self.text("pressure", psi),
                        self.text("flow", nozzle.smooth_bore_flow_gpm(tip_in, psi)),
                        self.text("force", nozzle.smooth_bore_reaction_lbf(tip_in, psi)),
                        figure == usual,
                    )
                    for figure, psi in zip(printed, self.pressures(nozzles["tips"], "table"), strict=True)
                ],
            })
        return tables

    def fog_reaction(self):
        """Fog nozzle reaction: a row a flow, a column a nozzle pressure; and what crews can hold."""
        nozzles = data.load("nozzles")
        pressures = self.pressures(nozzles["fog"], "pressures")
        flows = nozzles["fog"]["flows_lpm" if self.metric else "flows_gpm"]
        return {
            "pressures": [self.text("pressure", psi) for psi in pressures],
            "rows": [
                [str(flow)]
                + [self.text("force", nozzle.fog_reaction_lbf(self.canonical("flow", flow), psi)) for psi in pressures]
                for flow in flows
            ],
            "crews": [(str(crew["people"]), self.text("force", crew["limit_lbf"])) for crew in nozzles["crew"]],
        }

    def elevation(self):
        """Pressure of height: by length, exact and by the field rule; and by floors."""
        height = data.load("losses")["height"]
        places = self.units["systems"][self.system["id"]]["pressure"]["places"]
        exact_places = places + (not self.metric) + (self.system["id"] == "bar")
        heights = height["table_m"] if self.metric else height["table_ft"]
        if self.metric:
            field_psi = units.canonical("pressure", height["field_kpa_per_m"], "kPa")
            floor_psi = units.canonical("pressure", height["floor_kpa"], "kPa")
        else:
            field_psi, floor_psi = height["field_psi_per_ft"], height["floor_psi"]
        factor = self.units["systems"][self.system["id"]]["pressure"]["factor"]
        return {
            "heights": [
                (
                    str(rise),
                    display.rounded(self.units, water.elevation_psi(self.canonical("length", rise)) * factor, exact_places),
                    display.plain(self.units, rise * field_psi * factor, places + 1),
                )
                for rise in heights
            ],
            "floor": display.plain(self.units, floor_psi * factor, places + 1),
            "floors": [
                (str(floor), display.plain(self.units, (floor - 1) * floor_psi * factor, places + 1)) for floor in range(1, height["floors"] + 1)
            ],
        }

    def appliances(self):
        """Loss of each appliance: its row, and (from flow or None, loss) steps as text."""
        return [
            {
                "appliance": row,
                "steps": [
                    (None if from_gpm == 0 else self.text("flow", from_gpm), self.text("pressure", psi))
                    for from_gpm, psi in row["steps"]
                ],
            }
            for row in data.named("losses")
        ]

    def lift(self):
        """Greatest and practical lift: for each a column a temperature, a row an altitude."""
        family = self.system["family"]
        table = data.load("water")["lift_table"]
        asked = [field for field in reckoners.fields("draft") if field["name"] == "water"][0]
        waters = [(water_f, label) for water_f, label in asked[f"{family}_options"] if water_f in table[family]]
        heights = table["altitude_m" if self.metric else "altitude_ft"]
        def rows(lift_ft):
            return [
                [str(height)] + [self.text("lift", lift_ft(self.canonical("altitude", height), int(water_f))) for water_f, _ in waters]
                for height in heights
            ]

        return {"waters": [label for _, label in waters], "max": rows(draft.max_lift_ft), "practical": rows(draft.practical_lift_ft)}

    def vacuum(self):
        """Height of water by vacuum reading."""
        readings = data.load("water")["lift_table"]["vacuum_kpa" if self.metric else "vacuum_inhg"]
        found = []
        for reading in readings:
            inhg = units.canonical("vacuum", reading, "kPa") if self.metric else reading
            found.append((self.text("vacuum", inhg), self.text("lift", draft.lift_from_vacuum_ft(inhg))))
        return found

    def suction(self):
        """One table a size of suction hose: flow, and loss over each length."""
        table = data.load("water")["suction_table"]
        flows, lengths = (table[f"flow_{'lpm' if self.metric else 'gpm'}"], table[f"length_{'m' if self.metric else 'ft'}"])
        offered = [field for field in reckoners.fields("draft") if field["name"] == "suction"][0]
        return [
            {
                "label": reckoners.size(label),
                "lengths": lengths,
                "rows": [
                    [str(flow)] + [self.text("lift", self._suction_ft(float(size), flow, length)) for length in lengths]
                    for flow in flows[size]
                ],
            }
            for size, label in offered[f"{self.system['family']}_options"]
        ]

    def _suction_ft(self, size_in, flow, length):
        rows = data.load("water")["suction"]
        return draft.suction_loss_ft(rows, size_in, self.canonical("flow", flow), self.canonical("length", length))

    def classes(self):
        """Classes of hydrants: name, least flow, and the pressure they are given at."""
        rows = [(name, self.text("flow", least_gpm)) for least_gpm, name in hydrant.CLASSES]
        return {"pressure": self.text("pressure", sources.LEAST_RESIDUAL_PSI), "rows": rows}

    def more_lines(self):
        """More like lines: rows of the percentage rule, (percent, lines)."""
        return [(str(percent), str(lines)) for percent, lines in sources.PERCENTAGE_ROWS]

    def relays(self):
        """Relay spacing: a column a hose with its pressure, a row a flow."""
        table, hoses = data.load("water")["relay_table"], data.by_id(data.named("hoses"))
        family = self.system["family"]
        residual_psi = units.canonical("pressure", table["residual_kpa"], "kPa") if self.metric else table["residual_psi"]
        columns = [
            (hoses[name], units.canonical("pressure", most, "kPa") if self.metric else most) for name, most in table[family]]
        return {
            "residual": self.text("pressure", residual_psi),
            "heads": [(row.get("chip", row["label"]), self.text("pressure", most_psi)) for row, most_psi in columns],
            "rows": [
                [str(flow)] + [self._spacing(row, flow, most_psi, residual_psi) for row, most_psi in columns]
                for flow in table["flow_lpm" if self.metric else "flow_gpm"]
            ],
        }

    def _spacing(self, row, flow, most_psi, residual_psi):
        """Rounded down: a section too many is a pumper too few."""
        coefficient = catalogue.hose(row)["coefficient"]
        spacing_ft = sources.relay_spacing_ft(coefficient, self.canonical("flow", flow), most_psi, residual_psi, 0)
        shown = spacing_ft * self.units["systems"][self.system["id"]]["length"]["factor"]
        step = 5 if shown < 2000 else 25
        return str(int(shown / step + 1e-9) * step)
