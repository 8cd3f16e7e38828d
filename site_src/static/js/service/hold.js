// A test is written by one tab at a time.
const lockOf = (id) => `test:${id}`;

// Whether this tab may write a test from now on; it may until it is gone.
export async function hold(id) {
  if (!navigator.locks) return true;
  return new Promise((resolve) => navigator.locks.request(lockOf(id), { ifAvailable: true }, (lock) => {
    resolve(lock !== null);
    return lock ? new Promise(() => {}) : null;
  }));
}

// Does a thing while no other tab writes a test; false where one does.
export async function unlessHeld(id, act) {
  if (!navigator.locks) return act();
  return navigator.locks.request(lockOf(id), { ifAvailable: true }, (lock) => (lock ? act() : false));
}
