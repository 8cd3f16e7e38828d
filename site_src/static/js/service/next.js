// The way from a part of a test to the one that follows.
import { html } from "../../vendor/lit-html/lit-html.js";
import { fill } from "../shared/site.js";

// The part that follows in the plan; after the last one, the list.
export const nextLink = (view, name, isAct = true) => html`<a class="key ${isAct ? "key-act" : ""}" href=${nextAddress(view, name)}>${nextName(view, name)}</a>`;

function follows({ answer }, name) {
  const tests = answer.plan?.tests ?? [];
  return name === "site" ? tests[0] : tests[tests.findIndex(({ id }) => id === name) + 1];
}

export function nextAddress(view, name) {
  const next = follows(view, name);
  return `#${view.record.id}${next ? `/${next.id}` : ""}`;
}

export function nextName(view, name) {
  const next = follows(view, name);
  return next ? fill(view.words.test.next, { title: view.words.test_name[next.id] }) : view.words.test.back;
}
