// The sheet of one test: on the screen as it prints, and as files.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { answering } from "../shared/answering.js";
import { calc } from "../shared/engine.js";
import { send } from "../shared/send.js";
import { chosenSystem } from "../rig/chosen.js";
import { PaperSize } from "../shared/paper_size.js";
import { colon, pageData, unitWords } from "../shared/site.js";
import { keepRecord, keptRecords } from "../shared/store.js";
import { kindOf, labelOf } from "../service/entries.js";
import { decide, decidedOn, decisionView, wantsDecision } from "../service/decision.js";
import { csvFile, dated, jsonFile } from "../service/files.js";
import { digestOf, digestsOf } from "../service/digest.js";
import { instrumentsAt } from "../service/instruments.js";
import { missingWord } from "../service/missing.js";
import { causeLink } from "../service/plan_view.js";
import { shownIn } from "../service/shown.js";
import { decidedText } from "../service/sheet_results.js";
import { sheetView } from "../service/sheet_view.js";
import { reopened, withPhotos, withSigned } from "../service/record.js";
import { signView } from "../service/sign_view.js";
import { paintPhotos, photosOf } from "../service/test_photos.js";
import { Steady } from "../service/steady.js";
import { unitsOnce } from "../shared/units.js";

const place = document.getElementById("sheet");
calc.start();
const [data, tests] = await Promise.all([
  pageData(new URL("../", document.baseURI)),
  keptRecords("tests"),
]);
const { words } = data;
const page = { system: chosenSystem(data.systems), form: null, signing: {}, isWriting: false, isChanged: false };
const steady = new Steady(); // keeps time while a test's sheet is looked at
setInterval(() => steady.tick(), 500);

const unitsOf = unitsOnce(data.systems);

// The page's one question: plan and verdict of the test, its curve, and its entries in the page's units.
const asking = answering(async () => {
  const record = tests.find((test) => test.id === location.hash.slice(1));
  if (!record) return {};
  const units = unitsOf(page.system);
  const [answer, shown] = await Promise.all([calc.ask("service.answer", { record }, { units }), shownIn(units, record, data.accuracy)]);
  const earlier = tests.filter((test) => test.rig_id === record.rig_id && test.result && test.finished_ms < record.begun_ms)
    .map((test) => ({ name: dated(test), points: test.result.points }));
  const decided = answer.verdict && wantsDecision(record, answer.verdict) ? await decidedOn(record) : null;
  const standings = await instrumentsAt(record.equipment, record.finished_ms ?? record.begun_ms);
  const digest = await digestOf(record);
  const isRun = answer.plan?.tests.some(({ kind }) => kind === "run");
  const photos = await photosOf(record.id);
  const pictured = await digestsOf(photos);
  return { record, answer, shown, decided, photos, pictured, standings, digest, curve: isRun ? await calc.ask("service.curve", { plan: answer.plan, summary: answer.summary, earlier }, { units }) : null };
}, (arrived) => {
  place.setAttribute("aria-busy", String(arrived === null));
  if (arrived) drawAnswer(arrived);
});
const draw = () => asking.change();
const paperSize = new PaperSize({ kind: "upright", sizes: ["a4", "letter"], words: words.sheet, redraw: asking.redraw });

function drawAnswer({ record, answer, shown, decided, standings, digest, curve, photos, pictured }) {
  if (!record) return render(html`<p class="notice">${words.test.missing_record}</p><div class="dock"><a class="key key-act" href="../">${words.test.all}</a></div>`, place);
  if (!answer.plan) return render(html`<p class="notice">${words.sheet.no_plan}</p>`, place);
  const u = unitWords(words, page.system);
  /** @type {any} */
  const view = { record, data, words, answer, u, shown, curve, standings, digest, photos, pictured, missingWord: (name) => missingWord(name, { words, answer, u }), decision: nothing };
  if (wantsDecision(record, answer.verdict)) {
    page.form ??= { state: null, reason: "", limits: "", by: record.people.tester };
    view.decision = decisionView({ words, form: page.form, decided, write: () => settle(view), change: (part) => { Object.assign(page.form, part); asking.redraw(); } });
  }
  render(html`
    ${sheetView(view)}
    ${page.isChanged ? html`<p class="notice no-print" role="alert">${words.sign_off.elsewhere}</p>` : nothing}
    ${signView({ record, words, form: page.signing, act: signing(record, pictured) })}
    <section class="no-print send"><h2 tabindex="-1">${words.sheet.send}</h2>
      <div class="rows">
        <button type="button" class="key key-wide" @click=${() => send(csvFile({ ...view, labelOf: (name) => labelOf(name, view), kindOf }))}>${words.sheet.csv}</button>
        <button type="button" class="key key-wide" @click=${() => send(jsonFile(record, photos))}>${words.sheet.json}</button>
        ${view.decision === nothing ? nothing : causeLink(view)}
      </div>
      ${paperSize.view()}
    </section>
    <div class="dock sheet-dock"><button type="button" class="key key-act" @click=${() => window.print()}>${words.sheet.print}</button>
      <button type="button" class="key" @click=${toFiles}>${words.sheet.send}</button></div>`, place);
  paintPhotos(place, photos);
}

// The rig's status as the tester decides it, with the parts that failed and the figures that decided them; written once.
async function settle(view) {
  const { record, answer } = view;
  if (page.isWriting) return;
  page.isWriting = true;
  const failed = answer.verdict.tests.filter(({ status }) => status === "fail");
  const figures = failed.map((test) => [words.test_name[test.id], decidedText(view, test)].filter(Boolean).join(`${colon} `));
  await decide(record, page.form, { what: `${words.kind[record.standard.kind]}, ${words.status.fail}${colon} ${failed.map(({ id }) => words.test_name[id]).join(", ")}`, figures: figures.join("; ") });
  await draw();
  page.isWriting = false;
}

// What is typed and drawn of a signature, and what a touch on its keys does: each writes the test once, with the digest of what it says,
// and only over the test that is shown. One that another tab changed meanwhile is shown as it is now, to be looked at first.
function signing(record, pictured) {
  const write = async (from, next) => {
    if (page.isWriting) return false;
    page.isWriting = true;
    const made = next(await digestOf(from));
    const now = (await keptRecords("tests")).find(({ id }) => id === record.id);
    page.isChanged = now?.revision !== record.revision;
    tests.splice(tests.indexOf(record), 1, ...(page.isChanged ? [now].filter(Boolean) : [made]));
    if (!page.isChanged) await keepRecord("tests", made);
    await draw();
    page.isWriting = false;
    return !page.isChanged;
  };
  return {
    change(name, more) {
      page.signing[name] = typeof more === "string" ? more : { ...page.signing[name], ...more };
      asking.redraw();
    },
    async sign(role) {
      const { name = record.people[role], strokes = "" } = page.signing[role] ?? {};
      const signed = withPhotos(record, pictured);
      await write(signed, (digest) => withSigned(signed, { role, name: name.trim(), strokes, digest, wall: Date.now() }));
    },
    async reopen() {
      const { what, why, by } = page.signing;
      if (await write(record, (digest) => reopened(record, { what, why, by, digest, wall: Date.now() }))) location.assign(`../run/#${record.id}`);
    },
  };
}

function toFiles() {
  const heading = /** @type {HTMLElement} */ (place.querySelector(".send h2"));
  heading.scrollIntoView();
  heading.focus({ preventScroll: true });
}

place.replaceChildren();
draw();
addEventListener("hashchange", draw);
