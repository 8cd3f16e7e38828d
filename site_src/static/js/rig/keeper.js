// Keeps profiles in the database as they are typed, and in step with other tabs: a change made elsewhere is never
// overwritten unseen.
import { changeRig, keptRigs } from "../shared/store.js";
import { note, noted, same, strike } from "./noted.js";

const channel = "BroadcastChannel" in window ? new BroadcastChannel("rigs") : null;

export class Keeper {
  // `changed(reason)` is called after anything here changed: "kept", "conflict", "elsewhere" or "unkept".
  constructor(changed) {
    this.profiles = new Map();
    this.changed = changed;
    channel?.addEventListener("message", ({ data }) => this.#reread(data));
  }

  async load() {
    for (const profile of await keptRigs()) this.profiles.set(profile.id, profile);
    for (const { id, key, value, base } of noted()) {
      if (same(this.profiles.get(id)?.[key], base)) await this.set(id, key, value);
      else strike(id, key, value);
    }
  }

  get all() {
    return [...this.profiles.values()].sort((one, other) => one.name.localeCompare(other.name));
  }

  // Change one top-level field of a profile. It is written only where the kept value is still the one seen here.
  async set(id, key, value) {
    const seen = this.profiles.get(id);
    const base = seen[key];
    this.profiles.set(id, { ...seen, [key]: value });
    note(id, key, value, base);
    let isConflict = false;
    const isWritten = await this.#write(id, (kept) => {
      if (kept && !same(kept[key], base)) {
        isConflict = true;
        return kept;
      }
      return { ...(kept ?? seen), [key]: value };
    });
    if (isWritten) strike(id, key, value); // else the note is all there is: the next page that opens tries again
    if (isConflict) await this.#reread(id, "conflict");
  }

  // Keep a whole profile as it is: a new one, a copy, one that was brought in.
  async put(profile) {
    this.profiles.set(profile.id, profile);
    await this.#write(profile.id, () => profile);
  }

  async remove(id) {
    this.profiles.delete(id);
    await this.#write(id, () => null);
  }

  // Resolves to whether the database has it.
  async #write(id, change) {
    try {
      await changeRig(id, change);
      channel?.postMessage(id);
      this.changed("kept");
      return true;
    } catch {
      this.changed("unkept");
      return false;
    }
  }

  async #reread(id, reason = "elsewhere") {
    const profile = (await keptRigs()).find((each) => each.id === id);
    const before = this.profiles.get(id);
    if (profile) this.profiles.set(id, profile);
    else this.profiles.delete(id);
    if (reason === "conflict" || !same(before, profile)) this.changed(reason, id);
  }
}
