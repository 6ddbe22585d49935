import type { Source } from "@/lib/base";
import { beadQuantityRows, forEachQuantity } from "@/lib/measure";
import type { ImperfectionId, Place } from "@/lib/trade";
import type { NotCarried } from "./shop-criteria";
import type { WeldFacts, WeldKind } from "./types";
import type { CriteriaSetting, GaugeId, MissingQuantity } from "./verdict";

/**
 * Acceptance rules as data. A set is a list of criteria (one clause each), a criterion a list of variants of which the
 * first that applies counts, a variant a list of tests that must all be met. One evaluator reads them all.
 *
 * Symbols are those of ISO 5817 clause 4: t wall, s nominal butt thickness, a nominal throat, z specified leg,
 * b width of face or reinforcement, L length of the weld. r is the width of the root reinforcement,
 * m the longest leg, h the height of the reinforcement and A the throat of a fillet, all three as measured.
 */
export const symbolNames = ["t", "s", "a", "b", "z", "L", "r", "m", "h", "A"] as const;
export type SymbolName = (typeof symbolNames)[number];

/** mm; or a pair where a code states both unit systems, which are applied independently and never mixed. */
export type Constant = number | { readonly si: number; readonly us: number };

export type Formula =
  | Constant
  /** A factor that differs between the unit systems is a pair like any constant. */
  | { readonly times: Constant; readonly of: SymbolName }
  | { readonly sum: readonly Formula[] }
  | { readonly min: readonly Formula[] }
  | { readonly max: readonly Formula[] };

export type WeldFlag =
  | "alongLapEdge"
  | "singleSided"
  | "transverseToTension"
  | "stiffenerToWeb"
  | "completePenetration";

export type Condition =
  | { readonly kind: readonly WeldKind[] }
  | { readonly flag: WeldFlag; readonly is: boolean }
  | { readonly seam: readonly NonNullable<WeldFacts["seam"]>[] }
  | { readonly setting: string; readonly is: string | boolean }
  | {
      readonly symbol: SymbolName;
      readonly above?: Constant;
      readonly atLeast?: Constant;
      readonly upTo?: Constant;
      readonly below?: Constant;
    };

export type SizeName = "depth" | "height" | "diameter" | "length";

/** Figures of the whole bead, from its readings and what was specified. */
export const beadFigures = [
  "leg-shortfall",
  "leg-least",
  "leg-greatest",
  "leg-difference",
  "throat-shortfall",
  "throat-excess",
  "convexity",
  "reinforcement",
  "width",
  "toe-angle",
  "misalignment",
  "root-gap",
] as const;
export type BeadFigure = (typeof beadFigures)[number];

/** Which observations enter a total: those whose size is (or may be) beyond a threshold. */
export interface Threshold {
  readonly size: SizeName;
  readonly bound: "above" | "at-least";
  readonly value: Formula;
}

export type Test =
  | { readonly test: "none-allowed" }
  | { readonly test: "allowed" }
  | { readonly test: "person-decides" }
  /** Every observation by itself; of several sizes the greatest that was read. */
  | {
      readonly test: "each";
      readonly size: readonly SizeName[];
      readonly limit: Formula;
      readonly beyond?: "person-decides";
    }
  /** The worst stretch of `window` mm, or the whole weld when null. */
  | {
      readonly test: "total";
      readonly of: readonly SizeName[] | "count";
      readonly window: Constant | null;
      readonly only?: Threshold;
      readonly limit: Formula;
      /** Without observations this figure settles it: nothing to total when it is not above zero. */
      readonly unless?: BeadFigure;
    }
  /** Sum of depths and heights of observations that lie in one cross section. */
  | { readonly test: "stack"; readonly limit: Formula; readonly beyond?: "person-decides" }
  | {
      readonly test: "bead";
      readonly figure: BeadFigure;
      readonly comparison: "<=" | ">=";
      readonly limit: Formula;
      /** Beyond the limit it is no reject: a qualified person decides. The same on `each` and `stack`. */
      readonly beyond?: "person-decides";
      /** Looked for and absent is enough; without it a reading is needed. */
      readonly bySight?: boolean;
      /** A root gap wider than this is taken off the legs. */
      readonly lessGapOver?: Constant;
    }
  /** No number is known for this figure: above nought a qualified person decides; looked for and absent is enough. */
  | { readonly test: "figure-by-person"; readonly figure: BeadFigure };

