import type { RecordIssue } from "./types";

/** One clear sentence about what to do, per expected failure. */
export const recordSentences: Readonly<Record<RecordIssue["code"], (issue: RecordIssue) => string>> = {
  "bead-gone": () => "This bead is no longer in the list; it was deleted. Go back to the list.",
  "bead-changed-elsewhere": () =>
    "This bead was changed in another window meanwhile. Choose below which version to keep; nothing is lost until you do.",
  "bead-not-understood": ({ path, data }) =>
    `This change could not be saved (${path.join(" › ") || "bead"}: ${data["reason"] ?? "not understood"}). Correct it and it will be saved at once.`,
  "bead-handed-in": () =>
    "This bead was handed in for an exercise, so it stays. Withdraw the hand-in first, while no feedback was returned.",
  "bead-signed": () => "A signed record speaks of this bead, so it stays as it is.",
  "photo-already-on-bead": () => "This photo is already on this bead, so it was not added twice.",
  "photo-gone": () => "This photo is no longer on the bead. Reload the page to see what is.",
  "person-not-understood": ({ path }) =>
    path[0] === "mark"
      ? "An identification has up to 20 letters, digits, dots, dashes or slashes."
      : "A person needs a name of up to 120 letters and a role.",
  "person-gone": () => "This person is no longer in the list. Reload the page.",
  "setup-name-missing": () => "Give the set-up a name of at least one letter, then save it.",
  "setup-gone": () => "This saved set-up was deleted meanwhile. Choose another one.",
  "filter-name-missing": () => "Give the filter a name of at least one letter, then save it.",
  "filter-gone": () => "This saved filter was deleted meanwhile. Choose another one.",
  "store-full": () =>
    "The disk is full, so nothing was saved. Free some space; your changes stay on this screen and are saved at the next change.",
  "store-unusable": () =>
    "The database did not answer, so nothing was saved. Your changes stay on this screen; wait a moment and try again.",
};

export function recordSentence(issue: RecordIssue): string {
  return recordSentences[issue.code](issue);
}
