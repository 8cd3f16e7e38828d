// A rig's log in the bay: records that are only added, whoever adds them on whichever phone. calc.bay says what they come to.
import { chosen } from "../shared/choices.js";
import { calc } from "../shared/engine.js";
import { mark } from "../shared/mark.js";
import { jotDue, jotStatus } from "../shared/rig_status.js";
import { keepRecord, keptRecords } from "../shared/store.js";
import { aheadMin } from "../shared/times.js";
import { isOfKind } from "../shared/unreadable.js";
import { isWhole } from "./agreed.js";

const OF_STATUS = new Set(["defect", "decision", "repair", "release", "withdrawn"]);

export const YOUR_NAME = "bay-name";
export const yourName = () => chosen(YOUR_NAME, "");

// Whether a rig may be driven for a check: as a whole out of service it may once that is repaired, for a road test may show it.
export const isDriven = (defects) => !defects.some(({ state, repaired_by: by }) => state === "out_of_service" && by === null);

export class Log {
  // rig: its profile; text: the words of items, as the page has them
  constructor(rig, records, text = {}) {
    this.rig = rig;
    this.records = records;
    this.text = text;
  }

  static async open(rig, text = {}) {
    const fields = await calc.ask("records.fields", {});
    const concerns = (record) => record?.rig_id === rig.id || typeof record?.rig_id !== "string"; // of a spoiled one nobody knows
    return new Log(rig, await keptRecords("bay", { concerns, fits: (record) => isOfKind(record, fields) }), text);
  }

  // Add a record; resolves to it once it is noted. It is written ahead: a page may go at once.
  async add(kind, body, { replaces = [], by = yourName() } = {}) {
    const record = { id: mark(), rig_id: this.rig.id, rig_name: this.rig.name, at_ms: Date.now(), by, kind, replaces, ...body };
    this.records = [...this.records, record];
    await keepRecord("bay", record);
    return record;
  }

  of = (...kinds) => this.records.filter(({ kind }) => kinds.includes(kind)).map(this.named);

  // A defect by its item's name in the page's language, whichever it was written in; what leaves the phone keeps its own.
  named = (record) => (record.what && this.text[record.item] ? { ...record, what: this.text[record.item].title } : record);

  // The log as it was, by the clocks of the phones that wrote it.
  until = (at_ms) => new Log(this.rig, this.records.filter((record) => record.at_ms <= at_ms), this.text);

  // The rig's status from the log.
  async stands() {
    const standing = await calc.ask("standing.of_rig", { records: this.records.filter(({ kind }) => OF_STATUS.has(kind)) });
    return { ...standing, defects: standing.defects.map(this.named) };
  }

  // The same, also jotted down for every other page.
  async standing() {
    const standing = await this.stands();
    jotStatus(this.rig.id, standing);
    return standing;
  }

  // Where each of some rows of the due board stands now.
  #due(rows) {
    const asked = rows.map(({ equipment: _, ...row }) => row);
    return calc.ask("board.due", { rows: asked, records: this.#ofDue(asked), on_ms: Date.now(), offset_min: aheadMin() });
  }

  // The due board of all that this rig has, also jotted down for the start page.
  async board({ due }) {
    const settings = await this.settings();
    const rows = due.filter(({ id, equipment }) => settings[id]?.applies !== false && settings[equipment]?.applies !== false);
    const board = await this.#due(rows);
    jotDue(this.rig.id, board.rows);
    return board;
  }

  // What the due board is worked out from: of the answers, only the newest good one of each item that a row goes by.
  #ofDue(rows) {
    const items = new Set(rows.flatMap(({ by }) => by));
    const newest = new Map();
    for (const record of this.of("answer")) {
      if (isWhole(record) && items.has(record.item) && !(newest.get(record.item)?.at_ms >= record.at_ms)) newest.set(record.item, record);
    }
    return [...this.of("round", "ended", "done", "meters", "withdrawn"), ...newest.values()];
  }

  settings = () => calc.ask("rounds.settings", { records: this.of("setting", "withdrawn") });

  // Set an item, or what it needs, for this rig, in place of what was set before.
  async set(item, { applies = true, reason = "", limit = null }) {
    const before = (await this.settings())[item];
    return this.add("setting", { item, applies, reason, limit }, { replaces: before?.ids ?? [] });
  }

  // What is known of a check: its begin, its answers and its end.
  progress(id) {
    const records = this.records.filter((record) => record.id === id || record.round === id || record.kind === "withdrawn");
    return calc.ask("rounds.progress", { records, id });
  }

  // The check of a list that was begun and not ended, newest first.
  openRound(list) {
    const ended = new Set(this.of("ended").map(({ round }) => round));
    return this.of("round").filter((record) => record.list === list && !ended.has(record.id)).sort((one, other) => other.at_ms - one.at_ms)[0] ?? null;
  }

  // Readings of an item before, for calc.bay.limits.
  readings = (item, round) => this.of("answer").filter((record) => record.item === item && record.amount !== null && record.round !== round)
    .map(({ at_ms, amount }) => ({ at_ms, amount }));
}
