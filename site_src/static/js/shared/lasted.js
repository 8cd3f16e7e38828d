// How long a run of the log lasted, in words: the one way to say a length of time.
import { fill } from "./site.js";

// `took_s` is a run's own count, where it kept one; else it lasted from its beginning to its end.
export function lasted({ took_s = null, began_at = null, ended_at = null }, { lasted: told }) {
  const whole = Math.floor(took_s ?? (new Date(ended_at).getTime() - new Date(began_at).getTime()) / 1000);
  const parts = { h: Math.floor(whole / 3600), min: Math.floor(whole / 60) % 60, s: whole % 60 };
  return fill(parts.h ? told.hours : whole >= 60 ? told.minutes : told.seconds, parts);
}
