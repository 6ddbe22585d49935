import type { Gauge } from "@/components/canvas";
import type { SeriesNote } from "@/components/trials";
import type { ShopCriteria } from "@/lib/accept";
import type { BeadContent, PhotoFacts, TriedChange } from "@/lib/assess";
import type { ShopCounts } from "@/lib/diagnose";
import type { RunSetup } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import type { FirstAnswer } from "./bench-assessment";
import type { SavedSetup, SetupStore } from "./setup-section";

export interface WorkbenchProps {
  /** What the server says of the answer, until the browser can work it out; left out: there is none yet. */
  readonly first?: FirstAnswer;
  /** Of the series it belongs to and the card it is run by; left out where it has neither. */
  readonly series?: SeriesNote;
  readonly bead: {
    readonly id: string;
    /** null: it was begun on this device, and there is no record of it yet. */
    readonly number: number | null;
    /** 0 where there is no record. */
    readonly revision: number;
    readonly content: BeadContent;
    readonly photos: readonly PhotoFacts[];
    readonly previous: { readonly id: string; readonly number: number; readonly title: string } | null;
  };
  readonly units: { readonly choice: "metric" | "inch"; readonly preferences: UnitPreferences };
  readonly savedSetups: readonly SavedSetup[];
  readonly lastSetup: RunSetup | null;
  readonly setupStore: SetupStore;
  readonly shop: {
    readonly counts: ShopCounts;
    /** The shop's own limits this bead is or may be judged by. */
    readonly sets: readonly ShopCriteria[];
    readonly onReset: () => Promise<void>;
    /** The shop's own gauges, for readings. */
    readonly gauges: readonly Gauge[];
  };
  /** Starts the next bead from the given set-up and opens it. */
  readonly onRunAgain: (beadId: string, tried: TriedChange, setup: RunSetup) => Promise<void>;
  /** The weld of a job it was run on, and where that is looked at; left out where there is none. */
  readonly weld?: { readonly href: string; readonly words: string } | null;
  /** Whether this person may delete the bead. */
  readonly mayDelete: boolean;
  readonly onChooseUnits: (choice: "metric" | "inch") => Promise<void>;
  /** Somebody's first bead: what comes next is said on top. */
  readonly guided?: boolean;
}
