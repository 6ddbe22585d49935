import { commonPractice, fromMemory, isFillet, ownEstimate, type Surface } from "@/lib/trade";
import { thicknessRules } from "../thickness-rules";
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

export const thicknessReading: Reader = ({ setup, electrode }) => {
  if (setup.thicknessMm === null) return [];
  const { odds, source } = thicknessRules(
    setup.thicknessMm,
    electrode,
    setup.electrodeDiameterMm,
    setup.position,
  );
  return [
    fact({
      key: "thicknessMm",
      odds,
      source,
      forText:
        (odds["thin-base"] ?? 0) > 1
          ? "The plate is thin for this electrode."
          : "The plate is thick for this electrode.",
      againstText: "The thickness speaks against it.",
      amounts: [entered("plate", setup.thicknessMm, "small-length")],
    }),
  ];
};

export const gapReading: Reader = ({ setup }) => {
  if (setup.fitUpGapMm === null) return [];
  const gap = setup.fitUpGapMm;
  const root =
    setup.joint === "butt-open" || setup.joint === "groove-open" || setup.joint === "groove-backed";
  // An open root is wide from 4 mm on, in sheet as soon as the gap is wider than the sheet is thick.
  const wide = root ? Math.min(4, setup.thicknessMm ?? 4) : 1.5;
  return [
    fact({
      key: "fitUpGapMm",
      odds: {
        gap: gap > 1.5 * wide ? 15 : gap > wide ? 5 : gap < 0.5 * wide ? 0.2 : 1,
        "groove-tight": root && gap < 1 ? 5 : 0.5,
      },
      source: fromMemory,
      forText: gap > wide ? "The gap is wide for this joint." : "The root is tight.",
      againstText: "The gap is as it should be.",
      amounts: [entered("gap", gap, "small-length")],
    }),
  ];
};

/** Layers so far: slag from the bead before, heat, and what the wire is rated for. */
export const passReading: Reader = ({ setup, electrode }) => {
  if (setup.passCount === null) return [];
  const one = setup.passCount === 1;
  const rating = electrode?.passes ?? null;
  const worn =
    rating === "single" && !one
      ? 400
      : rating === "limited" && setup.passCount > 3
        ? 30
        : rating === "multi" || one
          ? 0.02
          : 1;
  return [
    fact({
      key: "passCount",
      odds: one
        ? { "slag-left": 0.02, "heat-interpass": 0.4, "single-pass-wire": 0.02 }
        : { "slag-left": 1.5, "single-pass-wire": worn, "heat-interpass": setup.passCount > 2 ? 2.5 : 1.2 },
      source: electrode?.source ?? ownEstimate,
      forText: "More than one pass has been laid.",
      againstText: one ? "It is the first pass." : "The wire is rated for passes.",
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

/** Carbon steel is not purged. */
export const metalReading: Reader = ({ setup }) =>
  setup.baseMetal === null || setup.baseMetal === "stainless"
    ? []
    : [
        fact({
          key: "baseMetal",
          odds: { "no-purge": 0.05 },
          source: fromMemory,
          forText: "This steel is not purged.",
        }),
      ];
