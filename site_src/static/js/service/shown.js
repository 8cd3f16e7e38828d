// Entries as they stand in the page's units, known before the page is drawn: a view looks them up and asks nobody.
import { calc } from "../shared/engine.js";
import { bare, isAsTyped, isEntry } from "../shared/units.js";
import { kindOf } from "./entries.js";

const KINDS = { pump_rated: "flow", tank: "volume", tank_rate: "flow", relief_set: "pressure" }; // of a rig's profile, whose names have no unit
const known = new Map(); // texts by system, kind and entry: none is asked for twice

function* entriesIn(content, name = "") {
  if (typeof content === "string") yield [KINDS[name] ?? kindOf(name), content];
  else if (Array.isArray(content)) for (const part of content) yield* entriesIn(part, name);
  else if (typeof content?.text === "string" && content.kind) yield [content.kind, content.text];
  else if (content) for (const [key, part] of Object.entries(content)) yield* entriesIn(part, key);
}

const keyOf = ({ shown }, kind, text) => `${shown} ${kind} ${text}`;

// For all the entries within plain data: a function of kind and entry to the text that stands for it in these units.
export async function shownIn(units, ...contents) {
  const asked = [...entriesIn(contents)].filter(([kind, text]) => text.includes("@") && isEntry(units.systems, text)
    && !isAsTyped(text, units.shown) && !known.has(keyOf(units, kind, text)));
  if (asked.length) {
    const texts = await calc.ask("entry.all_shown", { entries: asked }, { units });
    asked.forEach(([kind, text], place) => known.set(keyOf(units, kind, text), texts[place]));
  }
  return (kind, text) => (text ? known.get(keyOf(units, kind, text)) ?? bare(text) : "");
}
