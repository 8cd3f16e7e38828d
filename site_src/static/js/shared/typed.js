// What is typed in a search comes back with the page: a browser puts nothing back where it may complete nothing.
/** @param {HTMLInputElement} input */
export function keepTyped(input) {
  input.value ||= history.state?.typed ?? "";
  input.addEventListener("input", () => history.replaceState({ typed: input.value }, ""));
}
