import type { MeasureIssue, MeasureIssueCode } from "./types";

/** One clear sentence about what to do, per expected failure. */
export const measureSentences: Readonly<Record<MeasureIssueCode, (issue: MeasureIssue) => string>> = {
  "no-scale": () => "No scale yet: set one to read sizes in millimetres.",
  "scale-points-coincide": () =>
    "Both points of the scale are the same. Pick two points a known length apart.",
  "scale-corners-crossed": () =>
    "The corners or edges of the scale do not make a rectangle. Pick them clockwise, from the top left.",
  "scale-too-small": () =>
    "The scale object is too small in the photo to measure by. Move closer, or use a longer length.",
  "scale-not-an-ellipse": () =>
    "The picks do not lie on the rim of a disc. Pick at least five, spread all around it.",
  "strip-does-not-fit": () =>
    "The corners of the strip do not lie in one plane. Lay it flat and photograph it again.",
  "surface-too-high": () =>
    "The marked surface is said to lie so far above the scale that the camera would touch it. Check the height.",
  "beyond-horizon": () => "This mark lies where the plane of the scale is no longer in the photo.",
  "outline-crosses-itself": () => "The outline crosses itself, so it has no area. Move its corners apart.",
  "no-weld-line": () => "Draw the line of the weld from start to crater to place marks along it.",
  foreshortened: () =>
    "Seen from above, a fillet's legs are foreshortened. Read the legs with a fillet gauge before judging.",
};

export function measureSentence(issue: MeasureIssue): string {
  return measureSentences[issue.code](issue);
}
