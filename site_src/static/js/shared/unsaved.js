// The sentences above every page that say what is entered is in a note alone, or is not saved, for as long as anything here is not.
const states = new Map();

// Say how what goes by this name is kept, as store.js puts it.
export function tellSaved(name, state) {
  states.set(name, state);
  const worst = ["unkept", "noted"].find((each) => [...states.values()].includes(each));
  for (const sentence of document.querySelectorAll("#unkept, #noted")) sentence.hidden = sentence.id !== worst;
}
