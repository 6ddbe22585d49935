import type { BudgetPart, BudgetPartName, Quantity } from "./types";

/** One part of what makes a figure uncertain, ready to be shown. */
export interface BudgetLine {
  readonly part: BudgetPartName;
  readonly name: string;
  /** Standard uncertainty, in the unit of the figure. */
  readonly u: number;
  /** Of the squared standard uncertainty of the whole, 0 to 1; the shares of a figure add to 1. */
  readonly share: number;
  /** Where it comes from, and what makes it smaller. */
  readonly sentence: string;
}

/** What each part is called in a list. */
export const budgetNames: Readonly<Record<BudgetPartName, string>> = {
  picks: "Points of the mark",
  "scale-picks": "Points of the scale",
  "scale-length": "Size of the scale object",
  tilt: "Tilt",
  "near-side": "Which side is nearer",
  height: "Height above the scale",
  lens: "Lens",
  resolution: "Step of the gauge",
  "gauge-study": "Gauge and hand",
};

/** Where each part comes from, and what the person can do about it. */
export const budgetSentences: Readonly<Record<BudgetPartName, string>> = {
  picks: "How well the points of this mark were placed. Zoom in and set its ends again.",
  "scale-picks":
    "How well the scale was placed, and with it the perspective. Zoom in on the scale, or use a longer object.",
  "scale-length":
    "How well the length of the scale object itself is known. Use a steel rule or a checked print.",
  tilt: "The camera's tilt, as far as the scale cannot take it out. Hold the camera square to the plate, or use a card or the printed strip.",
  "near-side":
    "A disc looks the same tilted either way, so the near and the far side stay open. Use a card or the printed strip.",
  height: "The mark may lie above or below the plane of the scale. Lay the scale level with the mark.",
  lens: "What the camera leaves of the lens's bending of straight lines. Keep scale and mark near the middle.",
  resolution: "The finest step of the gauge it was read with.",
  "gauge-study":
    "How far readings with this gauge lie apart, by the study made of it: the same person again, and another person.",
};

/** The parts of a figure's uncertainty, largest first; empty for a figure that was stated or has none. */
export function budgetLines({ budget }: Pick<Quantity, "budget">): readonly BudgetLine[] {
  const whole = budget.reduce((sum, { u }) => sum + u ** 2, 0);
  return [...budget]
    .filter(({ u }) => u > 0)
    .sort((a: BudgetPart, b: BudgetPart) => b.u - a.u)
    .map(({ part, u }) => ({
      part,
      name: budgetNames[part],
      u,
      share: u ** 2 / whole,
      sentence: budgetSentences[part],
    }));
}
