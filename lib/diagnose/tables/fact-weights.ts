import type { SetupCode, SetupField } from "@/lib/setup";
import type { CauseId } from "../cause-ids";
import type { Odds } from "../reading";

/**
 * A fault that stands in the record itself is all but certain: only the record can be wrong. With this factor the rarest
 * cause comes to about 24 in 25. Own estimate.
 */
export const RECORDED = 5000;

/** What a judged fact of the set-up says about causes; the judging and its tolerance are lib/setup's alone. */
export interface FactWeight {
  /** Said as a contradiction of the record, where the fault is a warning or worse. */
  readonly contradiction?: string;
  /** The cause that is then known to be at work; null: something in the record is wrong that is no cause. */
  readonly recorded?: CauseId | null;
  /** As `recorded`, where only one word in the fact's data means it. */
  readonly recordedWhen?: { readonly key: string; readonly is: string; readonly cause: CauseId };
  readonly fault?: Odds;
  /** Graver degrees of the fault, by a number in its data; the last that is reached counts instead of `fault`. */
  readonly degrees?: {
    readonly key: string;
    readonly steps: readonly (readonly [from: number, odds: Odds])[];
  };
  /** Said beside, where the fact stands at this field. */
  readonly atField?: { readonly field: SetupField; readonly odds: Odds };
  readonly unusual?: Odds;
  readonly inOrder?: Odds;
  /** Causes whose cure the fault forbids, unless a reading out of its own window asks for it. */
  readonly forbids?: readonly CauseId[];
  /** When it speaks for the cause, and when it speaks against. */
  readonly forText?: string;
  readonly againstText?: string;
}

