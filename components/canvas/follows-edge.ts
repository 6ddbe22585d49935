const KEY = "toeline-lines-follow-edge";

/** Whether lines run along the edge on this device; straight where nobody said or nothing can be kept. */
export function followsEdge(): boolean {
  try {
    return window.localStorage.getItem(KEY) === "yes";
  } catch {
    return false;
  }
}

/** Remembered on this device, where it keeps anything. */
export function setFollowsEdge(on: boolean): void {
  try {
    window.localStorage.setItem(KEY, on ? "yes" : "no");
  } catch {
    // It holds until the page is left.
  }
}
