// A mark of one's own for a new record. Over plain HTTP a browser has no randomUUID.
export const mark = () => crypto.randomUUID?.() ?? `${Date.now()}-${Math.random()}`;
