// A run's outcome and entries in words, whichever page wrote them.

export const outcomeWords = ({ outcome }, log) => log.outcome[outcome] ?? String(outcome ?? "");

// A card names its `event`, a diagnosis what was `said` of a sign.
export const eventWords = ({ event, said }, log) => (event ?? said ? log.event[event ?? said] ?? String(event ?? said) : "");

export const toldWords = ({ told, text, answer }) => [told ?? text, answer].filter(Boolean).join(": ");

export const entryWords = (entry, log) => [eventWords(entry, log), toldWords(entry)].filter(Boolean).join(": ");
