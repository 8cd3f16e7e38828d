// The readings of a set: a cell each, with what is set beside what is read, and a tray of figures near the one that is touched.
import { html, nothing } from "../../vendor/lit-html/lit-html.js";
import { holdToRepeat, pressed } from "../shared/controls.js";
import { fill } from "../shared/site.js";
import { stepIn } from "../shared/stepped.js";
import { tagged } from "../shared/units.js";
import { kindOf, labelOf } from "./entries.js";
import { carriedIn, testOf } from "./record.js";
import { optionOf, tipStanding } from "./tips.js";

export const TRAY = { below: 1, above: 1 }; // with the keys at its ends five fit a glove on 360 px

// The cells of a run: { id, field, place among the tips or null, kind, text as entered, start where nothing is, name, aim, isOld }.
export function cellsOf({ record, words, u, answer }, test) {
  const { draft } = testOf(record, test.id);
  const values = draft?.values ?? {};
  const option = optionOf(test, record);
  const count = option?.count ?? tipStanding(test, record)?.count ?? 1;
  const aims = { discharge_psi: test.hold_texts?.[0] ?? test.gauge_text, pitot_psi: option?.pitot_text, meter_gpm: test.flow_text, engine_rpm: test.expected[0]?.engine_text };
  const carried = carriedIn(record, test);
  const one = (field, place = null) => ({
    id: place === null ? field.id : `${field.id}-${place + 1}`,
    field: field.id, place, kind: kindOf(field.id),
    text: (place === null ? values[field.id] : values[field.id]?.[place]) ?? "",
    start: startOf(test, field, option),
    label: place === null || count === 1 ? labelOf(field.id, { words, answer, u }) : `${labelOf(field.id, { words, answer, u })} ${place + 1}`,
    short: `${words.cell[field.id] ?? words.field[field.id]}${place === null || count === 1 ? "" : ` ${place + 1}`}`,
    aim: aims[field.id] ? fill(field.id === "engine_rpm" ? words.run.about : words.run.set, { value: aims[field.id] }) : null,
    isOld: carried.includes(place === null ? field.id : `${field.id}.${place}`),
    at: `tests.${test.id}.draft.${field.id}${place === null ? "" : `.${place}`}`,
  });
  // discharge and engine side by side, then the tips
  const needed = test.fields.filter((field) => field.needed);
  return [...needed.filter(({ id }) => id !== "pitot_psi").map((field) => one(field)),
    ...needed.filter(({ id }) => id === "pitot_psi").flatMap((field) => Array.from({ length: count }, (_, place) => one(field, place)))];
}

// Where nothing was read yet a step begins from the target, so that one tap shows a figure near the needle.
export function startOf(test, field, option) {
  const us = { discharge_psi: test.hold_psi?.[0] ?? test.gauge_psi ?? test.net_psi, pitot_psi: option?.pitot_psi, meter_gpm: test.flow_gpm, engine_rpm: test.expected[0]?.engine_rpm, pump_rpm: test.expected[0]?.pump_rpm };
  return us[field.id] ? `${Math.ceil(us[field.id])}@US` : "";
}

const enter = (view, test, cell) => (text) => view.act.draft(test.id, cell.field, text.trim() ? tagged(text, view.system) : "", cell.place);

export const cellsView = (view, test, cells, here) => html`
  <div class="cells" data-count=${cells.length}>${cells.map((cell) => cellView(view, test, cell, cell.id === here?.id))}</div>`;

