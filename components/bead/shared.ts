import type { Dispatch } from "react";
import type { KeptBeadSaving } from "@/components/offline";
import type { SeriesNote } from "@/components/trials";
import type { AssessContext } from "@/lib/assess";
import type { UnitPreferences } from "@/lib/units";
import type { BenchAssessment } from "./bench-assessment";
import type { EarlyAssessment } from "./use-assessment";
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

/** The same for what is there from the first moment on. */
export type EarlyProps = Omit<BenchProps, "assessment"> & {
  readonly assessment: EarlyAssessment;
  /** What an assessment rests on beyond this bead. */
  readonly shopKnows: Pick<AssessContext, "shopCounts" | "shopSets">;
};
