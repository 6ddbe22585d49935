const KEY = "toeline-looks-by-itself";

/** Whether new photos are looked at without a press, on this device. */
export function looksByItself(): boolean {
  try {
    return window.localStorage.getItem(KEY) !== "no";
  } catch {
    return true;
  }
}

/** Remembered on this device; where nothing can be kept it holds for nothing, and photos are looked at. */
export function setLooksByItself(on: boolean): void {
  try {
    window.localStorage.setItem(KEY, on ? "yes" : "no");
  } catch {
    // A browser that keeps nothing asks again with the next photo.
  }
}
