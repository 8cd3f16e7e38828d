// A diagnosis, one look to a screen. calc.diagnosis decides what to look at and when it ends; this page shows it and keeps it.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { answering } from "../shared/answering.js";
import { stayAwake } from "../shared/awake.js";
import { choose } from "../shared/choices.js";
import { askActs, askView, leavingActs, leavingView } from "../diagnose/ask.js";
import { handedOver, isOurs } from "../diagnose/enter.js";
import { endActs, endView, slipActs } from "../diagnose/end.js";
import { isOld, leftActs, leftView, resumedView } from "../diagnose/left.js";
import { ordersFor } from "../shared/order.js";
import { firstActs, firstView, noShift, orderToDo } from "../diagnose/order.js";
import { answered, begun, carried, oneBack, recordOf, unanswered } from "../diagnose/record.js";
import { chosenRole } from "../diagnose/role.js";
import { FIRST, startActs, startView } from "../diagnose/start.js";
import { calc, Refusal } from "../shared/engine.js";
import { drawnAnew } from "../shared/focus.js";
import { notices } from "../shared/notice.js";
import { runs } from "../shared/running.js";
import { chosenRig } from "../rig/chosen.js";
import { isSettled } from "../shared/second_touch.js";
import { fill, home, pageData } from "../shared/site.js";
import { outElsewhere } from "../shift/out.js";
import { keep, keepRecord, kept } from "../shared/store.js";

const DRAFT = "diagnosis";
const place = document.getElementById("diagnose");
const acts = document.getElementById("acts");
const where = document.getElementById("where");
const ways = document.getElementById("ways");
const starting = calc.start();
const data = await pageData();
const { words } = data;
const rig = await chosenRig();
data.orders = ordersFor(data.orders, rig?.drive);

const page = { notice: null, isLogged: false, isSaid: false, leavingFor: null, isLeft: false, isResumed: false, isNew: false, slip: null, isSlip: false, view: FIRST, isForeign: false, shownAt: -Infinity };
let state = null;
let knowledge = null; // as far as it can be of this rig
let madeOf = null; // what tells one such knowledge from another

// The next state. What a link from elsewhere brought is shown, and neither kept nor logged before somebody answers here.
function put(next, isForeign = false) {
  state = next;
  page.isSaid = false;
  page.slip = null;
  page.isSlip = false;
  page.leavingFor = null;
  page.isResumed = false;
  page.view = FIRST;
  page.isNew = true;
  page.shownAt = performance.now();
  page.isForeign = isForeign;
  save();
  change();
}

// One of the first screens.
function show(view) {
  page.view = { ...view };
  page.isNew = true;
  redraw();
}

const save = () => page.isForeign || keep(DRAFT, state);
const isRunning = () => Boolean(state?.complaints.length);

// A rig that a card stopped because it moved has no second shift here either.
const out = await outElsewhere({ titles: data.titles, rig });
const fresh = (engine) => ({ ...begun({ rig, madeOf, engine, role: chosenRole() }), ...(out && { isOut: true }) });

// What a new diagnosis keeps of the last: that the rig is out of service, and that the one repeat was told for a dead throttle.
function lasting(sign) {
  if (!state || isOld(state)) return {};
  const wasDead = state.wasDead || state.signs.throttle_dead === "seen";
  return { wasDead, isOut: state.isOut || state.signs.moves === "seen" || (wasDead && sign === "throttle_dead") };
}

function begin(sign) {
  page.notice = null;
  put({ ...fresh(data.signs[sign].begins), ...lasting(sign), signs: { ...state?.signs, [sign]: "seen" }, complaints: [sign] });
}

function answerLook(of, said) {
  page.notice = null;
  put(answered(state, of, said, knowledge.questions));
}

// A red key: the sign of danger that it stands for ends the diagnosis, and no older end of it counts any more.
function danger(sign) {
  const before = state ?? fresh("idle");
  const { signs, complaints, ...rest } = before;
  put({ ...rest, signs: { ...signs, [sign]: "seen" }, complaints: [...complaints.filter((each) => each !== sign), sign], written: false });
  page.slip = before;
}

