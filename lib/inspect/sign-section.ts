import type { Assessment } from "@/lib/assess";
import type { SheetSection } from "@/lib/report";
import type { SectionVerdict } from "@/lib/section";
import type { InspectionResult, SignedSection } from "./signed-record";

const resultOf: Readonly<Record<SectionVerdict["result"], InspectionResult>> = {
  meets: "accepted",
  fails: "not-accepted",
  open: "open",
};

/** What the cut welds of a bead come to, where somebody chose what they are judged by. */
export function sectionResults({ photos }: Assessment): readonly InspectionResult[] {
  return photos.flatMap(({ section }) => (section?.verdict ? [resultOf[section.verdict.result]] : []));
}

/** A section as it is signed: the words of the sheet in both units, and the numbers they came from. */
export function signSection(
  assessment: Assessment,
  photoId: string,
  mm: SheetSection | undefined,
  inches: SheetSection | undefined,
): SignedSection | null {
  const found = assessment.photos.find((one) => one.photoId === photoId)?.section;
  if (!found || !mm) return null;
  const { verdict } = found;
  return {
    drawing: mm.drawing,
    figures: mm.figures.flatMap(({ id, name, text }, i) => {
      const quantity = found.measures.figures[id];
      if (quantity === null) return [];
      const { value, expandedUncertainty, unit } = quantity;
      const both = { metric: text, inch: inches?.figures[i]?.text ?? "" };
      return [{ id, name, value, expandedUncertainty, unit, text: both }];
    }),
    unread: [...mm.unread],
    verdict: verdict &&
      mm.verdict && {
        setId: verdict.setId,
        criteria: mm.verdict.criteria,
        result: resultOf[verdict.result],
        clauses: mm.verdict.clauses.map((one, i) => ({
          ...one,
          detail: { metric: one.detail, inch: inches?.verdict?.clauses[i]?.detail ?? "" },
        })),
        notCovered: [...mm.verdict.notCovered],
      },
  };
}
