import type { Assessment, BeadContent, PhotoFacts, PhotoSection } from "@/lib/assess";
import {
  etchingCaution,
  sectionSentence,
  sectionSets,
  type SectionFigureId,
  type SectionPlaces,
} from "@/lib/section";
import type { UnitPreferences } from "@/lib/units";
import type { SheetClause } from "./sheet-clause";
import { sectionCrop, type PhotoCrop } from "./section-crop";
import { sectionClauses, sectionFigureRows } from "./section-rows";
import { sectionVerdictWords, sectionWrittenFields } from "./section-words";

/** A cut and etched weld on paper: what is drawn over its photo, its figures, and the macro criteria row by row. */
export interface SheetSection {
  readonly drawing: PhotoSection;
  readonly places: SectionPlaces;
  /** The part of the photo that shows the weld; null while it is not outlined. */
  readonly crop: PhotoCrop | null;
  readonly figures: readonly { readonly id: SectionFigureId; readonly name: string; readonly text: string }[];
  /** Figures that cannot be read from what is drawn, by name. */
  readonly unread: readonly string[];
  /** What stands in the way of them, a sentence each. */
  readonly problems: readonly string[];
  readonly verdict: {
    readonly word: string;
    readonly long: string;
    readonly criteria: string;
    readonly checkYourCopy: boolean;
    readonly clauses: readonly SheetClause[];
    /** Clauses that the set does not judge. */
    readonly notCovered: readonly string[];
  } | null;
  /** What was written for the report of the examination. */
  readonly report: readonly { readonly label: string; readonly value: string }[];
  readonly caution: string;
}

/** The section of one photo; null where nothing was drawn and nothing is asked. */
export function sheetSection(
  content: BeadContent,
  { id: photoId, ...facts }: PhotoFacts,
  assessment: Assessment,
  units: UnitPreferences,
): SheetSection | null {
  const photo = content.photos.find(({ id }) => id === photoId);
  const found = assessment.photos.find((one) => one.photoId === photoId)?.section ?? null;
  if (!photo || found === null || (photo.section === undefined && found.verdict === null)) return null;
  const rows = sectionFigureRows(found.measures, units);
  const { marks } = photo.drawing;
  const clauses = sectionClauses(found, (id) => numberIn(marks, id), units);
  return {
    drawing: found.section,
    places: found.measures.places,
    crop: sectionCrop(found.section, facts),
    figures: rows.flatMap(({ id, name, text }) => (text === null ? [] : [{ id, name, text }])),
    unread: rows.filter(({ text }) => text === null).map(({ name }) => name),
    problems: found.measures.issues.map(sectionSentence),
    verdict: found.verdict && {
      word: sectionVerdictWords[found.verdict.result].short,
      long: sectionVerdictWords[found.verdict.result].long,
      criteria: `${found.verdict.title}, ${editionOf(found.verdict.setId)}`,
      checkYourCopy: clauses.some(({ checkYourCopy }) => checkYourCopy),
      clauses: clauses.map(({ resultWord, title, detail, clause, checkYourCopy }) => ({
        result: resultWord,
        title,
        detail,
        clause,
        checkYourCopy,
      })),
      notCovered: found.verdict.notCovered.map(({ clause, note }) => `${clause}: ${note}`),
    },
    report: sectionWrittenFields.flatMap(({ id, title }) => {
      const value = found.section.report[id];
      return value ? [{ label: title, value }] : [];
    }),
    caution: etchingCaution,
  };
}

const editionOf = (setId: string): string => sectionSets.find(({ id }) => id === setId)?.edition ?? "";

function numberIn(marks: readonly { readonly id: string }[], id: string): number | null {
  const index = marks.findIndex((mark) => mark.id === id);
  return index < 0 ? null : index + 1;
}
