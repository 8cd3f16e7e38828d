// This phone, checked: printed examples worked out on it, and what it holds. All of it can be handed on as text.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { handOn } from "../shared/address.js";
import { calc } from "../shared/engine.js";
import { hasThreads } from "../shared/engine_thread.js";
import { fold } from "../shared/fold.js";
import { watchHoldings } from "../shared/offline.js";
import { eraseAll } from "../shared/erase.js";
import { showStatus } from "../shared/rig_status.js";
import { decimals, fill, pageData } from "../shared/site.js";
import { megabytes } from "../shared/readiness.js";
import { SecondTouch } from "../shared/second_touch.js";
import { chosenSystem } from "../rig/chosen.js";
import { askToPersist, tellAside } from "../shared/store.js";
import { aheadMin, dateField, two } from "../shared/times.js";

const HUNDREDTH_PERCENT = 1e-4;
const MINUTES = 60; // of an hour
const place = document.getElementById("phone");
const { examples, words: { phone: words, topic: topics, units } } = await pageData();

/** @type {{ holdings: any, entries: string, room: { usage?: number, quota?: number }, topics: any[] | null, hasEnded: boolean, ms: number, became: string, erased: string }} */
const page = { holdings: null, entries: "", room: {}, topics: null, hasEnded: false, ms: 0, became: "", erased: "" };

// The time as this phone has it, with how far it is from universal time: 2026-11-29 14:05:10, UTC-06:00.
function clock() {
  const [now, ahead] = [new Date(), aheadMin()];
  const offset = `${ahead < 0 ? "-" : "+"}${two(Math.floor(Math.abs(ahead) / MINUTES))}:${two(Math.abs(ahead) % MINUTES)}`;
  return `${dateField(now)} ${[now.getHours(), now.getMinutes(), now.getSeconds()].map(two).join(":")}, UTC${offset}`;
}

// What this phone holds and is, as [name, text].
function facts() {
  const { holdings: held, room } = page;
  return [
    [words.version, held?.version ? fill(words.version_of, held) : words.version_none],
    [words.files, held?.want ? fill(words.files_of, held) : words.files_none],
    [words.entries, words[page.entries] ?? ""],
    ...(room.quota ? [[words.room, fill(words.room_of, { used: megabytes(room.usage), quota: megabytes(room.quota) })]] : []),
    ...(page.topics ? [[words.engine, fill(hasThreads() ? words.thread : words.here, { ms: page.ms })]] : []),
    [words.clock, `${clock()}. ${words.clock_told}`],
    [words.screen, fill(words.screen_of, { width: innerWidth, height: innerHeight })],
    [words.language, `${document.documentElement.lang}, ${units[chosenSystem(units)]}`],
    [words.browser, navigator.userAgent],
  ];
}

function deviation(share) {
  if (share === null) return words.failed;
  return share < HUNDREDTH_PERCENT ? words.slight : fill(words.off, { deviation: `${decimals(share * 100, 2)}\u00a0%` });
}
const results = () => (page.topics ?? []).map((row) => [topics[row.topic], `${fill(words.topic_of, row)}, ${deviation(row.worst)}`]);
const agreeing = () => (page.topics ?? []).reduce((sum, { agree }) => sum + agree, 0);
const verdict = () => fill(agreeing() === examples.length ? words.agree : words.differ, { count: examples.length });

const asText = () => [
  words.title, page.topics ? `${agreeing()} ${verdict()}` : words.ended, "", ...[...facts(), ...results()].map(([name, text]) => `${name}: ${text}`),
].join("\n");

async function share() {
  const became = await handOn({ text: asText() });
  page.became = { copied: words.copied, unsent: words.unshared }[became] ?? "";
  draw();
}

async function erase() {
  try {
    await eraseAll();
    showStatus(); // of a rig that is gone
    page.erased = words.erased;
  } catch {
    page.erased = words.unerased;
  }
  draw();
}

const list = (rows) => html`<dl class="facts">${rows.map(([name, text]) => html`<div><dt>${name}</dt><dd>${text}</dd></div>`)}</dl>`;

function answer() {
  if (page.hasEnded) return html`<p class="notice" role="alert">${words.ended}</p>`;
  if (!page.topics) return html`<p role="status">${fill(words.working, { count: examples.length })}</p>`;
  const isRight = agreeing() === examples.length;
  return html`
    <section class="answer answer-still" role="status" data-level=${isRight ? nothing : "stop"}>
      <output class="answer-figure"><b>${agreeing()}</b></output>
      <p class=${isRight ? "answer-sum" : "notice"}>${verdict()}</p>
    </section>`;
}

function draw() {
  render(html`
    <p>${fill(words.told, { count: examples.length })}</p>
    ${answer()}
    <h2>${words.holds}</h2>
    ${list(facts())}
    <button type="button" class="key key-act" @click=${share}>${words.share}</button>
    <p role="status">${page.became}</p>
    ${page.topics ? html`<h2>${words.by_topic}</h2><p>${words.rounding}</p>${list(results())}` : nothing}
    ${fold({ name: "text", kind: "section", summary: words.text, redraw: draw }, () => html`<pre class="as-text">${asText()}</pre>`)}
    <h2>${words.give_away}</h2>
    <p>${words.erase_told}</p>
    <button type="button" class="key key-wide key-trouble" @click=${() => second.touch(erase)}>${second.isAsked ? words.sure : words.erase}</button>
    <p role="status">${page.erased}</p>`, place);
}

const second = new SecondTouch(draw);
watchHoldings((held) => {
  page.holdings = held;
  draw();
});
draw();
tellAside();
[page.entries, page.room] = await Promise.all([askToPersist(), navigator.storage?.estimate?.() ?? {}]);
const began = performance.now();
try {
  page.topics = (await calc.ask("examples.compared", { examples })).topics;
} catch {
  page.hasEnded = true; // guard.js has said why
}
page.ms = Math.round(performance.now() - began);
draw();
