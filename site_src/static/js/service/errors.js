// Where ± comes from: what each instrument of this test may err, by its certificate or else as usual.
import { fill } from "../shared/site.js";

export function errorsText({ words, record, data, shown, u }) {
  const { source, flow_by: by } = record.conditions;
  const names = ["discharge_psi", source === "pressurised" ? "intake_psi" : "lift_ft", by === "meter" ? "meter_percent" : "pitot_psi"];
  const parts = names.map((name) => `${words.accuracy[name]} ${shown(data.accuracy[name].kind, record.accuracy[name] || data.accuracy[name].text)} ${u[`u_${data.accuracy[name].kind}`]}`);
  return fill(words.run.errors, { parts: parts.join(", ") });
}
