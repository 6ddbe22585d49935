import { legOfThroat, throatOfLeg, type MeasuredMark, type Calibrated } from "@/lib/measure";
import {
  judgeSection,
  measureSection,
  sectionSets,
  type SectionCriteriaSet,
  type SectionJoint,
  type SectionMeasures,
  type SectionVerdict,
} from "@/lib/section";
import type { BeadContent } from "./bead";
import { sectionOf, type PhotoSection } from "./photo-section";

/** What a cut and etched weld says. */
export interface SectionAssessment {
  readonly section: PhotoSection;
  readonly measures: SectionMeasures;
  /** Null: no criteria chosen, or none that hold for this joint. */
  readonly verdict: SectionVerdict | null;
}

/** Degrees off the square up to which a leg and a throat that are asked for say the same. Own choice. */
const SQUARE_WITHIN_DEG = 5;

/** The section on one photo, measured and judged. Null where the photo shows none. */
export function assessSection(
  { setup, judgement }: Pick<BeadContent, "setup" | "judgement">,
  photo: BeadContent["photos"][number],
  marks: readonly MeasuredMark[],
  calibration: Calibrated,
): SectionAssessment | null {
  const section = sectionOf(photo, setup.joint);
  if (section === null) return null;
  const plateThicknessMm = setup.thicknessMm;
  const measures = measureSection(section, calibration, { plateThicknessMm });
  const set = setFor(judgement.sectionSetId ?? null, section.joint);
  const verdict =
    set &&
    judgeSection(measures.figures, {
      setId: set.id,
      ...asked(section, measures, setup.targetLegMm),
      plateThicknessMm,
      units: judgement.criteriaSettings["units"] === "us" ? "us" : "si",
      marks,
      lookedFor: section.lookedFor,
    });
  return { section, measures, verdict: verdict?.ok ? verdict.value : null };
}

/** Sets that hold for a joint. */
export function sectionSetsFor(joint: SectionJoint): readonly SectionCriteriaSet[] {
  return sectionSets.filter(({ joints }) => joints.includes(joint));
}

function setFor(id: string | null, joint: SectionJoint): SectionCriteriaSet | null {
  return sectionSetsFor(joint).find((set) => set.id === id) ?? null;
}

/**
 * The leg and the throat that are asked for. One follows from the other only where the plates stand square: of a skewed
 * joint nobody can say which leg a throat was meant with.
 */
function asked({ askedThroatMm }: PhotoSection, { figures }: SectionMeasures, legMm: number | null) {
  const angle = figures["joint-angle"]?.value ?? null;
  const isSquare = angle === null || Math.abs(angle - 90) <= SQUARE_WITHIN_DEG;
  const throatOf = (leg: number | null) => (leg === null || !isSquare ? null : throatOfLeg(leg, 90));
  const legOf = (throat: number | null) => (throat === null || !isSquare ? null : legOfThroat(throat, 90));
  return {
    specifiedLegMm: legMm ?? legOf(askedThroatMm),
    specifiedThroatMm: askedThroatMm ?? throatOf(legMm),
  };
}
