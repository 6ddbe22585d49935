/** A row or a point of a chart as a screen needs it: words, numbers and the way to its beads. */
export interface ParetoLine {
  readonly key: string;
  readonly name: string;
  readonly count: number;
  /** Share of all, in words with its interval. */
  readonly share: string;
  /** This line and all before it, "12 of 20". */
  readonly cumulative: string;
  /** The same, 0 to 1. */
  readonly cumulativeShare: number;
  /** How many of all beads have it, in words with its interval; empty where rows are gathered. */
  readonly ofBeads: string;
  readonly href: string;
}

export interface RejectPoint {
  readonly label: string;
  /** Shares, 0 to 1. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly lowerLimit: number;
  readonly upperLimit: number;
  readonly beyond: "above" | "below" | null;
  /** Too few beads for limits by the normal approximation. */
  readonly rough: boolean;
  readonly text: string;
  readonly href: string;
}

export interface GroupLine {
  readonly key: string;
  readonly name: string;
  readonly beads: number;
  readonly decided: number;
  readonly share: string;
  readonly value: number | null;
  readonly low: number;
  readonly high: number;
  readonly mostSeen: string | null;
  /** Other words that the same person stands under. */
  readonly also: readonly string[];
  /** Of welders: a person here, nobody here by that word, or a word that several share. */
  readonly standing: "person" | "nobody" | "several" | null;
  readonly href: string;
}
