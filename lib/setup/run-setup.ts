import { z } from "zod";
import { setupFields, type SetupField } from "./fields";

/** Bump when the stored shape changes, and teach the parsers of beads and set-ups the older one. */
export const RUN_SETUP_VERSION = 1;

type Shape = { readonly [F in SetupField]: (typeof setupFields)[F]["schema"] };
const shape = Object.fromEntries(
  Object.entries(setupFields).map(([field, { schema }]) => [field, schema]),
) as unknown as Shape;

/**
 * How a bead was run, one key for each row of `setupFields`. Every field may be null: null is "not known", never a
 * value and never evidence. All numbers are in the one unit their name ends in; the person's units exist only on the
 * screen.
 */
export const RunSetupSchema = z.object({
  schemaVersion: z.literal(RUN_SETUP_VERSION).default(RUN_SETUP_VERSION),
  ...shape,
});
export type RunSetup = z.infer<typeof RunSetupSchema>;

export const emptyRunSetup: RunSetup = RunSetupSchema.parse({});
