import type { Issue, Source } from "@/lib/base";
import { judgedQuantities, type Quantity } from "@/lib/measure";
import type { ImperfectionId } from "@/lib/trade";
import type { NotCarried } from "./shop-criteria";
import type { WeldKind } from "./types";
import type { WeldFactName } from "./weld-fact-names";

export const rowResults = ["fails", "open", "meets", "not-applicable"] as const;
export type RowResult = (typeof rowResults)[number];

/** A reading that would settle an open row, and the gauge that gives it. Words belong to the screen. */
export interface MissingReading {
  readonly quantity: MissingQuantity;
  readonly gauge: GaugeId;
  /** The observation it belongs to; null when it belongs to the whole weld. */
  readonly observationId: string | null;
}

export const missingQuantities = [
  "depth",
  "height",
  "diameter",
  "length",
  "place-along",
  "largest-pore",
  "pore-count",
  ...judgedQuantities,
  "root-width",
  "undersize-length",
  "thickness",
  "specified-throat",
  "specified-leg",
  "weld-length",
  "single-sided",
  "complete-penetration",
  "transverse-to-tension",
  "stiffener-to-web",
  "lap-edge",
  "seam",
  "weld-kind",
  "look",
] as const;
export type MissingQuantity = (typeof missingQuantities)[number];

export const gaugeIds = [
  "undercut-gauge",
  "fillet-gauge",
  "throat-gauge",
  "cap-gauge",
  "misalignment-gauge",
  "calliper",
  "rule",
  "protractor",
  "feeler-gauge",
  "magnifier",
  "eye",
  "drawing",
] as const;
export type GaugeId = (typeof gaugeIds)[number];

export type RowReason =
  | "none-allowed"
  | "none-found"
  /** Not two of them marked in one cross section. */
  | "none-together"
  | "within-limit"
  | "over-limit"
  | "straddles-limit"
  | "readings-disagree"
  | "reading-missing"
  | "weld-fact-missing"
  | "not-looked-for"
  | "does-not-apply"
  | "allowed"
  | "qualified-person-decides";

export interface RowLimit {
  readonly comparison: "<=" | ">=";
  readonly value: number;
  readonly unit: Quantity["unit"] | "count";
  /** Expanded uncertainty of the limit itself, where it depends on a measured width. */
  readonly expandedUncertainty: number;
  /** The formula in the symbols of the standard, e.g. "min(0.1 t, 0.5)". */
  readonly formula: string;
}

/** One clause applied to this weld. */
export interface VerdictRow {
  readonly ruleId: string;
  readonly title: string;
  readonly imperfections: readonly ImperfectionId[];
  readonly clause: string;
  readonly edition: string;
  readonly result: RowResult;
  readonly reason: RowReason;
  readonly limit: RowLimit | null;
  /** The figure compared: the worst reading, sum or count. Null when there is none. */
  readonly value: number | null;
  /** Expanded uncertainty (k = 2) of `value`. */
  readonly expandedUncertainty: number | null;
  /** Room left: positive inside the limit, negative beyond it, in the limit's unit. */
  readonly margin: number | null;
  /** Where it is not known which limit applies: each that may. `limit` is then null. */
  readonly limitsPossible: readonly RowLimit[];
  /** U of the figure is more than a third of the limit: a finer gauge says more (own rule of thumb; JCGM 106, 8.3). */
  readonly coarse: boolean;
  /** Ids of observations and names of bead readings that went in. */
  readonly readingsUsed: readonly string[];
  /** The figures themselves: "throat", "o1.depth". */
  readonly figuresUsed: readonly string[];
  readonly missing: readonly MissingReading[];
  readonly notLookedFor: readonly ImperfectionId[];
  readonly source: Source;
  /** The figure is from memory, an older edition or a cut text: check it against the licensed copy. */
  readonly checkYourCopy: boolean;
}

export const verdicts = ["accept", "reject", "cannot-say"] as const;

/** Readings that cannot stand together. While there are any, nothing is accepted. */
export interface Contradiction {
  readonly code: ContradictionCode;
  /** Names of bead readings, facts of the weld and observations, as in `figuresUsed`. */
  readonly between: readonly string[];
  /** What to read again first. */
  readonly again: readonly MissingReading[];
}

