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

/** One thing the check has to say, without words: `findingSentence` adds them. */
export interface SetupFinding {
  readonly code: SetupCode;
  readonly severity: Severity;
  /** Fields concerned; the first is where a form shows it. */
  readonly fields: readonly [SetupField, ...SetupField[]];
  /** Numbers in the field's own SI unit, names as they stand in the tables. */
  readonly data: Readonly<Record<string, string | number>>;
  readonly source: Source;
  /** True: someone can be hurt; shown even where settings are not asked about. */
  readonly safety: boolean;
}

/** A rule sees the whole set-up and says nothing about what it does not know. */
export type SetupRule = (setup: RunSetup) => readonly SetupFinding[];

export function finding(
  code: SetupCode,
  severity: Severity,
  fields: SetupFinding["fields"],
  rest: { data?: SetupFinding["data"]; source: Source; safety?: boolean },
): SetupFinding {
  return {
    code,
    severity,
    fields,
    data: rest.data ?? {},
    source: rest.source,
    safety: rest.safety ?? false,
  };
}
