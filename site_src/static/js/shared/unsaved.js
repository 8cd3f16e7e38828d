// The sentence above every page that says what is entered is not saved, for as long as anything here could not be.
const unsaved = new Set();

// Say whether what goes by this name is saved; returns it.
export function tellSaved(name, isSaved) {
  if (isSaved) unsaved.delete(name);
  else unsaved.add(name);
  document.getElementById("unkept").hidden = unsaved.size === 0;
  return isSaved;
}
