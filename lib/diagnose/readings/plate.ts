import { commonPractice, fromMemory, isFillet, ownEstimate, type Surface } from "@/lib/trade";
import { thicknessOdds } from "../thickness-rules";
import type { Odds, Reader } from "../reading";
import { fact } from "./fact";
import { entered } from "./window";
import { strongest } from "../witness";

/** By surface as recorded. Self-shielded wire bears scale and light rust that ruin a gas-shielded bead. */
export const surfaceOdds: Readonly<
  Record<Surface, { readonly gasless: Odds; readonly other: Odds; readonly text: string }>
> = {
  bright: both({ contam: 0.15, coating: 0.1, "moisture-plate": 0.6 }, "The plate was bright."),
  "mill-scale": {
    gasless: { contam: 0.5, coating: 0.3 },
    other: { contam: 1.5, coating: 0.3 },
    text: "Mill scale was left on the plate.",
  },
  "light-rust": {
    gasless: { contam: 1, coating: 0.2 },
    other: { contam: 4, coating: 0.2 },
    text: "Light rust was left on the plate.",
  },
  "heavy-rust": both({ contam: 15, coating: 0.2 }, "Heavy rust was left on the plate."),
  "oil-or-paint": both({ contam: 20, coating: 0.5 }, "Oil or paint was left on the plate."),
  galvanised: both({ coating: 40 }, "The plate is galvanised."),
  primed: both({ coating: 25 }, "The plate is primed."),
  wet: both({ "moisture-plate": 40 }, "The plate was wet."),
};

function both(odds: Odds, text: string) {
  return { gasless: odds, other: odds, text };
}

export const surfaceReading: Reader = ({ setup }) => {
  if (setup.surface === null) return [];
  const row = surfaceOdds[setup.surface];
  return [
    fact({
      key: "surface",
      odds: setup.process === "FCAW-S" ? row.gasless : row.other,
      source: setup.process === "FCAW-S" ? commonPractice : strongest("common-mig-problems", "memory"),
      forText: row.text,
    }),
  ];
};

export const thicknessReading: Reader = ({ setup, facts }) => {
  if (setup.thicknessMm === null) return [];
  if (facts.some(({ code }) => code === "plate-below-floor" || code === "plate-above-cap")) return [];
  const odds = thicknessOdds(setup.thicknessMm);
  return [
    fact({
      key: "thicknessMm",
      odds,
      source: fromMemory,
      forText: setup.thicknessMm <= 2 ? "Thin plate melts through easily." : "Thick plate drinks the heat.",
      againstText: "The thickness speaks against it.",
      amounts: [entered("plate", setup.thicknessMm, "small-length")],
    }),
  ];
};

/**
 * Layers so far: slag from the bead before, and heat. Between the stringers of a pad slag is left in the first layer too.
 */
export const passReading: Reader = ({ setup, electrode }) => {
  if (setup.passCount === null) return [];
  const one = setup.passCount === 1;
  const pad = setup.joint === "stringer-pad";
  return [
    fact({
      key: "passCount",
      odds: {
        "slag-left": one && !pad ? 0.02 : 1.5,
        "heat-interpass": one ? 0.4 : setup.passCount > 2 ? 2.5 : 1.2,
      },
      source: electrode?.source ?? ownEstimate,
      forText: one ? "Beads lie beside it." : "More than one pass has been laid.",
      againstText: "It is the first pass.",
      amounts: [entered("passes", setup.passCount, "count")],
    }),
  ];
};

/** Purging and groove width matter only where there is a root to reach. */
export const rootReading: Reader = ({ setup }) => {
  if (setup.joint === null) return [];
  const root = setup.joint === "butt-open" || setup.joint === "groove-open";
  if (root) return [];
  return [
    fact({
      key: "root",
      odds: { "no-purge": 0.1, ...(isFillet(setup.joint) ? { "groove-tight": 0.3 } : {}) },
      source: ownEstimate,
      forText: "This joint has no open root.",
    }),
  ];
};

/** Carbon steel is not purged; an open root in stainless must be, and that is easily forgotten. */
export const purgeReading: Reader = ({ setup }) => {
  if (setup.baseMetal === null) return [];
  const stainless = setup.baseMetal === "stainless";
  const root = setup.joint === "butt-open" || setup.joint === "groove-open";
  if (stainless && !root) return [];
  return [
    fact({
      key: "baseMetal",
      odds: { "no-purge": stainless ? 4 : 0.05 },
      source: fromMemory,
      forText: "An open root in stainless wants gas behind it.",
      againstText: "This steel is not purged.",
    }),
  ];
};
