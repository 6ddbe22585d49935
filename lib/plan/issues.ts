import { issue, type Issue } from "@/lib/base";
import type { SetupField, SetupFinding } from "@/lib/setup";

export const planCodes = [
  "field-needed",
  "process-not-planned",
  "class-not-known",
  "class-open",
  "joint-not-planned",
  "no-row",
  "no-burn-off",
  "check-objects",
  "plate-beyond-input",
  "plate-beyond-wire",
  "plate-too-thin",
  "wire-beyond-input",
  "rows-disagree",
  "single-pass-only",
] as const;
export type PlanCode = (typeof planCodes)[number];

/** Why there is no plan. Path: the field concerned. Numbers in the field's own SI unit. */
export interface PlanIssue extends Issue<PlanCode> {
  /** What the check of the set-up says, where it is the check that objects. */
  readonly finding: SetupFinding | null;
}

export function planIssue(
  code: PlanCode,
  field: SetupField,
  data: PlanIssue["data"] = {},
  finding: SetupFinding | null = null,
): PlanIssue {
  return { ...issue(code, [field], data), finding };
}
