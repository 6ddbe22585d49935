import { begun, closed, isGoing, type Look } from "./look";

/** Of this tab: a look that was going when the page was left or loaded anew ended with it, and the next page says so. */
const KEY = "toeline-look-at-records";

/** Notes how far a look is, as long as it is going. */
export function noteLook(look: Look): void {
  try {
    const { parts, place, most, found } = look;
    if (isGoing(look)) sessionStorage.setItem(KEY, JSON.stringify({ parts, place, most, found }));
    else sessionStorage.removeItem(KEY);
  } catch {
    // Without a place to note it the next page says nothing, as if nobody had looked.
  }
}

/** The look that the last page had going, as one that broke off; null: there was none. Told once. */
export function brokenLook(): Look | null {
  try {
    const kept = sessionStorage.getItem(KEY);
    sessionStorage.removeItem(KEY);
    if (kept === null) return null;
    const { parts, place, most, found } = JSON.parse(kept) as Pick<
      Look,
      "parts" | "place" | "most" | "found"
    >;
    const why = "This page was left or loaded anew while it looked.";
    return closed({ ...begun, parts, place, most, found, why }, "broken");
  } catch {
    return null;
  }
}
