/**
 * A bipartite noisy-OR network whose hidden variables may have more than two states. State 0 is "in order"; the others
 * exclude each other (volts cannot be too high and too low at once). With two states each it is the ordinary noisy-OR
 * with leak: P(sign absent | states) = (1 - leak) · Π_variables (1 - q[state]).
 */
export interface Network {
  readonly variables: readonly Variable[];
  readonly signs: readonly Sign[];
}

export interface Variable {
  /** Probability of each state before evidence; sums to 1. */
  readonly prior: readonly number[];
}

export interface Sign {
  readonly leak: number;
  readonly links: readonly Link[];
}

/** In `state` (never 0), `variable` alone makes the sign with probability q. */
export interface Link {
  readonly variable: number;
  readonly state: number;
  readonly q: number;
}

/** What is known. Signs in neither list are not observed and say nothing. */
export interface Evidence {
  readonly present: readonly number[];
  readonly absent: readonly number[];
  /** Likelihood of each state of a variable by readings and answers; several for one variable multiply. */
  readonly virtual: readonly VirtualEvidence[];
}

export interface VirtualEvidence {
  readonly variable: number;
  readonly likelihood: readonly number[];
}

export interface Posterior {
  /** Natural logarithm of the probability of the evidence. */
  readonly logEvidence: number;
  /** Per variable and state. */
  readonly marginals: readonly (readonly number[])[];
}
