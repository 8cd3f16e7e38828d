// What is over, as the log has it: how a defect ended, a check and a release as they were written.
import { fill } from "../shared/site.js";
import { dayAndTime } from "../shared/times.js";
import { limitsOf } from "./paper_check.js";
import { classOf, proofName } from "./sentences.js";

const newest = (records) => records.sort((one, other) => other.at_ms - one.at_ms)[0] ?? null;

// The record that closed a defect, and the defect as it stood until then; null where the log has none.
export async function endOf(defect, log) {
  const record = newest(log.of("release", "withdrawn").filter(({ defects, replaces }) => (defects ?? replaces).includes(defect.id)));
  if (!record) return null;
  const { defects } = await log.until(record.at_ms - 1).stands();
  return { record, stood: defects.find(({ id }) => id === defect.id) ?? null };
}

export const closedText = (end, words) => (end?.stood ? fill(words.defect.was, { rank: classOf(end.stood, words) }) : words.defect.closed);

export const endText = ({ record }) => [record.by, dayAndTime(record.at_ms), record.reason].filter(Boolean).join(", ");

// A check, with the rig's own limits and open defects of its day, for checkSheet.
export async function pastCheck(page, round) {
  const of = page.log.of("answer", "ended").filter((record) => record.round === round.id);
  const log = page.log.until(Math.max(round.at_ms, ...of.map(({ at_ms: at }) => at)));
  const [{ answers }, settings, { defects }, { defects: defectsAtEnd }] = await Promise.all([log.progress(round.id), log.settings(), log.until(round.at_ms).stands(), log.stands()]);
  const past = { ...page, log, round, list: round.list, items: round.items, answers, settings, defects, defectsAtEnd, leftOut: [], isPast: true };
  return { ...past, limits: await limitsOf(past), isEnded: of.some(({ kind }) => kind === "ended") };
}

// A release, with the repair it was written with, as the three arguments of releaseSheet.
export async function pastRelease(page, release) {
  const log = page.log.until(release.at_ms);
  const repair = newest(log.of("repair").filter(({ by, defects }) => by === release.repaired_by && defects.some((id) => release.defects.includes(id))));
  const past = { ...page, log, defects: log.of("defect").filter(({ id }) => release.defects.includes(id)) };
  return [past, { done: "", parts: "", hours: "", ...repair, ...release }, { standing: await log.stands(), proofNames: release.proofs.map((id) => ({ name: proofName(id, page), isOn: true })) }];
}
