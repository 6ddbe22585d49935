import { emptyRunSetup, type RunSetup, type SetupField } from "@/lib/setup";
import { emptyBeadJudgement, type BeadContent } from "./bead";

/** Fields that say which job a bead is. All others say how it is run, and of those nothing is known before it was. */
export const jobFields = [
  "process",
  "electrodeClass",
  "electrodeDiameterMm",
  "inputPower",
  "joint",
  "position",
  "progression",
  "baseMetal",
  "thicknessMm",
  "targetLegMm",
  "fitUpGapMm",
  "weldLengthMm",
] as const satisfies readonly SetupField[];

const isJobField = (field: string): boolean => (jobFields as readonly string[]).includes(field);

/**
 * A bead that is to be run with a planned set-up: which job it is stands in its set-up, the whole plan beside it. What was
 * planned is no reading and no evidence until the person says that it was run so.
 */
export function plannedBead(planned: RunSetup): Pick<BeadContent, "setup" | "judgement"> {
  const known = Object.entries(planned).filter(([field]) => isJobField(field));
  return {
    setup: { ...emptyRunSetup, ...Object.fromEntries(known) },
    judgement: { ...emptyBeadJudgement, planned },
  };
}

/** What of a plan the set-up does not say yet, in the order of the fields; empty: all of it was said, or there is no plan. */
export function openOfPlan(setup: RunSetup, planned: RunSetup | null | undefined): readonly SetupField[] {
  if (!planned) return [];
  return (Object.keys(planned) as (keyof RunSetup)[]).filter(
    (field): field is SetupField =>
      field !== "schemaVersion" && planned[field] !== null && setup[field] === null,
  );
}

/** Whether a set-up says more than which job it is: something that a hand or a dial was set to. */
export const saysHowRun = (setup: RunSetup): boolean =>
  Object.entries(setup).some(
    ([field, value]) => field !== "schemaVersion" && value !== null && !isJobField(field),
  );

/** The set-up of a bead that was run as planned: what the person said of it stays, what was open is as planned. */
export function ranAsPlanned(setup: RunSetup, planned: RunSetup): RunSetup {
  const open = openOfPlan(setup, planned).map((field) => [field, planned[field]] as const);
  return { ...setup, ...Object.fromEntries(open) };
}
