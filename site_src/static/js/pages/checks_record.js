// A check or a release of the log as it was written, to read and to print.
import { html, nothing, render } from "../../vendor/lit-html/lit-html.js";
import { opened } from "../bay/opened.js";
import { checkSheet } from "../bay/paper_check.js";
import { releaseSheet } from "../bay/paper_forms.js";
import { pastCheck, pastRelease } from "../bay/past.js";
import { toBay } from "../bay/sentences.js";
import { fragment } from "../shared/site.js";

const place = document.getElementById("bay");
const page = await opened(place);
addEventListener("hashchange", () => location.reload());

async function start() {
  const { words, log } = page;
  const id = fragment();
  const record = log.of("round", "release").find((other) => other.id === id);
  if (!record) return render(html`<p>${words.record.none}</p><div class="dock">${toBay(words)}</div>`, place);
  const check = record.kind === "round" ? await pastCheck(page, record) : null;
  render(html`
    ${check && !check.isEnded ? html`<p><b>${words.record.not_ended}</b></p>` : nothing}
    ${check ? checkSheet(check) : releaseSheet(...await pastRelease(page, record))}
    <div class="dock bay-dock"><button type="button" class="key key-act" @click=${() => window.print()}>${words.bay.print}</button></div>`, place);
}

if (page) await start();
