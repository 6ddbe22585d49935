import { marksAcrossPhotos, type Assessed, type Assessment } from "@/lib/assess";
import type { Verdict } from "@/lib/accept";
import type { Quantity } from "@/lib/measure";
import { sheetDocument, type SheetBead, type SheetDocument } from "@/lib/report";
import { inch, metric } from "@/lib/units";
import { sectionResults, signSection } from "./sign-section";
import { worst } from "./weld-results";
import { decisionRuleText } from "./decision-rule";
import type { InspectionResult, SignedBead } from "./signed-record";

/** A bead of the job: as the sheet knows it, with the weld it lies on. */
export interface InspectedBead extends SheetBead {
  readonly id: string;
  readonly weldId: string;
}

const resultOf: Readonly<Record<Verdict["verdict"], InspectionResult>> = {
  accept: "accepted",
  reject: "not-accepted",
  "cannot-say": "open",
};

/** The bead with everything said of it, by the code that makes its sheet; without the welder's name. */
export function signBead(bead: Assessed<InspectedBead>): SignedBead {
  const { content, assessment } = bead;
  const [mm, inches] = [sheetDocument(bead, metric), sheetDocument(bead, inch)];
  const verdict = assessment.verdict?.ok ? assessment.verdict.value : null;
  return {
    id: bead.id,
    number: bead.number,
    revision: bead.revision,
    title: content.title,
    weldId: bead.weldId,
    setup: content.setup,
    judgement: content.judgement,
    photos: content.photos.flatMap(({ id }, index) => {
      const { section: _, ...photo } = mm.photos[index] ?? {};
      const section = signSection(assessment, id, mm.photos[index]?.section, inches.photos[index]?.section);
      return "sha256" in photo
        ? [{ id, ...photo, labels: { ...photo.labels }, ...(section ? { section } : {}) }]
        : [];
    }),
    marks: mm.marks.map((mark, i) => ({
      ...mark,
      size: { metric: mark.size, inch: inches.marks[i]?.size ?? "" },
    })),
    sizes: sizesOf(bead, assessment),
    verdict: verdict && signedVerdict(verdict, mm, inches),
    result: worst([verdict ? resultOf[verdict.verdict] : "open", ...sectionResults(assessment)]),
  };
}

const sizeOf = (quantity: Quantity | null | undefined) =>
  quantity ? { value: quantity.value, expandedUncertainty: quantity.expandedUncertainty } : null;

function sizesOf(bead: InspectedBead, assessment: Assessment): SignedBead["sizes"] {
  return marksAcrossPhotos(bead.content, assessment.photos).map(({ key, mark, measured }) => ({
    key,
    imperfection: mark.imperfection,
    length: sizeOf(measured?.lengthMm),
    diameter: sizeOf(measured?.diameterMm),
    depth: sizeOf(measured?.depthMm),
    height: sizeOf(measured?.heightMm),
  }));
}

function signedVerdict(
  verdict: Verdict,
  mm: SheetDocument,
  inches: SheetDocument,
): NonNullable<SignedBead["verdict"]> {
  return {
    criteriaId: verdict.criteriaId,
    criteria: verdict.criteriaTitle,
    edition: verdict.edition,
    settings: { ...verdict.settings },
    decisionRule: decisionRuleText(verdict.settings),
    missing: [...(mm.verdict?.missing ?? [])],
    notLookedFor: [...(mm.verdict?.notLookedFor ?? [])],
    ...(mm.verdict?.notCarried ? { notCarried: mm.verdict.notCarried } : {}),
    clauses: (mm.verdict?.clauses ?? []).map((one, i) => ({
      ...one,
      detail: { metric: one.detail, inch: inches.verdict?.clauses[i]?.detail ?? "" },
    })),
    rows: verdict.rows
      .filter(({ result }) => result !== "not-applicable")
      .map(({ ruleId, clause, edition, result, reason, value, expandedUncertainty, limit }) => ({
        ruleId,
        clause,
        edition,
        result,
        reason,
        value,
        expandedUncertainty,
        limit: limit?.value ?? null,
        unit: limit?.unit ?? null,
        formula: limit?.formula ?? null,
      })),
  };
}
