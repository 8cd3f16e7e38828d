// Measures of a page as it stands on the screen: contrast of its text, its touch targets, its width.
(() => {
  const seen = (element) => {
    const box = element.getBoundingClientRect();
    return box.width > 1 && box.height > 1 && box.right > 0 && element.checkVisibility({ visibilityProperty: true });
  };

  const name = (element) =>
    `${element.tagName.toLowerCase()} "${(element.getAttribute("aria-label") ?? element.textContent ?? "").trim().slice(0, 30)}"`;

  const channels = (colour) => {
    const [red, green, blue, alpha = 1] = colour.match(/[\d.]+/g).map(Number);
    return { rgb: [red, green, blue], alpha };
  };

  const SHAPES = "path, circle, rect, line, ellipse, polyline, polygon";
  const EDGED = ".key, .chip > span, .choice, .tile, .stepper-value, .cell, input:not([type=radio], [type=checkbox], [type=file], .stepper-value *, .cell *), textarea";

  const luminance = (rgb) => {
    const [red, green, blue] = rgb.map((value) => {
      const part = value / 255;
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };

  const over = (front, back) => front.rgb.map((value, place) => value * front.alpha + back[place] * (1 - front.alpha));

  // What lies behind an element: its own and its parents' backgrounds, from the page up.
  const behind = (element) =>
    element ? over(channels(getComputedStyle(element).backgroundColor), behind(element.parentElement)) : [255, 255, 255];

  const ratio = (colour, back) => {
    const [dark, light] = [luminance(over(channels(colour), back)), luminance(back)].sort((one, other) => one - other);
    return (light + 0.05) / (dark + 0.05);
  };

  const contrast = (element) => {
    const style = getComputedStyle(element);
    // a browser that forces its colours lays a plate of the page's under text
    const isPlated = matchMedia("(forced-colors: active)").matches && style.forcedColorAdjust === "auto";
    return ratio(element instanceof SVGElement ? style.fill : style.color, behind(isPlated ? document.body : element));
  };

  // What is seen of a control: a chip or a file's key stands for the input that lies over it unseen, a frame for the field in it.
  const shape = (control) => control.closest(".chip, .key-file, .stepper-value, .cell") ?? control;

  // How far the ring of the focus stands out from what lies around it; 0 where there is none.
  const ring = (control) => {
    const rings = [control, control.nextElementSibling, shape(control)].filter((element) => element && getComputedStyle(element).opacity > 0)
      .map((element) => ({ element, style: getComputedStyle(element) }))
      .filter(({ style }) => style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2);
    return Math.max(0, ...rings.map(({ element, style }) => ratio(style.outlineColor, behind(element.parentElement))));
  };

  // Whether another thing lies over the middle of what is in sight of a control.
  const isCovered = (control) => {
    const { left, right, top, bottom } = shape(control).getBoundingClientRect();
    const middle = (from, to, edge) => (Math.max(from, 0) + Math.min(to, edge)) / 2;
    const there = document.elementFromPoint(middle(left, right, innerWidth), middle(top, bottom, innerHeight));
    return !there || !(shape(control).contains(there) || there.contains(control));
  };

  const focus = () => {
    const control = document.activeElement;
    return { name: name(shape(control)), isLost: control === document.body, ring: ring(control), isCovered: isCovered(control) };
  };

  // What the Tab key stops at, in its order: one radio of a group.
  const stops = () => [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex='0']")]
    .filter((control) => !control.matches(":disabled") && control.checkVisibility({ visibilityProperty: true }) && seen(shape(control)))
    .filter((control) => control.type !== "radio" || control.checked || !document.querySelector(`[name="${CSS.escape(control.name)}"]:checked`));

  // How far what is drawn stands out: its fill or its stroke, from the page behind it or from a shape that it is drawn on.
  const drawn = (shape) => {
    const { fill, stroke } = getComputedStyle(shape);
    const back = behind(shape.closest("svg"));
    const under = [...shape.closest("svg").querySelectorAll(SHAPES)]
      .filter((other) => other.compareDocumentPosition(shape) & Node.DOCUMENT_POSITION_FOLLOWING)
      .map((other) => getComputedStyle(other).fill).filter((colour) => colour !== "none");
    const inks = [fill, stroke].filter((colour) => colour.startsWith("rgb"));
    return Math.max(...inks.flatMap((ink) => [back, ...under.map((colour) => over(channels(colour), back))].map((ground) => ratio(ink, ground))));
  };

  // How far the edge or the ground of a control stands out from what it lies on.
  const edge = (control) => {
    const { borderTopColor, borderTopStyle, backgroundColor } = getComputedStyle(control);
    const back = behind(control.parentElement);
    return Math.max(borderTopStyle === "none" ? 1 : ratio(borderTopColor, back), ratio(backgroundColor, back));
  };

  // The box that holds a text: the nearest thing around it with an edge or a cut, or null where it may scroll sideways.
  const boxOf = (element) => {
    for (let box = element; box !== document.body; box = box.parentElement) {
      const { borderTopStyle, borderTopWidth, borderLeftStyle, borderLeftWidth, overflowX } = getComputedStyle(box);
      if (overflowX === "auto" || overflowX === "scroll") return null;
      const isEdged = borderTopStyle !== "none" && parseFloat(borderTopWidth) > 0 && borderLeftStyle !== "none" && parseFloat(borderLeftWidth) > 0;
      if (isEdged || overflowX === "hidden") return box;
    }
    return document.body;
  };

  // How many px of a text reach out of its box.
  const out = (element) => {
    const box = boxOf(element)?.getBoundingClientRect();
    if (!box) return 0;
    const range = document.createRange();
    range.selectNodeContents(element);
    const { left, right, top, bottom } = range.getBoundingClientRect();
    return Math.max(box.left - left, right - box.right, box.top - top, bottom - box.bottom);
  };

  // Text nodes that a person reads, and what they said before they were lengthened.
  const said = new Map();
  const isProse = ({ parentElement }) => !parentElement.closest("script, noscript, svg, option, textarea");

  const holdsText = (element) =>
    element.matches("input:not([type=radio]), select") ||
    [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.data.trim());

  window.measure = {
    contrasts: () => [...document.body.querySelectorAll("*")]
      .filter((element) => !element.matches("script, noscript, noscript *, option") && holdsText(element) && seen(element))
      .map((element) => ({ name: name(element), ratio: contrast(element) })),

    shapes: () => [...document.querySelectorAll(`svg :is(${SHAPES})`)].filter(seen).map((shape) => ({ name: `${name(shape)} ${shape.getAttribute("class")}`, ratio: drawn(shape) })),

    // How far the ground of one thing is from the ground of another.
    between: (one, other) => ratio(getComputedStyle(document.querySelector(one)).backgroundColor, behind(document.querySelector(other))),

    edges: () => [...document.querySelectorAll(EDGED)].filter(seen).map((control) => ({ name: name(control), ratio: edge(control) })),

    // Whatever is touched: a radio by its label, a link unless it runs in prose.
    targets: () => [...document.body.querySelectorAll("button, select, input, textarea, a, summary")]
      .map((element) => (element.type === "radio" ? element.closest("label") : element))
      .filter((element) => seen(element) && getComputedStyle(element).display !== "inline")
      .map((element) => {
        const { left, top, width, height } = element.getBoundingClientRect();
        return { name: name(element), left, top, width, height, row: element.matches(".strip-line, summary, .row, .bed, .beds-more, .entry-row, .page-row") };
      }),

    focus,

    // Each stop of the Tab key with the focus on it.
    foci: () => stops().map((control) => {
      control.focus();
      return focus();
    }),

    // Where each stop of the Tab key lies on the page; what stays at an edge of the screen lies nowhere.
    places: () => stops().map((control) => ({ name: name(shape(control)), isFixed: control.closest(".notice-low") !== null, pane: control.closest("[data-pane]")?.dataset.pane ?? "", box: shape(control).getBoundingClientRect().toJSON() })),

    // Texts that reach out of the key, box or page that holds them.
    cut: () => [...document.body.querySelectorAll("*")]
      .filter((element) => !element.matches("script, noscript, noscript *, svg *, input, select, option, textarea") && holdsText(element) && seen(element) && out(element) > 2)
      .map((element) => `${name(element)} by ${Math.round(out(element))}`),

    // Each word longer by 40 %, as in another language.
    lengthen: () => {
      const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      while (walker.nextNode()) if (isProse(walker.currentNode)) said.set(walker.currentNode, walker.currentNode.data);
      for (const [node, text] of said) {
        node.data = text.replace(/\p{L}{3,}/gu, (word) => word + word.slice(0, Math.ceil(word.length * 0.4)).toLowerCase());
      }
    },

    restore: () => said.forEach((text, node) => {
      node.data = text;
    }),

    // Where the page is wider than a screen this wide: its width, and what reaches past the edge.
    overhang: (width) => document.scrollingElement.scrollWidth <= width ? [] : [
      document.scrollingElement.scrollWidth,
      ...[...document.body.querySelectorAll("*")]
        .filter((element) => seen(element) && element.getBoundingClientRect().right > width + 1).slice(0, 8).map(name),
    ],
  };
})();
