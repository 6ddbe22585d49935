import type { Source } from "@/lib/base";
import { cite } from "@/lib/trade";

/** What a report of a macroscopic examination names. */
export interface ReportField {
  readonly id: string;
  readonly title: string;
  /** What to write there, in a few words. */
  readonly hint: string;
  /** Known to Toeline from elsewhere on the bead: nobody need write it twice. */
  readonly from: "person" | "bead" | "drawing" | "photo";
  readonly source: Source;
}

const iso = cite("iso-17639", "memory", {
  clause: "test report",
  note: "the list is ours from memory; the standard's own annex decides",
});
const field = (id: string, title: string, hint: string, from: ReportField["from"]): ReportField => ({
  id,
  title,
  hint,
  from,
  source: iso,
});

/** ISO 17639, macroscopic and microscopic examination of welds: the heads of its report, and nothing of its wording. */
export const sectionReportFields: readonly ReportField[] = [
  field("specimen", "Specimen", "number stamped on the coupon", "person"),
  field("parent-material", "Parent material", "grade and thickness", "bead"),
  field("filler", "Filler and shielding gas", "classification", "bead"),
  field("process", "Welding process and position", "as set on the machine", "bead"),
  field("joint", "Joint", "kind and preparation", "drawing"),
  field(
    "place",
    "Place and direction of the section",
    "mm from the start; across or along the weld",
    "person",
  ),
  field("kind", "Kind of examination", "macroscopic, etched or not etched", "person"),
  field("preparation", "Grinding and polishing", "last grit or paste", "person"),
  field("etchant", "Etchant", "what it is made of, and how strong", "person"),
  field("etching", "How it was etched", "dipped, swabbed or electrolytic; for how long", "person"),
  field("magnification", "Magnification", "of the examination, and of the picture", "photo"),
  field("found", "What was found", "imperfections and sizes", "drawing"),
  field("criteria", "Judged by", "standard, edition and level", "bead"),
  field("examiner", "Examiner and day", "name and signature on paper", "person"),
];

/** Etching is wet chemistry: shown wherever an etchant is asked for. */
export const etchingCaution =
  "Etchants burn skin and eyes and give off fumes. Follow their safety data sheet and local rules: goggles, gloves, fume hood, acid into water, and a trained person at hand.";
