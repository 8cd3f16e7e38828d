// What a module asks of its page as it is loaded, for tests that have no page: an English one. Loaded before each test file.
globalThis.document = {
  documentElement: { lang: "en", dataset: { decimal: ".", longest: "40", colon: ":" } },
  createTreeWalker: () => ({}),
  createComment: () => ({}),
};
globalThis.window = globalThis;
Object.defineProperty(navigator, "languages", { value: ["fr-CA", "en-CA", "en-US"] });
