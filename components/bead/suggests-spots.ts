const KEY = "toeline-suggests-spots";

/** Whether holes and spatter are suggested on this device: only where somebody asked for it. */
export function suggestsSpots(): boolean {
  try {
    return window.localStorage.getItem(KEY) === "yes";
  } catch {
    return false;
  }
}

/** Remembered on this device; where nothing can be kept it holds for this visit to the photo. */
export function setSuggestsSpots(on: boolean): void {
  try {
    window.localStorage.setItem(KEY, on ? "yes" : "no");
  } catch {
    // A browser that keeps nothing is asked again.
  }
}
