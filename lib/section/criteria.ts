import type { Source } from "@/lib/base";
import type { ImperfectionId } from "@/lib/trade";
import type { SectionJoint } from "./drawing";
import type { SectionFigureId } from "./types";

/** A length that a code states in both unit systems, in mm each. */
export interface BothUnits {
  readonly si: number;
  readonly us: number;
}

/** What a limit may rest on beside its numbers. */
export const limitSymbols = ["specified-leg", "specified-throat", "plate-thickness", "face-width"] as const;
export type LimitSymbol = (typeof limitSymbols)[number];

/** plus + times x symbol, at most `cap`. All lengths in mm. */
export interface LinearLimit {
  readonly plus: number | BothUnits;
  readonly times: number;
  readonly of: LimitSymbol | null;
  readonly cap: number | BothUnits | null;
}

/** By the width of the face: the first band whose `upTo` it does not pass. The last has no end. */
export interface BandedLimit {
  readonly by: "face-width";
  readonly bands: readonly { readonly upTo: BothUnits | null; readonly limit: LinearLimit }[];
}
export type SectionLimit = LinearLimit | BandedLimit;

export type SectionTest =
  /** Every one of the figures, less `less` where that is stated, on this side of the limit. */
  | {
      readonly test: "figure";
      readonly figures: readonly SectionFigureId[];
      readonly comparison: "<=" | ">=";
      readonly limit: SectionLimit;
      readonly less: "specified-throat" | null;
    }
  /** Melted on both sides, and no lack of fusion found. */
  | { readonly test: "fused" }
  | { readonly test: "none"; readonly imperfections: readonly ImperfectionId[] }
  /** Each one marked: its greatest size in the section. */
  | {
      readonly test: "each";
      readonly imperfections: readonly ImperfectionId[];
      readonly limit: SectionLimit;
      /** Allowed in short stretches only where the plate is no thicker: a section shows no length. Null: everywhere. */
      readonly onlyShortUpToMm: number | null;
    };

export interface SectionCriterion {
  readonly id: string;
  readonly title: string;
  readonly clause: string;
  readonly test: SectionTest;
  readonly source: Source;
}

/** Whether the code states some of its limits in millimetres and in inches on its own, each a little different. */
export function hasTwoUnitSystems({ criteria }: SectionCriteriaSet): boolean {
  return criteria.some(({ test }) => "limit" in test && isInBoth(test.limit));
}

function isInBoth(limit: SectionLimit): boolean {
  if ("bands" in limit) return limit.bands.some((band) => band.upTo !== null || isInBoth(band.limit));
  return typeof limit.plus !== "number" || (limit.cap !== null && typeof limit.cap !== "number");
}

export interface SectionCriteriaSet {
  readonly id: string;
  readonly title: string;
  readonly document: string;
  readonly edition: string;
  readonly joints: readonly SectionJoint[];
  readonly criteria: readonly SectionCriterion[];
  /** What the code asks of a section and this set does not judge: clause -> why. */
  readonly notCovered: readonly { readonly clause: string; readonly note: string }[];
}
