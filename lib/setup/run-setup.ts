import { setupFields, type SetupField } from "./fields";

/** Bump when the stored shape changes, and teach the parsers of beads and set-ups the older one. */
export const RUN_SETUP_VERSION = 1;

type Row<F extends SetupField> = (typeof setupFields)[F];

/** What a known answer to a field is. */
export type SetupValue<F extends SetupField> = F extends "outdoors"
  ? boolean
  : Row<F> extends { readonly words: infer Words }
    ? keyof Words
    : Row<F> extends { readonly control: "number" }
      ? number
      : string;

/**
 * How a bead was run, one key for each row of `setupFields`. Every field may be null: null is "not known", never a
 * value and never evidence. All numbers are in the one unit their name ends in; the person's units exist only on the
 * screen.
 */
export type RunSetup = { schemaVersion: typeof RUN_SETUP_VERSION } & {
  -readonly [F in SetupField]: SetupValue<F> | null;
};

export const emptyRunSetup = {
  schemaVersion: RUN_SETUP_VERSION,
  ...Object.fromEntries(Object.keys(setupFields).map((field) => [field, null])),
} as RunSetup;
