import type { Source } from "@/lib/base";
import type { SetupField } from "./fields";
import type { RunSetup } from "./run-setup";

/** "stop": put it right before the next bead. "warn": outside what is known to work. "note": worth knowing. */
export const severities = ["stop", "warn", "note"] as const;
export type Severity = (typeof severities)[number];

export const setupCodes = [
  "process-against-class",
  "polarity-against-class",
  "polarity-unusual-for-process",
  "gas-missing",
  "gas-on-gasless",
  "gas-against-class",
  "gas-reactive-on-tungsten",
  "gas-cannot-spray",
  "flow-without-gas",
  "position-against-class",
  "progression-against-class",
  "position-beyond-class-list",
  "metal-against-class",
  "single-pass-wire-in-passes",
  "limited-pass-wire-in-passes",
  "push-on-slag",
  "reading-below-window",
  "reading-above-window",
  "reading-low-for-feed",
  "reading-high-for-feed",
  "reading-beyond-data-sheet",
  "feed-beyond-input",
  "plate-beyond-input",
  "travel-speed-disagrees",
  "current-disagrees",
  "current-below-plate",
  "current-above-plate",
  "transfer-beyond-plate",
  "spray-out-of-position",
  "rod-against-plate",
  "gas-against-metal",
  "work-angle-off",
  "gap-wide",
  "root-tight",
  "plate-below-floor",
  "plate-above-cap",
  "gas-in-wind",
  "zinc-fume",
  "primer-or-paint",
  "oil-or-paint",
  "wet-surface",
  "heavy-rust",
  "scale-under-gas",
  "chromium-fume",
] as const;
export type SetupCode = (typeof setupCodes)[number];

/**
 * "fault": not as it should be. "unusual": most who run it so are wrong, some are right: evidence, never a finding.
 * "in-order": looked at and right, which clears causes and is never a finding. What is not known gives no fact at all.
 */
export type FactState = "fault" | "unusual" | "in-order";

/**
 * One judged fact of a set-up: which field, by which bound, out of which source. The set-up check, the contradictions,
 * the evidence and the changes all read this, so that no two of them can judge the same thing differently.
 */
export interface SetupFact {
  readonly code: SetupCode;
  readonly state: FactState;
  /** Fields concerned; the first is where a form shows it. */
  readonly fields: readonly [SetupField, ...SetupField[]];
  /** Numbers in the field's own SI unit, names as they stand in the tables. */
  readonly data: Readonly<Record<string, string | number>>;
  readonly source: Source;
  /** How grave a fault is; null for what is in order. */
  readonly severity: Severity | null;
  /** True: someone can be hurt; shown even where settings are not asked about. */
  readonly safety: boolean;
}

/** A fault the check has to say, without words: `findingSentence` adds them. */
export type SetupFinding = SetupFact & { readonly severity: Severity };

/** A rule sees the whole set-up and says nothing about what it does not know. */
export type SetupRule = (setup: RunSetup) => readonly SetupFact[];

interface Rest {
  readonly data?: SetupFact["data"];
  readonly source: Source;
  readonly safety?: boolean;
}

export function finding(
  code: SetupCode,
  severity: Severity,
  fields: SetupFact["fields"],
  { data = {}, source, safety = false }: Rest,
): SetupFinding {
  return { code, state: "fault", severity, fields, data, source, safety };
}

const silent =
  (state: "unusual" | "in-order") =>
  (code: SetupCode, fields: SetupFact["fields"], { data = {}, source }: Rest): SetupFact => ({
    code,
    state,
    severity: null,
    fields,
    data,
    source,
    safety: false,
  });

/** The same thing looked at and found right. */
export const inOrder = silent("in-order");
export const unusual = silent("unusual");
