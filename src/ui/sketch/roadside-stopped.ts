const KEY = 'brinkbook-roadside-stopped';

/** True where somebody has stopped the reading of the roadside in this tab: that holds over a reload. */
export function roadsideStopped(): boolean {
  try {
    return sessionStorage.getItem(KEY) !== null;
  } catch {
    return false;
  }
}

/** Remembers in this tab that the reading was stopped, or that it goes on. */
export function keepRoadsideStopped(is: boolean): void {
  try {
    if (is) sessionStorage.setItem(KEY, 'yes');
    else sessionStorage.removeItem(KEY);
  } catch {
    // No storage: it holds until the page is left.
  }
}