/** Codes without a line say nothing about causes: cautions, and readings against a window, which are weighed by distance. */
export const factWeights: Partial<Readonly<Record<SetupCode, FactWeight>>> = {
  "process-against-class": {
    contradiction: "The electrode's class belongs to another process: one of the two is recorded wrongly.",
    recorded: null,
  },
  "polarity-against-class": {
    contradiction: "The recorded polarity is not the one of the electrode's class.",
    recorded: "polarity",
    inOrder: { polarity: 0.03 },
    forText: "The recorded polarity is not the one of this class.",
    againstText: "The recorded polarity is the one of this class.",
  },
  "polarity-unusual-for-process": {
    contradiction: "The recorded polarity is not used with this process on steel.",
    recorded: "polarity",
    unusual: { polarity: 100 },
    inOrder: { polarity: 0.1 },
    forText: "The recorded polarity is not the usual one of this process on steel.",
    againstText: "The recorded polarity is the usual one of this process.",
  },
  "gas-missing": {
    contradiction: "A gas-shielded process is recorded without gas.",
    recorded: "gas-low",
    forText: "No gas flows by the record, on a process that needs it.",
  },
  "gas-on-gasless": {
    contradiction: "Gas is recorded with an electrode that makes its own shield.",
    recorded: null,
  },
  "gas-against-class": {
    contradiction: "The recorded gas is not one of the electrode's class.",
    recorded: "gas-wrong",
    inOrder: { "gas-wrong": 0.1 },
    forText: "The recorded gas is not one of this class.",
    againstText: "The recorded gas is one of this class.",
  },
  "gas-against-metal": {
    contradiction: "The recorded gas oxidises stainless solid wire.",
    recorded: "gas-wrong",
    forText: "The recorded gas does not suit stainless solid wire.",
  },
  "gas-reactive-on-tungsten": {
    contradiction: "The recorded gas burns a tungsten electrode.",
    recorded: "gas-wrong",
    forText: "The recorded gas burns a tungsten electrode.",
  },
  "gas-cannot-spray": {
    contradiction: "Spray transfer is recorded with a gas that does not spray.",
    recorded: "gas-wrong",
    forText: "This gas does not spray.",
  },
  "flow-without-gas": { contradiction: "A gas flow is recorded, but no gas.", recorded: null },
  "position-against-class": {
    contradiction: "The electrode's class is not made for this position.",
    recorded: "position-unsuited",
    forText: "The class is not made for this position.",
  },
  "progression-against-class": {
    contradiction: "The electrode's class is not made for this direction of travel.",
    recorded: null,
    recordedWhen: { key: "recorded", is: "vertical-down", cause: "downhill" },
    forText: "It was welded downhill with a class that is not made for it.",
  },
  "spray-out-of-position": {
    contradiction: "Spray transfer is recorded in a position where its pool does not stay up.",
    recorded: "position-unsuited",
    forText: "A spray pool does not stay up in this position.",
  },
  "single-pass-wire-in-passes": {
    contradiction: "A single-pass wire is recorded in more than one pass.",
    recorded: "single-pass-wire",
    inOrder: { "single-pass-wire": 0.02 },
    forText: "A single-pass wire was laid in layers.",
    againstText: "The wire is rated for these passes.",
  },
  "limited-pass-wire-in-passes": {
    fault: { "single-pass-wire": 30 },
    forText: "The wire is rated for a few passes only.",
  },
  "push-on-slag": {
    contradiction: "A slag process is recorded with a pushed gun.",
    recorded: "push-on-slag",
    // Uphill some wires are pointed a little ahead: lib/setup only notes it there.
    fault: { "push-on-slag": 5 },
    inOrder: { "push-on-slag": 0.03 },
    forText: "The gun was pushed.",
    againstText: "The gun was dragged.",
  },
  "feed-beyond-input": {
    contradiction: "The recorded feed is more than this mains input can hold.",
    recorded: "input-power",
    forText: "A small input cannot hold this feed.",
  },
  "plate-beyond-input": {
    fault: { "input-power": 10, "base-cold-thick": 3 },
    forText: "A small mains input does not give the current that plate this thick asks for.",
  },
  "travel-speed-disagrees": {
    contradiction: "Recorded travel speed and length over time disagree.",
    recorded: null,
  },
  "current-disagrees": {
    contradiction:
      "Recorded current does not fit feed and tip to work: read the meter with the arc burning, and measure from tip to work.",
    recorded: null,
  },
  "current-below-plate": {
    // Computed from feed and tip to work, a low current may come of either.
    fault: { "wfs-low": 3 },
    degrees: { key: "times", steps: [[3, { "wfs-low": 8 }]] },
    atField: { field: "wireFeedMPerMin", odds: { "ctwd-long": 2 } },
    forbids: ["wfs-high"],
    forText: "The current is low for plate this thick.",
  },
  "current-above-plate": {
    fault: { "wfs-high": 3, "thin-base": 2 },
    degrees: { key: "times", steps: [[2.5, { "wfs-high": 15, "thin-base": 3 }]] },
    forbids: ["wfs-low"],
    forText: "The current is high for plate this thin.",
  },
  "transfer-beyond-plate": {
    fault: { "base-cold-thick": 40 },
    forText: "Short-circuit transfer is cold for plate this thick.",
  },
  "rod-against-plate": {
    fault: { "electrode-large": 8 },
    inOrder: { "electrode-large": 0.4 },
    forText: "The rod is thicker than the plate.",
    againstText: "The rod is well below the plate's thickness.",
  },
  "work-angle-off": {
    fault: { "work-angle": 3 },
    degrees: {
      key: "off",
      steps: [
        [14, { "work-angle": 12 }],
        [20, { "work-angle": 40 }],
      ],
    },
    inOrder: { "work-angle": 0.25 },
    forText: "The work angle does not bisect the joint.",
    againstText: "The work angle bisects the joint.",
  },
  "gap-wide": {
    fault: { gap: 8 },
    degrees: { key: "times", steps: [[1.5, { gap: 30 }]] },
    inOrder: { gap: 0.2 },
    forText: "The gap is wide for this joint.",
    againstText: "The gap is as it should be.",
  },
  "root-tight": { fault: { "groove-tight": 8 }, forText: "The root is tight." },
  "plate-below-floor": {
    fault: { "thin-base": 15, "base-cold-thick": 0.05 },
    forText: "The plate is thin for this electrode.",
  },
  "plate-above-cap": {
    fault: { "base-cold-thick": 10, "thin-base": 0.05 },
    forText: "The plate is thick for this electrode.",
  },
};
