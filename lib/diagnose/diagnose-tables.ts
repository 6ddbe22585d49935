import { bandOdds } from "./odds-from-band";
import { HAND_TRAVEL } from "./readings/hand";
import { PUBLISHED_WORTH } from "./shop-priors";
import { STEP } from "./steps/target";
import { causes } from "./tables/causes";
import { linkNotes } from "./tables/link-notes";
import { causeLinks } from "./tables/links";
import { contraries, lookForce, looks } from "./tables/looks";
import { questions } from "./tables/questions";
import { citedDocuments } from "./tables/sources";
import { symptoms } from "./tables/symptoms";
import { exclusiveCauses } from "./tables/variables";
import { commonness, JUDGED_SHARE, LEAK, linkStrength } from "./weights";

/**
 * Every table of this room as plain data, for a seal over them: whoever adds a table adds it here. What a reading of
 * the set-up says of the causes (`readings/`) is code, not a table, and stands under the program's version alone.
 */
export const diagnoseTables = {
  causes,
  causeLinks,
  linkNotes,
  looks,
  lookForce,
  contraries,
  questions,
  symptoms,
  exclusiveCauses,
  citedDocuments,
  weights: { linkStrength, JUDGED_SHARE, LEAK, commonness, PUBLISHED_WORTH },
  bandOdds,
  steps: STEP,
  HAND_TRAVEL,
} as const;
