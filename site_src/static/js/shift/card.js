// A card in hand: its run, its log and its draft. calc.shift says what may be done; what is touched is put to it in turn.
import { newRun, noted, placed } from "./diary.js";
import { inWords, known, mayFit, unlike } from "./known.js";
import { Presence } from "./presence.js";
import { tagOf } from "./tagged.js";
import { tag, takeBack } from "./tagging.js";
import { calc, Refusal } from "../shared/engine.js";
import { isSettled } from "../shared/second_touch.js";
import { stopsPump } from "../shared/rig_status.js";
import { fill } from "../shared/site.js";
import { keep, kept } from "../shared/store.js";

const TICK_MS = 200;
const SETTLING = new Set(["seen", "not_seen", "report", "hold", "back"]);
const RENEWS = new Set(["begin_again", "released"]);
const ENDS = new Set(["released", "mistouch"]); // what ends a stop that is out of service

const seconds = () => Date.now() / 1000;
const steady = () => performance.now() / 1000; // no clock that can be set counts a pause

export class Card {
  state = null; // see calc.shift.run
  notice = null;
  tag = null; // what the rig's log has of a stop because it moved, see ./tagged.js
  isResumed = false;
  #turn = Promise.resolve();
  #shownAt = -Infinity;
  #isKept = true;
  #isStale = false; // out of service since before the rig or the steps were others

  // shown(event): the card is another, by that event of calc.shift.card; by its clock alone where there is none. over(): a time is over.
  constructor({ data, rig, shown, over }) {
    const { sequence, steps } = data;
    this.data = data;
    this.rig = rig;
    this.sequence = sequence;
    this.shown = shown;
    this.over = over;
    this.draft = `shift:${sequence.id}`;
    this.lengths = Object.fromEntries(Object.entries(steps).map(([id, { length }]) => [id, length]));
    this.presence = new Presence({ look: () => this.#inTurn(() => this.#look()), left: () => this.state?.confirmed.length && this.#save() });
  }

  // One thing after another, each from what the last one left.
  #inTurn(act) {
    this.#turn = this.#turn.then(act);
    return this.#turn;
  }

  // Whether it was left out of service.
  async isOut() {
    const left = await kept(this.draft);
    return Boolean(left?.run && left.state?.offer?.is_out);
  }

  // The card as it was left, if it still fits this version's steps and the rig this phone stands beside.
  open() {
    return this.#inTurn(async () => {
      this.answers = await this.#known();
      this.standing = JSON.stringify([this.rig?.id ?? null, this.answers]); // with another rig, or a profile that says otherwise, a run begins at its first step
      const left = await kept(this.draft);
      const isOut = left?.run && left.state?.offer?.is_out;
      if (!isOut && !mayFit(this.sequence.fits, this.answers)) return this.shown();
      const isOther = Boolean(left?.state) && (left.madeOf !== JSON.stringify(this.sequence) || this.#unlike(left)?.length !== 0 || !left.run);
      if (isOut) return this.#keepHalt(left, isOther);
      if (!left?.state || left.state.status === "done" || isOther) return this.#begin(isOther && left);
      this.#take(left);
      return this.#resume(left.at_s ?? 0);
    });
  }

  #unlike = ({ standing, state }) => unlike(standing, { id: this.rig?.id ?? null, answered: this.answers, told: state.rig });