// A red key that was touched by mistake: the same look is asked again. Its record stays in the log.
function takeBack() {
  put({ ...page.slip, id: fresh("idle").id });
}

function askSlip(isAsked) {
  page.isSlip = isAsked;
  redraw();
}

function again() {
  page.notice = null;
  page.isLeft = false;
  put({ ...fresh("idle"), ...lasting() });
}

function setRole(role) {
  choose("role", role);
  put({ ...(state ?? fresh("idle")), role, written: false });
}

function setEngine(engine) {
  if (state.engine !== "pumping" || engine === "pumping" || page.leavingFor) return put({ ...state, engine });
  page.leavingFor = engine;
  redraw();
}

// All that a page shows of a state. Nothing that moves the shift is looked for on a rig that is out of service, or whose teeth ground.
async function look() {
  if (!isRunning()) return {};
  const { signs, complaints: began, again: twice = [], role, engine, asked } = state;
  const of = state;
  const answer = await calc.ask("look.after", { signs, began, again: twice, role, engine, questions: asked.length, may_shift: !noShift(state, data) }, { knowledge });
  if (of === state) write(answer.end);
  return answer;
}

const { change, redraw } = answering(look, (answer) => {
  if (page.isNew && !answer && isRunning() && !page.isLeft) return; // the screen before it, until this is known
  const screen = shown(answer);
  ways.hidden = isRunning() || Boolean(page.view.at) || page.view.isWords;
  where.hidden = !screen.place;
  where.textContent = screen.place ?? "";
  if (!page.isForeign && (!isRunning() || answer)) runs("fault", isGoingOn(answer) ? { title: words.diagnose.title, said: ["diagnose/", "words", "diagnose", "title"], address: "diagnose/", began_at: Date.parse(state.began_at) } : null);
  const draw = () => {
    render(html`${page.isResumed ? resumedView({ state, words, again: answer?.end.kind === "check" && !orderBefore(answer.end) ? again : null }) : notices(page.notice)}${screen.view}`, place);
    acts.hidden = screen.acts === nothing;
    render(screen.acts, acts);
  };
  if (!page.isNew || !answer) return draw();
  page.isNew = false;
  drawnAnew(place, draw);
  page.shownAt = performance.now();
  scrollTo(0, 0);
});

const isGoingOn = (answer) => isRunning() && (["check", "engine"].includes(answer.end.kind) || Boolean(orderBefore(answer.end)));

// What stands on the page, and the acts at the thumb; place: where a person has to look, for the bar.
function shown(answer) {
  if (!isRunning()) {
    const role = state?.role ?? chosenRole();
    return { view: startView({ view: page.view, show, redraw, data, rig, role, offered: knowledge.signs, setRole, begin }), acts: startActs({ view: page.view, show, data, danger }) };
  }
  if (page.isLeft) return { view: leftView({ state, words }), acts: leftActs({ words, again, goOn: () => { page.isLeft = false; put(state); } }) };
  if (page.leavingFor) return { view: leavingView({ words, engine: page.leavingFor }), acts: leavingActs({ words, go: () => setEngine(page.leavingFor), stay: () => put(state) }) };
  if (!answer) return { view: nothing, acts: nothing };
  const { end, possible, ranked } = answer;
  const name = orderBefore(end);
  if (name) return { view: firstView({ name, state, data }), acts: firstActs({ name, data, again, danger, done: () => page.isNew || put(carried(state, name)) }) };
  if (end.kind === "check") {
    return {
      place: words.where[data.signs[end.sign].place],
      view: askView({ look: end, possible, state, data, isSaid: page.isSaid, setEngine, again, redraw, back: () => put(oneBack(state)) }),
      acts: askActs({ look: end, data, isSaid: page.isSaid, danger, said: () => { page.isSaid = true; redraw(); },
        answer: (said) => isSettled(page.shownAt) && answerLook(end, said) }),
    };
  }
  return {
    view: html`
      ${page.isSlip ? html`<p class="notice" role="alert">${words.diagnose.slip_means}</p>` : nothing}
      ${endView({ end, ranked, data, state, setEngine, lookAt: (entry) => put({ ...unanswered(state, entry), written: false }) })}
      ${page.isLogged && end.kind !== "engine" ? html`<p><a href=${new URL("log/", home).href}>${words.diagnose.kept}</a></p>` : nothing}`,
    acts: page.slip ? slipActs({ end, data, state, isAsked: page.isSlip, ask: askSlip, takeBack, again }) : endActs({ end, data, state, setRole, again, back: () => put({ ...oneBack(state), written: false }) }),
  };
}

