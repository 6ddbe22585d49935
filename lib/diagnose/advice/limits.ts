/**
 * When a cause is worth a change. Set on one part of the scenarios and judged on the other (`npm run -s score`); the
 * scale is that of the model, which ranks, so these are no frequencies.
 */
export const adviceLimits = {
  /** Least probability of a fallback. */
  worthTrying: 0.06,
  /** Odds against before anything was known: this many times. */
  ownEvidence: 1.5,
  /** Least probability of a headline when something is marked, and when nothing is. */
  withMarks: 0.3,
  alone: 0.4,
  /** The first must be this many times as likely as the next. */
  lead: 1.25,
} as const;