  // Why a run that was left does not go on, in words: what its steps were for, and what is known now.
  #whyNot(left) {
    const { shift } = this.data.words;
    if (left.madeOf !== JSON.stringify(this.sequence)) return shift.outdated;
    const differs = this.#unlike(left);
    if (!differs) return shift.other_rig;
    const said = (answers) => inWords(Object.fromEntries(Object.entries(answers).filter(([question]) => differs.includes(question))), this.data.words) || shift.not_known;
    return fill(shift.other_profile, { before: said(left.state.rig), now: said(this.answers) });
  }

  // What is known of the rig, as calc.shift.card takes it; a capacity that is no number is not known.
  async #known() {
    const answers = known(this.data.questions, this.rig);
    if (!this.rig?.pump_rated) return answers;
    try {
      return { ...answers, pump_size: await calc.ask("pump_size.size", { rated: this.rig.pump_rated, units: this.data.units }) };
    } catch (refusal) {
      if (!(refusal instanceof Refusal)) throw refusal;
      return answers;
    }
  }

  // A new run. `left` is one that fits no longer: what failed in it still counts, whatever the profile says now.
  async #begin(left) {
    const { sequence: _, ...state } = await calc.ask("shift.start", { rig: this.answers }, { sequence: this.sequence });
    const lost = left && left.state.status !== "done" ? left.state : null;
    const [before] = JSON.parse(left?.standing ?? "[null]");
    const mayBeSame = !before || !this.rig || before === this.rig.id;
    this.state = lost?.repeats > 0 && mayBeSame ? { ...state, repeats: lost.repeats } : state;
    this.log = this.#newLog();
    if (lost?.confirmed?.length > 0) this.notice = this.#whyNot(left);
    this.#save();
    this.shown();
  }

  #newLog = () => newRun(this.data.titles[this.sequence.id], this.rig);

  // Older versions kept the sequence within the state.
  #take(left) {
    const { sequence, ...state } = left.state;
    if (left.madeOf !== JSON.stringify(this.sequence)) this.sequence = sequence ?? JSON.parse(left.madeOf);
    Object.assign(this, { state, log: left.run });
    this.left = JSON.stringify(left);
  }

  // Out of service outlasts an edited profile, another rig chosen and new steps: a technician's release alone ends it.
  async #keepHalt(left, isOther) {
    this.#take(left);
    this.#isStale = isOther;
    const { stopped } = this.state;
    this.tag = (await tagOf(this.log, stopped)) ?? (await tag(this.log, stopped, this.data)); // a phone that died at the stop may not have written it
    await this.#resume(left.at_s ?? 0);
    this.notice = isOther ? this.data.words.shift.still_out : null;
    this.shown();
  }

  // In sight again: what may have changed unseen is asked for once more.
  #resume(left_s) {
    const { status, confirmed } = this.state;
    if (status === "done" || status === "running" && confirmed.length === 0) return this.shown();
    return this.#put({ kind: "resume", left_s });
  }

  // Whether the card is in sight and was all the time. Where another tab went on with it meanwhile, this one goes on from there.
  async #look() {
    if (document.hidden) return false;
    const left_s = await this.presence.left_s();
    if (left_s === null) return true;
    if (!this.state) return false;
    const left = this.left && this.#isKept ? await kept(this.draft) : null;
    if (left && JSON.stringify(left) !== this.left) location.reload();
    else await this.#resume(left_s);
    return false;
  }

  // A stop that no rig's log has was the chosen one's: its log has it from now on, and ends it.
  own() {
    this.#inTurn(async () => {
      const { id, name } = this.rig;
      this.log = placed(this.log, { rig: { id, name } });
      this.#save();
      this.#tagged(await tag(this.log, this.state.stopped, this.data));
    });
  }

  // Put an event to the card; nobody looked until now where the card was out of sight, and the touch is then no answer.
  send(event) {
    const touchedAt = performance.now();
    const isMeant = () => !SETTLING.has(event.kind) || isSettled(this.#shownAt, touchedAt);
    this.#inTurn(async () => isMeant() && await this.#look() && this.#put(event));
  }

  // Say where the run is, or that it is training; see ../log/place.js.
  place(part) {
    this.#inTurn(() => {
      this.log = placed(this.log, part);
      this.#save();
      this.shown();
    });
  }

  // What calc refuses leaves the card as it was.
  async #put(event) {
    const { state: before, log: ended } = this;
    const { words } = this.data;
    this.notice = null;
    try {
      this.state = await calc.ask("run.advance", { run: before, event: { at_s: event.kind === "hold" ? steady() : seconds(), ...event } },
        { sequence: this.sequence, lengths: this.lengths });
    } catch (refusal) {
      if (!(refusal instanceof Refusal)) throw refusal;
      this.notice = words.shift.refused;
    }
    const { confirmed, status } = this.state;
    const isResume = event.kind === "resume";
    this.isResumed = isResume && confirmed.length > 0;
    if (!this.notice && status === "running" && confirmed.length === 0 && (RENEWS.has(event.kind) || before.confirmed.length > 0 && (isResume || event.kind === "mistouch"))) {
      this.log = this.#newLog();
      this.notice = isResume ? words.shift.left_new : null;
    } else if (!this.notice) this.#note(event, before);
    const saving = this.#save();
    const tagging = before.stopped?.reason === "danger" ? null : tag(this.log, this.state.stopped, this.data);
    if (!this.notice && ENDS.has(event.kind) && before.offer.is_out) {
      this.tag = null;
      if (event.kind === "mistouch") await takeBack(ended, before.stopped, words);
      // the rig is another than at the stop, or its pump is out of service for something else
      if (this.#isStale || this.data.into_pump && stopsPump(this.rig)) return saving.then(() => location.reload());
    }
    this.shown(event);
    this.#shownAt = performance.now();
    this.#time();
    this.#tagged(await tagging);
  }

  #tagged(written) {
    if (!written) return;
    this.tag = written;
    this.shown();
  }

  // The clock of a pause, while there is one.
  #time() {
    clearTimeout(this.timer);
    const { holding, hold_left_s } = this.state.offer;
    if (holding && hold_left_s > 0) this.timer = setTimeout(() => this.#inTurn(() => this.#tick()), TICK_MS);
  }

  async #tick() {
    const { hold, offer } = this.state;
    if (!offer.holding || offer.hold_left_s === 0) return;
    const at_s = steady();
    const after = await calc.ask("pause.ticked", { kind: offer.kind, whole_s: offer.whole_s, hold, at_s });
    const isOver = after.hold_left_s === 0;
    if (isOver) this.over();
    if (isOver && offer.kind === "limit") return this.#put({ kind: "tick", at_s });
    this.state = { ...this.state, hold: after.hold, offer: { ...offer, hold_left_s: after.hold_left_s } };
    this.shown();
    this.#time();
  }

  // One line of the log: what was touched, at which step.
  #note({ kind, step, hazard, answer }, before) {
    const { orders, steps } = this.data;
    const { status, stopped, unseen } = this.state;
    const id = kind === "start_over" ? null : step ?? before.offer.step ?? before.stopped?.step;
    const told = hazard ? orders[hazard].title : steps[id]?.act ?? "";
    const line = { event: kind === "tick" ? "time_up" : kind, step: id, told, ...(answer && { answer: steps[id].answer[answer] }) };
    this.log = noted(this.log, line, stopped?.reason ?? status, unseen);
    const hurried = before.status !== "done" && this.hurried;
    if (hurried) this.log = noted(this.log, { event: "hurried", step: null, told: [hurried.told, ...hurried.steps].join(" ") }, status, unseen);
  }

  // What a run says whose steps were answered faster than they can be read, and which; null where none was.
  get hurried() {
    const { quick, confirmed } = this.state;
    const { words, steps } = this.data;
    return quick?.length ? { told: fill(words.shift.hurried, { count: quick.length, of: confirmed.length }), steps: quick.map((id) => steps[id].act) } : null;
  }

  #save() {
    const left = { state: this.state, madeOf: JSON.stringify(this.sequence), run: this.log, standing: this.#isStale ? null : this.standing, at_s: seconds() };
    this.left = JSON.stringify(left);
    return keep(this.draft, left).then((kept) => {
      this.#isKept = kept !== "unkept";
    });
  }
}
