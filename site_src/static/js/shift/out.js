// A rig that moved is out of service on every card: another one does not begin without a second, deliberate touch.
import { keep, kept } from "../shared/store.js";
import { tagOf } from "./tagged.js";

const PASSED = "out:passed"; // the stops that were said to be a drill's or another rig's

const mayBeSame = (stopped, rig) => !stopped || !rig || stopped.id === rig.id;

// Where a rig that moved was stopped, this card apart: { mark, title, address, at_ms }; null where it was nowhere.
export async function outElsewhere({ titles, own = null, rig }) {
  const passed = (await kept(PASSED)) ?? [];
  for (const [id, title] of Object.entries(titles)) {
    if (id === own) continue;
    const left = await kept(`shift:${id}`);
    const { stopped, offer } = left?.state ?? {};
    if (!left?.run || !offer?.is_out || stopped.reason !== "danger" || !mayBeSame(left.run.rig, rig)) continue;
    const mark = `${left.run.id} ${stopped.at_s}`;
    if (passed.includes(mark) || (await tagOf(left.run, stopped))?.isOpen === false) continue; // released
    return { mark, title, address: `shift/${id}/`, at_ms: stopped.at_s * 1000 };
  }
  return null;
}

export const pass = async ({ mark }) => keep(PASSED, [...((await kept(PASSED)) ?? []), mark]);
