// What stands in a part of a page as plain data, and that part built of it again: an answer is painted so before any module runs.
const SVG = "http://www.w3.org/2000/svg";

// [tag, { attribute: value }, ...inside]; what is for paper alone is left out.
export function snapshotOf(element) {
  const inside = [...element.childNodes].flatMap((node) => {
    if (node instanceof Element) return node.classList.contains("on-paper") ? [] : [snapshotOf(node)];
    return node instanceof Text && node.data ? [node.data.replace(/\s+/g, " ")] : [];
  });
  const isBlank = inside.every((each) => each === " ");
  return [element.tagName, Object.fromEntries([...element.attributes].map(({ name, value }) => [name, value])), ...(isBlank ? [] : inside)];
}

export function built([tag, attributes, ...inside], isDrawn = false) {
  const isSvg = isDrawn || tag === "svg";
  const made = /** @type {HTMLElement} */ (isSvg ? document.createElementNS(SVG, tag) : document.createElement(tag));
  for (const [name, value] of Object.entries(attributes)) {
    if (name === "style") made.style.cssText = value; // the attribute itself is not allowed by the policy
    else made.setAttribute(name, value);
  }
  made.append(...inside.map((each) => (typeof each === "string" ? each : built(each, isSvg))));
  return made;
}
