// The part of the Rig page that sends rigs away and lets them in.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { partOf } from "../shared/entries.js";
import { beside } from "../shared/notice.js";
import { fill, root } from "../shared/site.js";
import { fileOf, linkOf, profilesOf, read, textOf } from "./carry.js";
import { send } from "../shared/send.js";
import { codeView, fitsCode } from "../shared/code.js";
import { copyOf, freeName, plainName } from "./profile.js";

export class Travel {
  offered = null;
  at = "top";
  code = null;
  notice = null;

  // judge(profile, parts) -> what calc says of it, sentence(problem, profile) in words; keeper keeps what is taken; taken(profile) is
  // called for each. What is offered is { profile, figures } each.
  constructor({ words, judge, sentence, keeper, taken, redraw, said }) {
    this.words = words;
    this.judge = judge;
    this.sentence = sentence;
    this.keeper = keeper;
    this.taken = taken;
    this.redraw = redraw;
    this.said = said;
  }

  // What is said, beside the key that was pressed: "link", "code", "file", or "top" for what a link brought.
  say(at, text) {
    this.notice = text && { at, text };
    this.redraw();
    this.said();
  }

  // Let a text in: offers its rigs to be taken, or says what is wrong. Nothing kept is touched.
  async offer(text, at) {
    try {
      this.offered = await profilesOf(text, this.#figured);
      this.at = at;
      this.say(at, null);
    } catch (fault) {
      if (!("reason" in fault)) throw fault;
      this.refuse(at, fault.reason, fault.facts);
    }
  }

  // The same as the page's units have changed.
  async judgeOffered() {
    if (!this.offered) return;
    const judged = await Promise.all(this.offered.map(({ profile }) => this.#figured(profile)));
    this.offered = this.offered.map(({ profile }, place) => ({ profile, figures: judged[place].figures }));
  }

  // A rig with its hose figures, and the one it would replace read in the same units.
  #figured = async (profile) => {
    const before = this.inPlaceOf(profile);
    if (before) await this.judge(before, {});
    return this.judge(profile, { figures: true });
  };

  refuse(at, reason, facts = {}) {
    const { carry } = this.words;
    const told = reason === "refused_field" ? this.sentence(facts, facts.profile) : fill(carry[reason], facts);
    this.offered = null;
    this.say(at, fill(carry.refused, { reason: told }));
  }

  async fromLink(fragment) {
    try {
      const text = await textOf(fragment);
      if (text !== null) await this.offer(text, "top");
    } catch {
      this.refuse("top", "refused_json");
    }
  }

  async fromFile(file) {
    try {
      await this.offer(await read(await partOf(file, "rigs")), "file");
    } catch (fault) {
      if (!(fault instanceof RangeError)) throw fault;
      this.refuse("file", "refused_large");
    }
  }

  // The rig on this phone whose place a rig would take: the same one, or another of its name. Undefined where there is none.
  inPlaceOf({ id, name }) {
    return this.keeper.profiles.get(id) ?? this.keeper.all.find((rig) => plainName(rig.name) === plainName(name));
  }

  async take(asCopy) {
    const { words, offered } = this;
    this.offered = null;
    for (const { profile } of offered) {
      const before = this.inPlaceOf(profile);
      const own = asCopy && before ? copyOf(profile, freeName(fill(words.rig.copy_name, profile), this.keeper.all)) : profile;
      if (before && !asCopy && before.id !== profile.id) await this.keeper.remove(before.id);
      await this.keeper.put(own);
      this.taken(own);
    }
    this.say(this.at, fill(words.carry.taken, { name: names(offered) }));
  }

  async showCode(profile) {
    const link = await linkOf(profile, root);
    this.code = fitsCode(link) ? { link, name: profile.name } : null;
    this.say("code", this.code ? null : this.words.carry.code_large);
  }

  async copyLink(profile) {
    await navigator.clipboard.writeText(await linkOf(profile, root));
    this.say("link", this.words.carry.copied);
  }
}

export const names = (offered) => offered.map(({ profile }) => profile.name).join(", ");

export function travelView(travel, chosen) {
  const { words, code } = travel;
  return html`
    <div class="rows">
      ${chosen ? html`
        <button type="button" class="key key-wide" @click=${() => send(fileOf([chosen], chosen.name))}>${words.carry.file}</button>
        <button type="button" class="key key-wide" @click=${() => travel.showCode(chosen)}>${words.carry.code}</button>
        ${beside(travel.notice, "code", words.rig)}
        <button type="button" class="key key-wide" @click=${() => travel.copyLink(chosen)}>${words.carry.link}</button>
        ${beside(travel.notice, "link", words.rig)}` : nothing}
      ${travel.keeper.profiles.size > 1
        ? html`<button type="button" class="key key-wide" @click=${() => send(fileOf(travel.keeper.all, "rigs"))}>${words.carry.file_all}</button>` : nothing}
      <label class="key key-wide key-file">${words.carry.bring}
        <input type="file" accept=".json,application/json" @change=${(event) => { travel.fromFile(event.target.files[0]); event.target.value = ""; }}>
      </label>
      ${beside(travel.notice, "file", words.rig)}
    </div>
    ${code ? html`${codeView(code.link, fill(words.carry.code_name, code))}<p>${words.carry.code_told}</p>` : nothing}`;
}
