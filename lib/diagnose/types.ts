import type { Source } from "@/lib/base";
import type { ImperfectionId } from "@/lib/trade";
import type { CauseId } from "./cause-ids";

/** What a number measures; the screen turns it into the person's unit. The SI-practical unit stands behind each. */
export const unitKinds = [
  "wire-feed", // m/min
  "voltage", // V
  "current", // A
  "small-length", // mm
  "travel-speed", // mm/min
  "gas-flow", // L/min
  "angle", // degrees
  "temperature", // °C
  "heat-input", // kJ/mm
  "count", // pieces
] as const;
export type UnitKind = (typeof unitKinds)[number];

/** A number in its SI-practical unit, with what it is and how far it may be off. */
export interface Amount {
  readonly quantity: string;
  readonly valueSi: number;
  /** The upper end, where the amount is a span. */
  readonly toSi?: number;
  readonly unitKind: UnitKind;
  /** Relative error to expect, e.g. 0.15; null for a reading that was entered. */
  readonly relativeError: number | null;
}

/** A sentence without numbers in it: numbers stand beside it as amounts, for the screen to format. */
export interface Statement {
  readonly sentence: string;
  readonly amounts: readonly Amount[];
  readonly source: Source;
}

export const evidenceKinds = ["mark", "look", "absent", "reading", "answer"] as const;
export type EvidenceKind = (typeof evidenceKinds)[number];

/** One piece of evidence for or against one cause, in order of weight. */
export interface WhyItem extends Statement {
  /** Stable key of the evidence, e.g. "mark:undercut", "reading:ctwdMm", "answer:polarity-lugs". */
  readonly key: string;
  readonly kind: EvidenceKind;
  readonly direction: "for" | "against";
  /** Change of this cause's log-odds (natural logarithm) when this evidence alone is left out; the sign is `direction`. */
  readonly logOdds: number;
  /** The mark it is about, null for readings and answers. */
  readonly imperfection: ImperfectionId | null;
  /** All documents behind the weight; `source` is the strongest of them. */
  readonly sources: readonly Source[];
}

/** ONE thing to do differently on the next bead. */
export interface Change {
  readonly causeId: CauseId;
  /** Imperative and without numbers: "Shorten the distance from tip to work." */
  readonly sentence: string;
  readonly direction: "raise" | "lower" | "set" | "do";
  /** The set-up field or thing that changes; null when it has no number ("Grind the plate bright"). */
  readonly quantity: string | null;
  readonly unitKind: UnitKind | null;
  /** null: not recorded on this bead. */
  readonly fromSi: number | null;
  readonly toSi: number | null;
  /** Signed step, for when the reading itself is not known; null where there is no step to give. */
  readonly stepSi: number | null;
  /** For changes between words: polarity, gas. */
  readonly fromText: string | null;
  readonly toText: string | null;
  /** Why this change and why this far, from this bead's own values. */
  readonly reason: Statement;
  /** What the change does to other quantities by the physics models, with their error; may be empty. */
  readonly effects: readonly Amount[];
  /** Probability of its cause, times how surely the correction removes that cause. Not a frequency. */
  readonly chanceOfCure: number;
  readonly effortS: number;
}

export interface Confirmed {
  /** Cases this shop confirmed for this cause, and confirmed cases altogether, with the same marks or not. */
  readonly confirmed: number;
  readonly total: number;
}

export interface RankedCause {
  readonly id: CauseId;
  readonly name: string;
  /** What it is and why it does harm, in a sentence a student understands. */
  readonly sentence: string;
  /** Given all evidence, by the model's weights: a ranking on a scale of 0 to 1, not a frequency. */
  readonly probability: number;
  /** Before any evidence of this bead, shop counts included. */
  readonly prior: number;
  readonly why: readonly WhyItem[];
  readonly change: Change;
  /** null while this shop has confirmed nothing. */
  readonly shop: Confirmed | null;
}

/** The smallest set of up to three causes that explains the marks best when taken together. */
export interface JointExplanation {
  readonly causes: readonly CauseId[];
  /** Of exactly these causes and no others, given the evidence. */
  readonly probability: number;
  /** Marks at least one of the causes can make in this process. */
  readonly explains: readonly ImperfectionId[];
  readonly leaves: readonly ImperfectionId[];
}

export interface Answer {
  readonly id: string;
  readonly text: string;
  /** How likely this answer is, given what is known now. */
  readonly probability: number;
}

/** Something to look at, measure or answer next. */
export interface Check {
  readonly id: string;
  readonly kind: "question" | "look";
  readonly question: string;
  /** How to find out, at the bench. */
  readonly how: string;
  readonly answers: readonly Answer[];
  /** Set for kind "look": mark it, or tick it as looked for and absent. */
  readonly imperfection: ImperfectionId | null;
  /** Expected drop of the joint entropy over all causes, bits. Never negative. */
  readonly informationBits: number;
  readonly effortS: number;
  readonly bitsPerMinute: number;
  readonly source: Source;
}

/** Something marked that nothing in how the bead was run leaves; what to do about it instead. */
export interface Causeless extends Statement {
  readonly imperfection: ImperfectionId;
}

/** The record contradicts itself, or the set-up contradicts the classification. */
export interface Contradiction extends Statement {
  readonly code: string;
  /** Set-up fields (or "findings") that cannot all be right. */
  readonly fields: readonly string[];
  readonly causeId: CauseId | null;
}

export interface Caution extends Statement {
  readonly code: string;
  /** "stop": a qualified inspector sees it before anything is changed or repaired. */
  readonly level: "stop" | "protect" | "note";
}

export interface Diagnosis {
  /** Every cause that can occur in this process, most likely first. */
  readonly causes: readonly RankedCause[];
  readonly joint: JointExplanation | null;
  /** What is marked and has causes in this process, each once. Advice answers these, never the next. */
  readonly explainable: readonly ImperfectionId[];
  /** What is marked and has none, each once. */
  readonly causeless: readonly Causeless[];
  /** null: an inspector comes first, or nothing stands out, or there is nothing to cure. */
  readonly firstChange: Change | null;
  /** In order, each only if the one before does not cure it. */
  readonly nextChanges: readonly Change[];
  readonly checks: readonly Check[];
  /** The two questions that would settle most, where something is marked and no change stands out; otherwise empty. */
  readonly settling: readonly Check[];
  readonly contradictions: readonly Contradiction[];
  readonly cautions: readonly Caution[];
  /** What the models make of this bead: current, leg, travel speed, heat input, each with its error. */
  readonly estimates: readonly (Amount & { readonly source: Source })[];
  /** The whole in a few sentences, in reading order. */
  readonly explanation: readonly Statement[];
}
