import type { TraceIssue, TraceIssueCode } from "./types";

/** One clear sentence about what to do, per expected failure. */
export const traceSentences: Readonly<Record<TraceIssueCode, (issue: TraceIssue) => string>> = {
  "line-too-short": () =>
    "The weld line is too short on this photo to read a bead along. Draw it from start to crater.",
  "no-bead": () =>
    "No bead was found along this line. Put its two ends on the start and the crater, with points between if the weld is curved.",
  "line-beside-bead": () =>
    "The bead that was seen here lies beside this line. Of two beads put the line on the one you mean; a curved weld takes more points between its ends.",
  "bead-too-small": ({ data }) =>
    `The bead is only ${data.widthPx} pixels wide on this photo; from ${data.leastPx} its toes can be read. Move closer or photograph a part of it.`,
  "photo-blurred": () =>
    "The photo is too blurred here to read the toes. Hold the phone still, tap the bead to focus, and take it again.",
  "light-blown": ({ data }) =>
    `The light is blown out on ${data.percent} % of the bead. Turn the work or shade the lamp, and take the photo again without flash.`,
  "not-sure-enough": () =>
    "The toes are too uncertain on this photo to be proposed. Brush the toes clean, take it again from straight above, or draw them by hand.",
  "no-bead-in-picture": () =>
    "No bead was found in this photo. Photograph it chipped and brushed, from straight above, so that it fills most of the picture; or draw the weld line yourself.",
  "two-beads": () =>
    "More than one bead was found in this photo. Draw the weld line along the one you mean, or photograph it alone.",
  "line-unclear": () =>
    "Where the bead begins and ends is not clear enough on this photo to be proposed. Draw the weld line from start to crater.",
};

export function traceSentence(issue: TraceIssue): string {
  return traceSentences[issue.code](issue);
}
