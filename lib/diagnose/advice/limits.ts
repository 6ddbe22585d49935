/**
 * When a cause is worth a change. Set on one part of the scenarios and judged on the other (`npm run -s score`); the
 * scale is that of the model, which ranks, so these are no frequencies.
 */
export const adviceLimits = {
  /** Least probability of a fallback. */
  worthTrying: 0.08,
  /** A fallback less likely than this part of the first change is no second opinion. */
  besideFirst: 0.15,
  /** Odds against before anything was known: this many times. */
  ownEvidence: 1.5,
  /** Least probability of a headline and its family when something is marked, and when nothing is. */
  withMarks: 0.3,
  alone: 0.4,
  /** From here on one mark alone is enough: it has hardly another cause. */
  byNature: 0.5,
  /** The first and its family must be this many times as likely as the next that calls for something else. */
  lead: 1.4,
  /** So many times as likely that it stands out although `withMarks` is not reached, down to `faint`. */
  leadAlone: 2.2,
  faint: 0.2,
} as const;
export type AdviceLimits = Readonly<Record<keyof typeof adviceLimits, number>>;
