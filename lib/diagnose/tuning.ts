import { adviceLimits, type AdviceLimits } from "./advice/limits";
import { lookForce } from "./tables/looks";
import { commonness, JUDGED_SHARE, LEAK, LEAK_BY_NATURE, linkStrength } from "./weights";

/** The few numbers that turn counted documents and looks into probabilities. The tables themselves are no part of it. */
export interface Weights {
  readonly linkStrength: Readonly<Record<keyof typeof linkStrength, number>>;
  readonly judgedShare: number;
  readonly leak: number;
  readonly leakByNature: number;
  readonly commonness: Readonly<Record<keyof typeof commonness, number>>;
  readonly lookForce: typeof lookForce;
}

/**
 * What the product runs with, as one value: so that it can be fitted on some cases and judged on others (`npm run -s
 * score`). Nobody outside this room and its tests runs with anything else.
 */
export interface Tuning {
  readonly weights: Weights;
  readonly limits: AdviceLimits;
}

export const presentWeights: Weights = {
  linkStrength,
  judgedShare: JUDGED_SHARE,
  leak: LEAK,
  leakByNature: LEAK_BY_NATURE,
  commonness,
  lookForce,
};

export const presentTuning: Tuning = { weights: presentWeights, limits: adviceLimits };
