// The log of one run of a card: written at every touch, so that a run that was left is in it too.
import { keepPart } from "../shared/store.js";

export const newRun = (title, rig) => ({
  id: `${new Date().toISOString()}-${crypto.getRandomValues(new Uint32Array(1))[0].toString(36)}`,
  kind: "card",
  title,
  rig: rig && { id: rig.id, name: rig.name },
  began_at: null,
  ended_at: null,
  outcome: "open",
  entries: [],
});

// A run with one more entry, also written in the log, whole each time: what was refused once is there with the next. Who and notes are the Log page's, and stay as it left them.
// unseen: it was answered faster than it can be read, so far.
export function noted(run, entry, outcome, unseen) {
  const at = new Date().toISOString();
  const longer = { ...run, began_at: run.began_at ?? at, ended_at: at, outcome, unseen, entries: [...run.entries, { at, ...entry }] };
  keepPart("log", longer);
  return longer;
}

// A run of which is said where it is, or that it is training; in the log from its first touch on.
export function placed(run, part) {
  const said = { ...run, ...part };
  if (said.began_at) keepPart("log", said);
  return said;
}
