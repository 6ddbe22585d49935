import type { StripIssue, StripIssueCode } from "./find-strip";

/** One clear sentence about what to do, per expected failure. */
export const stripSentences: Readonly<Record<StripIssueCode, (issue: StripIssue) => string>> = {
  "strip-not-found": () =>
    "No scale strip was found in this photo. Lay it flat beside the weld, whole and in good light, or set the scale by hand.",
  "strip-cut": () =>
    "Only part of the scale strip can be seen. Take the photo again with both of its ends in view.",
  "strip-too-small": () => "The scale strip is too small in this photo to measure by. Move closer.",
  "strip-bent": () => "The scale strip is bent or lifted. Lay it flat and take the photo again.",
};

export function stripSentence(issue: StripIssue): string {
  return stripSentences[issue.code](issue);
}
