// The key that takes files in.
import { html } from "../../vendor/lit-html/lit-html.js";

// `take` gets the files; the same ones can be chosen again.
export const bringKey = (words, take) => html`
  <label class="key key-wide key-file">${words.years.bring}
    <input type="file" multiple accept=".json,application/json" @change=${({ target }) => {
      const files = [...target.files];
      target.value = "";
      take(files);
    }}></label>`;
