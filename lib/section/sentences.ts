import { measureSentences, type MeasureIssue, type MeasureIssueCode } from "@/lib/measure";
import type { SectionEdgeRole } from "./drawing";
import type { SectionIssue, SectionIssueCode } from "./types";

/** What an edge is called in a sentence. */
export const edgeNames: Readonly<Record<SectionEdgeRole, string>> = {
  "plate-1": "the face of plate 1",
  "plate-2": "the face of plate 2",
  face: "the line of the plates' face",
  back: "the line of the plates' back",
  "groove-1": "the prepared joint face of plate 1",
  "groove-2": "the prepared joint face of plate 2",
};

const edge = ({ data }: SectionIssue): string => edgeNames[data["role"] as SectionEdgeRole] ?? "this edge";

type OwnCode = Exclude<SectionIssueCode, MeasureIssueCode>;
const own: Readonly<
  Record<OwnCode | "outline-crosses-itself" | "beyond-horizon", (issue: SectionIssue) => string>
> = {
  "draw-outline": () => "Outline the weld metal, all that was melted, to read its sizes.",
  "draw-edge": (one) => `Draw ${edge(one)} to read what is measured from it.`,
  "mark-root": () => "Mark the deepest point of the root to read the penetration.",
  "edge-has-no-direction": (one) => `All points of ${edge(one)} lie in one place. Draw it longer.`,
  "edges-parallel": () => "The two plates are drawn parallel, so they meet in no corner. Draw them again.",
  "outline-crosses-itself": () => "The outline crosses itself, so it holds no area. Move its corners apart.",
  "toes-not-found": () =>
    "The outline does not come to the edges where the toes should be. Move it there, or say where the toes are.",
  "edge-twice": (one) => `There are two lines for ${edge(one)}. Take one away.`,
  "edge-of-other-joint": (one) =>
    `A joint of this kind has no use for ${edge(one)}. Take it away or change the joint.`,
  "root-off-outline": ({ data }) =>
    `The root point lies ${data["mm"] ?? "some"} mm off the outline. One of the two is wrong.`,
  "no-thickness": () => "Draw the line of the plates' back, or say how thick the plate is.",
  "unknown-set": ({ data }) =>
    `There are no criteria "${data["id"] ?? ""}" for a section. Choose from the list.`,
  "beyond-horizon": () => "Part of this drawing lies where the plane of the scale is no longer in the photo.",
};

/** One clear sentence about what to do, per expected failure. */
export const sectionSentences: Readonly<Record<SectionIssueCode, (issue: SectionIssue) => string>> = {
  ...(measureSentences as Readonly<Record<MeasureIssueCode, (issue: MeasureIssue) => string>> as Readonly<
    Record<MeasureIssueCode, (issue: SectionIssue) => string>
  >),
  ...own,
};

export function sectionSentence(issue: SectionIssue): string {
  return sectionSentences[issue.code](issue);
}
