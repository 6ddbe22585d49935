import type { Dispatch } from "react";
import type { KeptBeadSaving } from "@/components/offline";
import type { SeriesNote } from "@/components/trials";
import type { AnswerKind, AssessContext, PhotoAssessment } from "@/lib/assess";
import type { ImperfectionId } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import type { BenchAssessment } from "./bench-assessment";
import type { WorkAction, WorkState } from "./work-state";

/** What every part of the workbench is given. */
export interface BenchProps {
  readonly beadId: string;
  /** What this device keeps of the bead until Toeline has it. */
  readonly kept: KeptBeadSaving;
  readonly state: WorkState;
  readonly dispatch: Dispatch<WorkAction>;
  readonly assessment: BenchAssessment;
  readonly units: UnitPreferences;
  /** The next point of the trial it belongs to, which is the change to run next; null: it belongs to none. */
  readonly inTrial: SeriesNote["trial"];
}

/** What is known of the bead from the first moment on; sizes and causes once this device can work them out. */
export interface EarlyAssessment {
  /** Empty as long as nothing is worked out here: nothing is said of sizes then. */
  readonly photos: readonly PhotoAssessment[];
  /** Set-up findings that should be put right before the next bead. */
  readonly stops: number;
  /** What the diagnosis has to say first; "unlooked" where there is none. */
  readonly answer: AnswerKind;
  /** Imperfections that the causes, as they stand, would leave; the most likely first. */
  readonly likely: readonly ImperfectionId[];
  /** null: not worked out here yet. */
  readonly full: BenchAssessment | null;
}

/** The same for what is there from the first moment on. */
export type EarlyProps = Omit<BenchProps, "assessment"> & {
  readonly assessment: EarlyAssessment;
  /** Whether the answer on the screen is older than what it is of: nothing of it is shown then. */
  readonly isBehind: boolean;
  /** What an assessment rests on beyond this bead. */
  readonly shopKnows: Pick<AssessContext, "shopCounts" | "shopSets">;
};
