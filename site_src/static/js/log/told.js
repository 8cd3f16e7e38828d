// A run's outcome and entries in words, whichever page wrote them.

export const outcomeWords = ({ outcome }, log) => log.outcome[outcome] ?? String(outcome ?? "");

export const eventWords = ({ event }, log) => (event ? log.event[event] ?? String(event) : "");

// What an entry says beside its event: the words it carries, or else every value in it.
export const toldWords = ({ at, event, step, told, answer, ...rest }) =>
  [told, answer, ...Object.values(rest).filter((value) => typeof value !== "object")].filter(Boolean).join(": ");

export const entryWords = (entry, log) => [eventWords(entry, log), toldWords(entry)].filter(Boolean).join(": ");
