import { z } from "zod";
import { SteelSchema } from "@/lib/procedure";
import { emptyRunSetup, RunSetupSchema, type RunSetup, type SetupField } from "@/lib/setup";

/** The fields of a set-up by which a plan is asked for, in the order of the form. */
export const askedFields = [
  "process",
  "transfer",
  "electrodeClass",
  "electrodeDiameterMm",
  "gas",
  "polarity",
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
type AskedField = (typeof askedFields)[number];

type AskedShape = { readonly [F in AskedField]: (typeof RunSetupSchema.shape)[F] };
const asked = Object.fromEntries(
  askedFields.map((field) => [field, RunSetupSchema.shape[field]]),
) as unknown as AskedShape;

/**
 * What a plan is asked by. Every field may be left open or null: what the class settles by itself is taken from it, the
 * rest is asked for. Lengths in mm. `weldLengthMm`: what minutes and wire are counted for; a metre where it is open.
 */
export const PlanAskSchema = z.object({
  ...asked,
  /** Width of a surface to be laid with beads side by side. */
  padWidthMm: z.number().positive().max(2000).nullable().default(null),
  /** Between the two faces of a groove. */
  grooveAngleDeg: z.number().min(0).max(120).nullable().default(null),
  /** The steel by its certificate: for carbon equivalents, preheat and cooling time. */
  steel: SteelSchema.nullable().default(null),
  /** Whose dials: what is proposed is rounded to what can be set there. */
  dials: z.enum(["metric", "inch"]).default("metric"),
});
export type PlanAsk = z.infer<typeof PlanAskSchema>;

export const emptyPlanAsk: PlanAsk = PlanAskSchema.parse({});

/** What the ask says of the set-up; all else is not known yet. */
export function setupOfAsk(ask: PlanAsk): RunSetup {
  const known = Object.fromEntries(askedFields.map((field) => [field, ask[field]]));
  return RunSetupSchema.parse({ ...emptyRunSetup, ...known });
}

/** An ask out of a whole set-up, such as the one a bead was run with. */
export function askOfSetup(setup: RunSetup): PlanAsk {
  return PlanAskSchema.parse(Object.fromEntries(askedFields.map((field) => [field, setup[field]])));
}
