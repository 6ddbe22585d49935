import type { Source } from "@/lib/base";
import type { MeasuredMark } from "@/lib/measure";
import type { ImperfectionId } from "@/lib/trade";
import type { LimitSymbol } from "./criteria";
import type { SectionFigureId } from "./types";

/** What is stated about the weld, and what was seen in the section beside its outline. Null: not known. */
export interface SectionGiven {
  /** One of `sectionSets`. */
  readonly setId: string;
  readonly specifiedLegMm: number | null;
  readonly specifiedThroatMm: number | null;
  /** Of the thinner plate. */
  readonly plateThicknessMm: number | null;
  /** Of limits that a code states in both systems. */
  readonly units: "si" | "us";
  /**
   * Marks on the section's photo, measured. Across the section a line is the greatest size: for an undercut from the
   * plate's surface to its bottom, which is its depth.
   */
  readonly marks: readonly Pick<
    MeasuredMark,
    "id" | "imperfection" | "lengthMm" | "diameterMm" | "depthMm"
  >[];
  /** Looked for in the section; what is neither marked nor here stays open. */
  readonly lookedFor: readonly ImperfectionId[];
}

export type SectionMissing =
  | { readonly kind: "figure"; readonly figure: SectionFigureId }
  | { readonly kind: "stated"; readonly what: LimitSymbol }
  | { readonly kind: "look"; readonly imperfections: readonly ImperfectionId[] }
  /** A mark without a size: set the scale, or draw it as a line. */
  | { readonly kind: "size"; readonly markId: string }
  /** Too close to the limit for this photo: pick finer, or measure under a microscope. */
  | { readonly kind: "closer"; readonly figure: SectionFigureId | null }
  /** A section shows no length along the weld. */
  | { readonly kind: "length-along" };

export interface SectionRow {
  readonly criterionId: string;
  readonly title: string;
  readonly document: string;
  readonly edition: string;
  readonly clause: string;
  readonly result: "meets" | "fails" | "open";
  /** The figure that decides: the one with the least room. Null: none read, or nothing to read. */
  readonly figure: SectionFigureId | null;
  readonly value: number | null;
  readonly expandedUncertainty: number | null;
  /** Null: none allowed, or not known. */
  readonly limit: { readonly comparison: "<=" | ">="; readonly value: number } | null;
  /** Marks that count against the row. */
  readonly markIds: readonly string[];
  readonly missing: readonly SectionMissing[];
  readonly source: Source;
  readonly checkYourCopy: boolean;
}

export interface SectionVerdict {
  readonly setId: string;
  readonly title: string;
  /** "meets" only when every row does. */
  readonly result: SectionRow["result"];
  readonly rows: readonly SectionRow[];
  readonly notCovered: readonly { readonly clause: string; readonly note: string }[];
}
