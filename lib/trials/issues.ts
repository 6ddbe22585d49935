import { issue, type Issue } from "@/lib/base";
import type { TrialKnob } from "./trial";

export const trialCodes = [
  "no-row",
  "base-outside",
  "knob-open",
  "range-outside",
  "range-narrow",
  "corners-outside",
  "not-understood",
] as const;
export type TrialCode = (typeof trialCodes)[number];

/** Why there is no such trial; `low` and `high` in the knob's unit. */
export interface TrialIssue extends Issue<TrialCode> {
  readonly field: TrialKnob | null;
  readonly low: number;
  readonly high: number;
}

export const trialIssue = (
  code: TrialCode,
  field: TrialKnob | null = null,
  low = 0,
  high = 0,
): TrialIssue => ({ ...issue(code, field === null ? [] : [field]), field, low, high });
