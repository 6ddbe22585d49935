import { bandOdds } from "./odds-from-band";
import { certainties } from "./certainty";
import { TRIAL_S } from "./change";
import { ARC_LENGTH_MM } from "./physics";
import { HAND_TRAVEL } from "./readings/hand";
import { surfaceOdds } from "./readings/plate";
import { MOST, PUBLISHED_WORTH } from "./shop-priors";
import { STEP } from "./steps/target";
import { causes } from "./tables/causes";
import { linkNotes } from "./tables/link-notes";
import { causeLinks } from "./tables/links";
import { contraries, lookForce, looks } from "./tables/looks";
import { questions } from "./tables/questions";
import { symptoms } from "./tables/symptoms";
import { exclusiveCauses } from "./tables/variables";
import { commonness, JUDGED_SHARE, LEAK, LEAK_BY_NATURE, linkStrength } from "./weights";

/**
 * Every table of this room as plain data, for a seal over them: whoever adds a table adds it here. Odds that a reading
 * of the set-up sets by a rule (most of `readings/`, `thickness-rules.ts`) are code, not a table, and stand under the
 * program's version alone.
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
  weights: { linkStrength, JUDGED_SHARE, LEAK, LEAK_BY_NATURE, commonness, PUBLISHED_WORTH, MOST, TRIAL_S },
  bandOdds,
  steps: STEP,
  HAND_TRAVEL,
  ARC_LENGTH_MM,
  surfaceOdds,
  certainties,
} as const;
