// A link as a square code, and the camera that reads one where the browser can.
import { generate } from "../../vendor/lean-qr/index.mjs";
import { toSvgPath } from "../../vendor/lean-qr/svg.mjs";
import { html } from "../../vendor/lit-html/lit-html.js";

const MOST_BYTES = 2900; // the largest square code holds 2,953

export const fitsCode = (link) => link.length <= MOST_BYTES;

export function codeView(link, label) {
  const code = generate(link);
  const side = code.size + 8;
  return html`
    <svg class="code" viewBox="-4 -4 ${side} ${side}" role="img" aria-label=${label} shape-rendering="crispEdges">
      <rect x="-4" y="-4" width=${side} height=${side} fill="#fff"/><path d=${toSvgPath(code)} fill="#000"/>
    </svg>`;
}

export const canScan = () => "BarcodeDetector" in window && !!navigator.mediaDevices?.getUserMedia;

// Look through the camera until a code is seen; resolves to its text. `video` shows what the camera sees.
export async function scan(video) {
  const detector = new BarcodeDetector({ formats: ["qr_code"] });
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  try {
    video.srcObject = stream;
    await video.play();
    for (;;) {
      const [found] = await detector.detect(video);
      if (found) return found.rawValue;
      await new Promise((resolve) => setTimeout(resolve, 150));
    }
  } finally {
    for (const track of stream.getTracks()) track.stop();
  }
}
