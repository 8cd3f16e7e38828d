// The tips a run flows through: those chosen, or else the best of those at hand; none where flow is metered.
import { testOf } from "./record.js";

export const tipOf = (option, { conditions }) => ({ tip_in: conditions.tips_in[option.place], count: option.count });

export const tipStanding = (test, record) =>
  testOf(record, test.id).draft?.tip ?? (test.tips?.length && record.conditions.flow_by !== "meter" ? tipOf(test.tips[0], record) : null);

// The row of the plan for those tips, with what the pitot shows there.
export function optionOf(test, record) {
  const tip = tipStanding(test, record);
  return test.tips.find((each) => tip && each.count === tip.count && record.conditions.tips_in[each.place] === tip.tip_in);
}

// A tip by the name and in the unit it was chosen under, such as "2 1/4 in", whatever units the page shows.
export function tipName(tip_in, { data, words }) {
  const [amount, system] = tip_in.split("@");
  const name = data.tips.find(({ id }) => id === tip_in)?.chip ?? amount;
  return `${name} ${words.unit[system]?.diameter ?? ""}`.trim().replaceAll(" ", "\u00a0");
}
