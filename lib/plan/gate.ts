import { checkSetup, type RunSetup, type SetupCode, type SetupFinding } from "@/lib/setup";
import { planIssue, type PlanIssue } from "./issues";

/** Notes that speak against a set-up as plainly as a warning does. All other notes go with the plan. */
const against: readonly SetupCode[] = ["plate-beyond-input", "current-below-plate", "current-above-plate"];

export const objects = ({ severity, code }: SetupFinding): boolean =>
  severity !== "note" || against.includes(code);

/** What the product's own check has against a set-up; empty where it may be planned. */
export function objections(setup: RunSetup): readonly PlanIssue[] {
  return checkSetup(setup)
    .filter(objects)
    .map((found) => planIssue("check-objects", found.fields[0], {}, found));
}
