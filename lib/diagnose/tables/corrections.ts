import type { SetupCode } from "@/lib/setup";
import type { CauseId } from "../cause-ids";
import type { When } from "./situations";

/** What to do about a cause where the circumstances ask for something else than its usual correction. */
export interface Correction {
  readonly cause: CauseId;
  readonly when: When;
  /** Given: only where lib/setup found this fault. */
  readonly fault?: SetupCode;
  /** Imperative, without numbers. */
  readonly sentence: string;
}

const row = (cause: CauseId, when: When, sentence: string, fault?: SetupCode): Correction => ({
  cause,
  when,
  sentence,
  ...(fault && { fault }),
});

/** The first that holds is said. Common practice, no source. */
export const corrections: readonly Correction[] = [
  row(
    "base-cold-thick",
    {},
    "Short arc is too cold for this plate: change to spray or flux-cored wire where the position allows it, or preheat as the procedure says.",
    "transfer-beyond-plate",
  ),
  row(
    "base-cold-thick",
    {},
    "Take a larger wire for this plate, or preheat as the procedure says.",
    "plate-above-cap",
  ),
  row(
    "position-unsuited",
    {},
    "Change to short-circuit or pulsed transfer, or turn the work flat.",
    "spray-out-of-position",
  ),
  row(
    "wfs-high",
    { hanging: true, processes: ["SMAW"] },
    "Turn the current down to what this rod is run at out of position.",
  ),
  row(
    "wfs-high",
    { hanging: true, processes: ["FCAW-S", "FCAW-G", "GMAW"] },
    "Turn feed and volts down together, to what this wire is run at out of position.",
  ),
  row("weave", { hanging: true }, "Wait at each toe and cross the middle quickly."),
  row("travel-slow", { downByClass: true }, "Travel faster, so that slag and pool stay behind the arc."),
  row(
    "placement",
    { joints: ["stringer-pad"] },
    "Chip the valley, then aim at the toe of the last bead and cover a third to a half of it.",
  ),
  row(
    "slag-left",
    { joints: ["stringer-pad"] },
    "Chip and brush between the beads of the layer, then cover a third to a half of the last one.",
  ),
  row(
    "bead-shape",
    { joints: ["stringer-pad"] },
    "Run flatter stringers that cover a third to a half of the last one.",
  ),
];
