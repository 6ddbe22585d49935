/**
 * How strongly a cause is tied to an imperfection. Strong: at least three documents name the pair and one of the better
 * ones names it first, or calls it the usual cause. Middling: two or more name it, never first, or one better one does.
 * Weak: one document of the lowest tier, or our own knowledge only. A row may be `judged`: the count falls short, the mechanism
 * is clear.
 */
export const weightClasses = ["strong", "middling", "weak"] as const;
export type WeightClass = (typeof weightClasses)[number];

/**
 * The one mapping from weight class to the noisy-OR parameter q: the probability that the cause, alone and at work,
 * leaves the imperfection on this bead.
 * ORDER OF MAGNITUDE ONLY. The classes count documents; nobody measured frequencies in any text we read. Each class is
 * half the strength of the one above in -log(1 - q), about: 0.92, 0.36, 0.11.
 */
export const linkStrength: Readonly<Record<WeightClass, number>> = { strong: 0.6, middling: 0.3, weak: 0.1 };

/** A judged row stands on fewer documents than its class asks for: three quarters of the class. */
export const JUDGED_SHARE = 0.75;

/** Probability that a mark comes from something not in the tables. */
export const LEAK = 0.02;

/** The same for marks that are named after what makes them: a strike, a crater left open, plates out of line. */
export const LEAK_BY_NATURE = 0.004;

/**
 * Plausibility of a cause before anything is known of the bead. Own estimate by one principle: what the hand does anew
 * with every bead goes wrong most; what is set once per job less; what wears or is delivered seldom; what needs a
 * special situation least. Scaled so that a bead has about one fault to expect, all causes of its process together.
 */
export const commonness = {
  everyday: 0.04,
  often: 0.03,
  sometimes: 0.0125,
  seldom: 0.005,
} as const;
export type Commonness = keyof typeof commonness;

export const weightsNote =
  "Weights count how many documents name a pair and how high; they are not frequencies and only rank causes against each other.";
