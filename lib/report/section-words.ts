import type { SectionStep } from "@/lib/assess";
import {
  sectionFigures,
  sectionReportFields,
  type ReportField,
  type SectionJoint,
  type SectionMissing,
} from "@/lib/section";
import { imperfections } from "@/lib/trade";
import { sectionEdgeSteps } from "./section-edge-words";
import { verdictWords } from "./verdict-words";

export const sectionJointWords: Readonly<Record<SectionJoint, string>> = {
  fillet: "Fillet: T, corner or lap",
  butt: "Butt weld",
};

/** One sentence that says what to do next. */
export function sectionStepSentence(step: SectionStep | null): string {
  switch (step?.kind) {
    case undefined:
      return "All drawn. Take a tool in hand to drag a point.";
    case "joint":
      return "Say which joint was cut.";
    case "scale":
      return "Set the scale: pick a length you know in the cut face.";
    case "outline":
      return "Zoom in until the weld fills the picture. Then tap round all the metal that was melted, both toes among the points.";
    case "edge":
      return sectionEdgeSteps[step.role];
    case "root":
      return "Tap the deepest point of the root.";
  }
}

/** The verdict on a section in the words of every verdict. */
export const sectionVerdictWords = {
  meets: verdictWords.accept,
  fails: verdictWords.reject,
  open: verdictWords["cannot-say"],
} as const;

/**
 * Heads of the examination's report that are written down here. Not the examiner's: no name goes into a text that is frozen
 * with a record, and whoever signs stands there anyway.
 */
export const sectionWrittenFields: readonly ReportField[] = sectionReportFields.filter(
  ({ id, from }) => from === "person" && id !== "examiner",
);

const statedWords = {
  "specified-leg": "the leg that is asked for (target leg in the set-up)",
  "specified-throat": "the throat that is asked for",
  "plate-thickness": "the thickness of the thinner plate (in the set-up)",
  "face-width": "the width of the face",
} as const;

/** What a row of the macro criteria still wants. `markNumber`: of a mark on this photo. */
export function sectionMissingText(
  missing: SectionMissing,
  markNumber: (id: string) => number | null,
): string {
  switch (missing.kind) {
    case "figure":
      return `not read yet: ${sectionFigures[missing.figure].name.toLowerCase()}`;
    case "stated":
      return `not stated: ${statedWords[missing.what]}`;
    case "look":
      return `nobody has said they looked for: ${missing.imperfections.map((id) => imperfections[id].name.toLowerCase()).join(", ")}`;
    case "size":
      return `mark ${markNumber(missing.markId) ?? ""} has no size: set the scale, or draw it as a line`;
    case "closer":
      return "too close to the limit for this photo: zoom in and place the points again, or measure under a microscope";
    case "length-along":
      return "in plate this thin only short stretches are allowed, and a section shows no length along the weld";
  }
}
