import { remembered, type Result } from "@/lib/base";
import type { Scale } from "@/lib/marks";
import { judge, type AcceptIssue, type ShopCriteria, type Verdict } from "@/lib/accept";
import {
  diagnose,
  type DiagnoseInput,
  type Diagnosis,
  type DiagnoseIssue,
  type ShopCounts,
} from "@/lib/diagnose";
import {
  calibrate,
  measureDrawing,
  measureWeldLine,
  type Calibrated,
  type MeasuredMark,
  type Quantity,
} from "@/lib/measure";
import { checkSetup, type SetupFinding } from "@/lib/setup";
import { assessSection, type SectionAssessment } from "./assess-section";
import type { BeadContent, PhotoFacts } from "./bead";
import { diagnoseInput } from "./diagnose-input";
import { judgeInput } from "./judge-input";
import { photoOptions } from "./photo-options";

/** One photo's marks in millimetres. */
export interface PhotoAssessment {
  readonly photoId: string;
  /** What its scale came to; where it came to nothing, why there are no sizes. */
  readonly calibration: Calibrated;
  readonly marks: readonly MeasuredMark[];
  /** Along the marked weld line; null without one or without scale. */
  readonly weldLengthMm: Quantity | null;
  /** Of a photo of a cut and etched weld; null on every other. */
  readonly section: SectionAssessment | null;
}

/** Everything Toeline has to say about one bead, computed from what was recorded and nothing else. */
export interface Assessment {
  readonly setup: readonly SetupFinding[];
  readonly photos: readonly PhotoAssessment[];
  /** What the diagnosis was made from. */
  readonly evidence: DiagnoseInput;
  readonly diagnosis: Result<Diagnosis, DiagnoseIssue>;
  /** null: no criteria chosen. */
  readonly verdict: Result<Verdict, AcceptIssue> | null;
}

/** What the whole installation knows beyond this one bead. */
export interface AssessContext {
  readonly shopCounts: ShopCounts;
  /** Versions of the shop's own limits a bead may be judged by: at least the one this bead names. */
  readonly shopSets: readonly ShopCriteria[];
  /** Width the photos were viewed at, in screen pixels: what one pick is worth depends on it. */
  readonly viewedWidthPx: number;
}

export const defaultAssessContext: AssessContext = { shopCounts: {}, shopSets: [], viewedWidthPx: 1000 };

/**
 * The one call from a recorded bead to sizes, causes and verdict. Pure: the browser and the server get the same answer.
 */
export function assess(
  content: BeadContent,
  photos: readonly PhotoFacts[],
  context: AssessContext = defaultAssessContext,
): Assessment {
  const measured = measurePhotos(content, photos, context);
  const evidence = diagnoseInput(content, measured, context.shopCounts);
  const verdictInput = judgeInput(content, measured, context.shopSets);
  return {
    setup: checked(content.setup),
    photos: measured,
    evidence,
    diagnosis: diagnose(evidence),
    verdict: verdictInput === null ? null : judge(verdictInput),
  };
}

/** The part of an assessment that is read off the photos: for a table of marks, which asks for no cause and no verdict. */
export function measurePhotos(
  content: BeadContent,
  photos: readonly PhotoFacts[],
  context: AssessContext = defaultAssessContext,
): readonly PhotoAssessment[] {
  return content.photos.map((photo) => measurePhoto(content, photo, photos, context));
}

/** Remembered: a set-up stays the same while marks are drawn, and its form need not be drawn again for them. */
const checked = remembered((setup: BeadContent["setup"]) => checkSetup(setup));

/** Remembered: a scale stays the same while marks are drawn beside it. */
const calibrated = remembered(
  (scale: Scale, widthPx: number | null, heightPx: number | null, viewedWidthPx: number): Calibrated =>
    calibrate(
      scale,
      photoOptions(widthPx === null || heightPx === null ? null : { widthPx, heightPx }, viewedWidthPx),
    ),
);

function measurePhoto(
  content: BeadContent,
  photo: BeadContent["photos"][number],
  facts: readonly PhotoFacts[],
  context: AssessContext,
): PhotoAssessment {
  const size = facts.find(({ id }) => id === photo.id) ?? null;
  const { scale } = photo.drawing;
  const { viewedWidthPx } = context;
  const calibration =
    scale === null
      ? calibrate(scale, photoOptions(size, viewedWidthPx))
      : calibrated(scale, size?.widthPx ?? null, size?.heightPx ?? null, viewedWidthPx);
  const marks = measureDrawing(photo.drawing, calibration);
  return {
    photoId: photo.id,
    calibration,
    marks,
    weldLengthMm: measureWeldLine(photo.drawing, calibration),
    section: assessSection(content, photo, marks, calibration),
  };
}
