// Keeps profiles as they are typed, and in step with other tabs: a change made elsewhere is never overwritten unseen.
import { same } from "../shared/notes.js";
import { dropRecord, keepField, keepRecord, keptRecords } from "../shared/store.js";

const channel = "BroadcastChannel" in window ? new BroadcastChannel("rigs") : null;

export class Keeper {
  // `changed(reason, id)` is called after another tab's change came here: "conflict" where it took the place of one made
  // here, or "elsewhere".
  constructor(changed) {
    this.profiles = new Map();
    this.changed = changed;
    channel?.addEventListener("message", ({ data }) => this.#reread(data));
  }

  async load() {
    for (const profile of await keptRecords("rigs")) this.profiles.set(profile.id, profile);
  }

  get all() {
    return [...this.profiles.values()].sort((one, other) => one.name.localeCompare(other.name));
  }

  // Change one top-level field of a profile. It is written only where the kept value is still the one seen here.
  async set(id, key, value) {
    const seen = this.profiles.get(id);
    this.profiles.set(id, { ...seen, [key]: value });
    const state = await keepField("rigs", seen, key, value);
    if (state === "conflict") await this.#reread(id, state);
    else channel?.postMessage(id);
  }

  // Keep a whole profile as it is: a new one, a copy, one that was brought in.
  async put(profile) {
    this.profiles.set(profile.id, profile);
    await keepRecord("rigs", profile);
    channel?.postMessage(profile.id);
  }

  // Resolves to whether it is gone.
  async remove(id) {
    const isGone = await dropRecord("rigs", id);
    if (isGone) this.profiles.delete(id);
    channel?.postMessage(id);
    return isGone;
  }

  async #reread(id, reason = "elsewhere") {
    const profile = (await keptRecords("rigs")).find((each) => each.id === id);
    const before = this.profiles.get(id);
    if (profile) this.profiles.set(id, profile);
    else this.profiles.delete(id);
    if (reason === "conflict" || !same(before, profile)) this.changed(reason, id);
  }
}