function cellView(view, test, cell, isHere) {
  const { words, u, page, shown, refusal } = view;
  const refused = refusal([cell.at], cell.id);
  const unit = u[`u_${cell.kind}`];
  // the first touch chooses the cell, and brings no keys up before its tray; a second wants them
  return html`
    <div class="cell" ?data-here=${isHere} ?data-old=${cell.isOld} ?data-refused=${refused !== null} @pointerdown=${() => { page.was = isHere ? cell.id : null; }}
      @click=${() => (page.was === cell.id ? toKeys(cell.id) : document.getElementById(cell.id).focus())}>
      <label for=${cell.id}>${cell.short}</label>${cell.aim ? html`<span class="cell-aim">${cell.aim}</span>` : nothing}
      <span class="cell-figure"><input id=${cell.id} name=${cell.field} inputmode="none" autocomplete="off" .value=${shown(cell.kind, cell.text)} placeholder="–"
        aria-label=${cell.aim ? `${cell.label}, ${cell.aim}` : cell.label} aria-invalid=${refused ? "true" : "false"} aria-describedby=${refused ? `${cell.id}-unit ${cell.id}-refused` : `${cell.id}-unit`}
        @focus=${() => choose(view, cell.id)} @blur=${({ target }) => { target.inputMode = "none"; }} @input=${({ target }) => enter(view, test, cell)(target.value)}>
        <span class="cell-side">${cell.isOld ? html`<small>${words.run.as_before}</small>` : nothing}<span id="${cell.id}-unit" aria-hidden="true">${unit}</span></span></span>
      ${refused ? html`<p class="refusal" id="${cell.id}-refused" role="alert">${refused}</p>` : nothing}
    </div>`;
}

function choose({ page, act }, id) {
  if (page.cell === id) return;
  page.cell = id;
  act.redraw();
}

// The phone's own number pad for a cell that has the focus: some phones look at it only as the focus comes.
function toKeys(id) {
  const input = /** @type {HTMLInputElement} */ (document.getElementById(id));
  if (input.inputMode === "decimal") return;
  input.blur();
  input.inputMode = "decimal";
  input.focus();
}

// What the tray asks of calc: figures near what stands in each cell, or near where it begins.
export const trayQuestion = (cells, { shown, steps }) => cells.map((cell) => ({ text: shown(cell.kind, cell.text || cell.start) || "0", kind: cell.kind, step: steps[cell.kind] }));

// near: of the cell, { below, above }.
export function trayView(view, test, cell, near) {
  const { words, shown, system, data, refusal } = view;
  const figures = refusal([cell.at], cell.id) ? { below: [], above: [] } : near; // none near what no gauge can show
  const put = enter(view, test, cell);
  const standing = shown(cell.kind, cell.text);
  const show = (text) => shown(cell.kind, `${text}@${system}`);
  const figure = (text) => html`<button type="button" class="key" aria-label="${cell.label} ${show(text)}" @click=${() => put(text)}>${show(text)}</button>`;
  const middle = standing || shown(cell.kind, cell.start);
  const creep = (direction) => stepIn(/** @type {HTMLInputElement} */ (document.getElementById(cell.id)),
    { start: middle || "0", by: { kind: cell.kind, step: data.systems[system].steps[cell.kind], direction }, type: put });
  const edge = (sign, name, direction) => html`<button type="button" class="key tray-edge" aria-label=${fill(words.pressure[name], { what: cell.label })}
    @pointerdown=${(event) => holdToRepeat(event, () => creep(direction))} @click=${(event) => pressed(event, () => creep(direction))} @contextmenu=${(event) => event.preventDefault()}>${sign}</button>`;
  return html`
    <div class="tray" role="group" aria-label=${fill(words.run.tray, { what: cell.label })}>
      ${edge("−", "less", -1)}
      ${figures.below.map(figure)}
      ${standing && cell.isOld ? html`<button type="button" class="key tray-same" aria-label=${fill(words.run.same_as, { what: cell.label, value: standing })} @click=${() => view.act.same(test.id, cell)}>${standing}<small>${words.run.same}</small></button>`
        : standing ? html`<button type="button" class="key" aria-pressed="true" aria-label=${fill(words.run.type, { what: cell.label })} @click=${() => toKeys(cell.id)}>${standing}</button>`
        : middle ? html`<button type="button" class="key" aria-label="${cell.label} ${middle}" @click=${() => put(middle)}>${middle}</button>`
          : html`<button type="button" class="key" aria-label=${fill(words.run.type, { what: cell.label })} @click=${() => toKeys(cell.id)}>…</button>`}
      ${figures.above.map(figure)}
      ${edge("+", "more", 1)}
    </div>`;
}
