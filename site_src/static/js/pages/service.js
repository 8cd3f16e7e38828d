// The tests on this phone: go on with one, begin one for the chosen rig, or look at one that is finished.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { chips } from "../shared/controls.js";
import { notices } from "../shared/notice.js";
import { chosenRig } from "../rig/chosen.js";
import { colon, fill, pageData } from "../shared/site.js";
import { dropRecord, keepRecord, keptRecords } from "../shared/store.js";
import { bring } from "../service/bring.js";
import { bringKey } from "../service/bring_view.js";
import { comparedMs, isRunning, newestFirst, newRecord } from "../service/record.js";
import { runsNoMore } from "../service/running.js";
import { mark } from "../service/status.js";
import { dropPhotos } from "../service/test_photos.js";
import { Steady } from "../service/steady.js";
import { running } from "../shared/running.js";
import { day, dayTime } from "../shared/times.js";
import { unitsFor } from "../shared/units.js";

const place = document.getElementById("test");
const [data, rig, kept] = await Promise.all([pageData(), chosenRig(), keptRecords("tests")]);
const { words } = data;
const page = { tests: newestFirst(kept), standard: Object.hasOwn(data.standards, rig?.standard) ? rig.standard : "us", kind: "annual", asked: null, said: [] };

const steady = new Steady(); // keeps time while a test is left to look at this list
setInterval(() => steady.tick(), 500);

async function begin() {
  const standard = data.standards[page.standard][page.kind];
  const wall = Date.now();
  const record = newRecord({ profile: rig, standard, earlier: page.tests.filter((test) => test.rig_id === rig.id), compared_ms: comparedMs(page.tests, standard, wall), wall });
  await keepRecord("tests", record);
  location.assign(`run/#${record.id}`);
}

async function take(files) {
  const { tests, said } = await bring({ files, tests: page.tests, units: unitsFor(data.systems, "US"), data });
  page.tests = tests;
  page.said = said;
  draw();
}

async function remove(id) {
  if (await dropRecord("tests", id)) {
    await dropPhotos(id);
    page.tests = page.tests.filter((test) => test.id !== id);
    runsNoMore(id, running());
  } else page.said = [words.years.unremoved];
  page.asked = null;
  draw();
}

// Of the limits that stand below in groups, the one that is chosen says so, with the kind of test.
function markChosen() {
  for (const group of document.querySelectorAll(".limits-of")) {
    const mark = group.querySelector(".limits-chosen");
    mark.hidden = group.dataset.standard !== page.standard;
    mark.textContent = fill(words.sources.chosen, { kind: words.kind[page.kind] });
  }
}

function draw() {
  markChosen();
  const open = page.tests.filter((test) => test.finished_ms === null);
  const done = page.tests.filter((test) => test.finished_ms !== null);
  const [, kinds] = data.kinds.find(([id]) => id === page.standard);
  render(html`
    ${open.length ? html`<h2>${words.test.open}</h2>${open.map(row)}` : nothing}
    <h2>${words.test.begin}</h2>
    ${!rig ? html`<p class="notice">${words.test.nobody} <a class="key" href="../rig/">${words.test.to_rig}</a></p>`
      : !rig.pump_rated ? html`<p class="notice">${words.test.no_rating} <a class="key" href="../rig/#field-pump_rated">${words.test.to_rig}</a></p>` : html`
      ${chips({ name: "standard", legend: words.test.standard, value: page.standard, choices: data.kinds.map(([id]) => ({ id, label: words.standard[id] })),
        change: (id) => { page.standard = id; page.kind = "annual"; draw(); } })}
      ${chips({ name: "kind", legend: words.test.kind, value: page.kind, choices: kinds.map((id) => ({ id, label: words.kind[id] })),
        change: (id) => { page.kind = id; draw(); } })}
      <p>${words.test.unsure_all}</p>`}
    ${notices(...page.said)}
    <div class="rows">${bringKey(words, take)}</div>
    ${done.length ? html`<h2>${words.test.done}</h2>${done.map(row)}` : open.length ? nothing : html`<p>${words.test.none}</p>`}
    ${rig?.pump_rated ? html`<div class="dock"><button type="button" class="key ${open.length ? "" : "key-act"}" @click=${begin}>${words.test.begin}${colon} ${rig.name}</button></div>` : nothing}`, place);
}

const row = (test) => html`
  <article class="row">
    <p>${test.result ? mark(test.result.status) : nothing}<span><b>${test.rig_name}</b>
      <small>${words.kind[test.standard.kind]} · ${fill(test.finished_ms === null ? words.test.opened : words.test.closed, { date: test.finished_ms === null ? `${day(test.begun_ms)}, ${dayTime(test.begun_ms)}` : day(test.finished_ms) })}
      ${test.result ? html` · ${words.status[test.result.status]}` : isRunning(test) ? html` · ${words.test.running}` : nothing}</small></span></p>
    <div class="pairs">
      ${test.finished_ms === null ? html`<a class="key key-act" href="run/#${test.id}">${words.test.on}</a>` : nothing}
      <a class="key" href="sheet/#${test.id}">${words.test.sheet}</a>
      ${page.asked === test.id
        ? html`<span>${words.test.remove_ask}</span><button type="button" class="key key-danger" @click=${() => remove(test.id)}>${words.test.remove_yes}</button>
            <button type="button" class="key" @click=${() => { page.asked = null; draw(); }}>${words.test.remove_no}</button>`
        : html`<button type="button" class="key" @click=${() => { page.asked = test.id; draw(); }}>${words.test.remove}</button>`}
    </div>
  </article>`;

place.replaceChildren();
draw();
