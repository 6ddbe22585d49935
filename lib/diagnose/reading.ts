import type { Source } from "@/lib/base";
import type { ElectrodeClass, ParameterWindow } from "@/lib/trade";
import type { RunSetup, SetupFact } from "@/lib/setup";
import type { CauseId } from "./cause-ids";
import type { DiagnoseInput } from "./input";
import type { BeadPhysics } from "./physics";
import type { Amount } from "./types";

/** Factors on the odds of causes against "in order": above 1 speaks for, below 1 against, absent says nothing. */
export type Odds = Partial<Readonly<Record<CauseId, number>>>;

/** What one recorded fact says about causes. */
export interface Reading {
  /** Set-up field or bead measure, e.g. "ctwdMm". */
  readonly key: string;
  /** What it is, when it speaks for the cause in question. */
  readonly forText: Partial<Readonly<Record<CauseId, string>>>;
  /** What it is, when it speaks against. */
  readonly againstText: string;
  readonly odds: Odds;
  readonly amounts: readonly Amount[];
  readonly source: Source;
}

/** All a reader may look at. */
export interface ReadingContext {
  readonly setup: RunSetup;
  readonly bead: DiagnoseInput["bead"];
  readonly electrode: ElectrodeClass | null;
  /** What lib/setup judged, each thing once. */
  readonly facts: readonly SetupFact[];
  readonly window: ParameterWindow | null;
  readonly physics: BeadPhysics;
}

export type Reader = (context: ReadingContext) => readonly Reading[];