export interface Variant {
  readonly when: readonly Condition[];
  readonly tests: readonly Test[];
  readonly source: Source;
}

export interface Criterion {
  readonly id: string;
  readonly clause: string;
  readonly title: string;
  readonly imperfections: readonly ImperfectionId[];
  /** Only observations in (or not in) these places; an observation without a place counts. */
  readonly places?: { readonly only?: readonly Place[]; readonly not?: readonly Place[] };
  /** No clause asks for it: judged when seen, silent otherwise. */
  readonly onlyWhenSeen?: boolean;
  /** Judged when the reading was taken, silent otherwise. */
  readonly onlyWhenRead?: boolean;
  readonly variants: readonly Variant[];
}

/** One edition (or version) of a set as the evaluator reads it. */
export interface CriteriaSet {
  readonly id: string;
  /** What its editions share: the key of its book, or of the shop's own limits. */
  readonly family: string;
  readonly title: string;
  readonly document: string;
  readonly edition: string;
  readonly weldKinds: readonly WeldKind[];
  /** Outside it the set says nothing: the verdict stays open. */
  readonly scope: readonly Condition[];
  readonly scopeSource: Source;
  readonly settings: readonly CriteriaSetting[];
  readonly criteria: readonly Criterion[];
  readonly notCovered: readonly { readonly clause: string; readonly note: string }[];
  /** Of the shop's own limits: what was not carried over from the code they started from. */
  readonly notCarried?: NotCarried | null;
}

/** What a clause says from one edition on, until a later entry; null: the clause ends there. */
export interface DatedVariants {
  readonly from: string;
  readonly variants: readonly Variant[] | null;
}

/** A clause over the editions of its document. New figures are appended; those that stand are never changed. */
export interface DatedCriterion extends Omit<Criterion, "variants"> {
  readonly editions: readonly DatedVariants[];
}

export interface BookEdition {
  readonly name: string;
  /** What of this edition is not carried, and why. */
  readonly notCovered: CriteriaSet["notCovered"];
}

/** A set over the editions of its document; `setAt` reads one of them. */
export interface CriteriaBook extends Omit<
  CriteriaSet,
  "id" | "family" | "edition" | "criteria" | "notCovered"
> {
  readonly key: string;
  /** In the order in which they appeared. */
  readonly editions: readonly [BookEdition, ...BookEdition[]];
  /** The edition that the bare key names, for ever: what was judged by it stays what it was. */
  readonly bareKeyMeans: string;
  readonly criteria: readonly DatedCriterion[];
}

/** The gauge that gives a reading. Common practice, no source. */
export const gaugeFor: Readonly<Record<MissingQuantity, GaugeId>> = {
  depth: "undercut-gauge",
  height: "cap-gauge",
  diameter: "calliper",
  length: "rule",
  "place-along": "rule",
  "largest-pore": "calliper",
  "pore-count": "eye",
  ...forEachQuantity((quantity): GaugeId => beadQuantityRows[quantity].gauge),
  "root-width": "calliper",
  "undersize-length": "rule",
  thickness: "calliper",
  "specified-throat": "drawing",
  "specified-leg": "drawing",
  "single-sided": "drawing",
  "complete-penetration": "drawing",
  "transverse-to-tension": "drawing",
  "stiffener-to-web": "drawing",
  "lap-edge": "drawing",
  seam: "drawing",
  "weld-kind": "drawing",
  look: "eye",
};