// What is done before anything else is looked at; a danger that was seen comes first.
const orderBefore = (end) => (end.kind === "danger" ? null : orderToDo(state, data));

// The log takes a diagnosis once it has ended; one that goes on after all replaces its own record.
function write(end) {
  if (state.written || page.isLeft || page.isForeign || ["check", "engine"].includes(end.kind) || orderBefore(end)) return;
  state = { ...state, written: true };
  save();
  const record = recordOf(state, end, data);
  keepRecord("log", record).then((state) => {
    page.isLogged = state !== "unkept";
    redraw();
  });
}

// From a card or another page, with what it knows; false where nothing was handed over.
async function takeOver(known) {
  if (known === null) return false;
  const isForeign = !isOurs();
  history.replaceState(null, "", location.pathname);
  try {
    if (known === "unreadable") throw new Refusal({ field: "from", code: known });
    const { facts = [], missing = [], signs: others = {} } = known;
    await calc.ask("fault.rank", { signs: others }, { knowledge: data.knowledge });
    const possible = Object.entries(others).filter(([sign]) => knowledge.signs.some(({ id }) => id === sign));
    const signs = { ...await calc.ask("fault.entered", { facts, missing }, { knowledge }), ...Object.fromEntries(possible) };
    const complaints = Object.keys(signs).filter((sign) => signs[sign] === "seen");
    const whence = isForeign ? words.diagnose.from_link : words.diagnose.from_card;
    page.notice = possible.length || !Object.keys(others).length ? whence : fill(words.diagnose.not_of_rig, rig);
    const shown = known.step ? complaints.map((sign) => data.signs[sign].order) : known.shown ?? []; // by where it came from
    put({ ...fresh(data.signs[complaints[0]]?.begins ?? "idle"), signs, complaints, shown, isOut: known.out === true }, isForeign);
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    page.notice = words.diagnose.bad_link;
    put(fresh("idle"), isForeign);
  }
  return true;
}

// A finished one is in the log, and stands here again for who reloads its page or comes back to it.
function isBackAt(left) {
  const [{ type }] = /** @type {PerformanceNavigationTiming[]} */ (performance.getEntriesByType("navigation"));
  return type !== "navigate" && !isOld(left) && left.madeOf === madeOf;
}

function resume(left) {
  if (!left?.complaints?.length || (left.written && !isBackAt(left))) return change();
  if (left.madeOf !== madeOf) {
    page.notice = words.diagnose.outdated;
    return change();
  }
  state = left;
  page.isLeft = isOld(left);
  page.isResumed = !page.isLeft && !left.written;
  page.isLogged = left.written;
  change();
}

// Whoever comes back to this page after long is asked, as after a reload.
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState !== "visible" || !isRunning() || state.written || !isOld(state)) return;
  page.isLeft = true;
  redraw();
});

const [left] = await Promise.all([kept(DRAFT), starting]);
knowledge = await calc.ask("fault.for_rig", { rig: rig ?? {} }, { knowledge: data.knowledge });
madeOf = JSON.stringify(knowledge).length + knowledge.signs.map(({ id }) => id).join();
for (const way of ways.querySelectorAll("[data-drives]")) way.hidden = Boolean(rig?.drive) && !way.dataset.drives.split(" ").includes(rig.drive);
place.replaceChildren();
if (!await takeOver(handedOver())) resume(left);
stayAwake(() => {});
