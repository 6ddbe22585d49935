import { adviceLimits } from "./advice/limits";
import { bandOdds } from "./odds-from-band";
import { certainties } from "./certainty";
import { TRIAL_S } from "./change";
import { HAND_TRAVEL } from "@/lib/setup";
import { JUDGED_IN, JUDGED_OUT } from "./readings/window";
import { surfaceOdds } from "./readings/plate";
import { MOST, PUBLISHED_WORTH } from "./shop-priors";
import { STEP } from "./steps/target";
import { causes } from "./tables/causes";
import { causeLinks } from "./tables/links";
import { contraries, lookForce, looks } from "./tables/looks";
import { corrections } from "./tables/corrections";
import { factWeights, RECORDED } from "./tables/fact-weights";
import { families, turns } from "./tables/knobs";
import { questions } from "./tables/questions";
import { situations } from "./tables/situations";
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
  looks,
  lookForce,
  contraries,
  situations,
  corrections,
  factWeights,
  questions,
  turns,
  families,
  adviceLimits,
  symptoms,
  exclusiveCauses,
  weights: {
    linkStrength,
    JUDGED_SHARE,
    LEAK,
    LEAK_BY_NATURE,
    commonness,
    PUBLISHED_WORTH,
    MOST,
    TRIAL_S,
    RECORDED,
  },
  bandOdds,
  steps: STEP,
  HAND_TRAVEL,
  JUDGED_IN,
  JUDGED_OUT,
  surfaceOdds,
  certainties,
} as const;