export const contradictionCodes = [
  /** Legs, throat, convexity and width are no one fillet. */
  "fillet-readings",
  /** The convexity says the face is full, the throat that it is hollow enough to matter. */
  "hollow-or-full",
  /** Ticked as looked for and absent, yet a reading is beyond the limit. */
  "ticked-absent",
  /** A mark's length and the place it was given along the weld. */
  "length-and-place",
  /** About so many pores, in a mark that is judged as one hole because nobody said how they lie. */
  "count-of-one",
  /** Leg and throat asked for do not belong to one fillet. */
  "leg-and-throat-asked",
  /** Partial penetration stated for a joint of complete penetration. */
  "penetration-asked",
] as const;
export type ContradictionCode = (typeof contradictionCodes)[number];

/** A figure that was given and that no row went by. */
export interface UnusedReading {
  readonly figure: string;
  /** "guess": a count by eye, of which no size and no sum is made. */
  readonly why: "not-needed" | "no-rule" | "guess";
  /** Taken by a hand, or off the photo by itself. */
  readonly by: "hand" | "photo";
}

export interface Verdict {
  readonly criteriaId: string;
  readonly criteriaTitle: string;
  readonly edition: string;
  /** Null: the whole weld. Else the verdict speaks of these imperfections alone. */
  readonly only: readonly ImperfectionId[] | null;
  readonly verdict: (typeof verdicts)[number];
  /** Worst first: fails, open, meets, not applicable; within each the smallest margin in proportion to the limit. */
  readonly rows: readonly VerdictRow[];
  /** Something was marked, looked for or read. False: nobody has looked yet, and no word is worth anything. */
  readonly lookedAt: boolean;
  readonly contradictions: readonly Contradiction[];
  /** Every reading that was given is used by a row or stands here. */
  readonly unused: readonly UnusedReading[];
  /** Every missing reading once, most useful first. */
  readonly missing: readonly MissingReading[];
  readonly notLookedFor: readonly ImperfectionId[];
  /** Settings as they were applied, defaults included: a record can be judged again the same way. */
  readonly settings: Readonly<Record<string, string | boolean | number>>;
  /** Observations that call for a qualified inspector before anything is changed or repaired. */
  readonly referToInspector: readonly string[];
  /** Parts of the code this set does not carry, and why: clause -> reason. */
  readonly notCovered: readonly { readonly clause: string; readonly note: string }[];
  /** Clauses that the shop's own limits did not carry over: nothing here looked at them. Null: none is known of. */
  readonly notCarried: NotCarried | null;
  /** Decided rows whose figure must be checked against the licensed copy. */
  readonly checkYourCopy: boolean;
}

export type AcceptIssueCode = "bad-input" | "unknown-criteria" | "bad-setting";
export type AcceptIssue = Issue<AcceptIssueCode>;

/** What `listCriteria` tells a picker about one set. */
export interface CriteriaSummary {
  readonly id: string;
  /** Which version of the shop's own limits it is; null: a set that comes with the program. */
  readonly shop: { readonly key: string; readonly version: number } | null;
  readonly title: string;
  readonly document: string;
  readonly edition: string;
  readonly weldKinds: readonly WeldKind[];
  readonly settings: readonly CriteriaSetting[];
  readonly imperfections: readonly ImperfectionId[];
  readonly rules: readonly {
    readonly id: string;
    readonly clause: string;
    readonly title: string;
    /** Limits of its variants in mm, SI units, in the symbols of the formulas; "none" where none is allowed. */
    readonly limits: readonly string[];
    readonly checkYourCopy: boolean;
  }[];
  /** What a person is asked about a weld of each kind. */
  readonly weldFacts: Readonly<Record<WeldKind, readonly WeldFactName[]>>;
}

/** A choice a code leaves open. The default is the stricter one. */
export interface CriteriaSetting {
  readonly id: string;
  readonly title: string;
  readonly choices: readonly { readonly value: string | boolean; readonly title: string }[];
  readonly default: string | boolean;
  readonly note: string;
}
