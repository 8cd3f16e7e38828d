// What is due as a calendar file: one all-day event a row (iCalendar, RFC 5545: lines end in CR LF and fold at 75 bytes).
import { safe } from "../rig/carry.js";
import { two } from "../shared/times.js";

const FOLD = 73;

const escaped = (text) => text.replaceAll("\\", "\\\\").replaceAll(";", "\\;").replaceAll(",", "\\,").replaceAll("\n", "\\n");

// A line in parts of at most 73 bytes, each but the first after a space; no letter is cut in two.
function folded(line) {
  const parts = [""];
  let bytes = 0;
  for (const letter of line) {
    const size = new TextEncoder().encode(letter).length;
    if (bytes + size > FOLD) {
      parts.push("");
      bytes = 0;
    }
    parts[parts.length - 1] += letter;
    bytes += size;
  }
  return parts.join("\r\n ");
}

export function calendarOf(rows, { rig, nameOf, words }) {
  const stamp = new Date().toISOString().replaceAll(/[-:]|\.\d+/g, "");
  const events = rows.flatMap(({ id, due_date: [year, month, day] }) => [
    "BEGIN:VEVENT", `UID:${id}-${rig.id}@bay`, `DTSTAMP:${stamp}`, `DTSTART;VALUE=DATE:${year}${two(month)}${two(day)}`,
    `SUMMARY:${escaped(`${rig.name}: ${nameOf(id)}`)}`, "BEGIN:VALARM", "ACTION:DISPLAY", "TRIGGER:-P7D", `DESCRIPTION:${escaped(nameOf(id))}`, "END:VALARM", "END:VEVENT",
  ]);
  const lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//bay//due//EN", `X-WR-CALNAME:${escaped(`${rig.name}: ${words.due.title}`)}`, ...events, "END:VCALENDAR"];
  return new File([`${lines.map(folded).join("\r\n")}\r\n`], `${safe(rig.name)}-due.ics`, { type: "text/calendar" });
}
