import type { Source } from "@/lib/base";
import { commonPractice, fromMemory, ownEstimate } from "@/lib/trade";
import type { CauseId } from "../cause-ids";
import type { ReadingContext } from "../reading";
import type { UnitKind } from "../types";
import { current, volts } from "./dials";
import { gasFlow, gasKind, polarity } from "./fixed-by-class";
import { dragAngle, fitUpGap, passSize, pullInstead, tipToWork, travel, workAngle } from "./hand";
import { noNumber, number, type Step } from "./step";
import { strongest } from "../witness";

function fixed(quantity: string, unitKind: UnitKind, toSi: number, reason: string, source: Source) {
  return (): Step => ({ ...noNumber(reason, source), quantity, unitKind, toSi });
}

/** Causes whose correction has a number, or a word to change to. */
export const steps: Partial<Readonly<Record<CauseId, (ctx: ReadingContext) => Step>>> = {
  "ctwd-long": (ctx) => tipToWork(ctx, -1),
  "ctwd-short": (ctx) => tipToWork(ctx, 1),
  "travel-fast": (ctx) => travel(ctx, -1),
  "travel-slow": (ctx) => travel(ctx, 1),
  "volt-high": (ctx) => volts(ctx, -1),
  "volt-low": (ctx) => volts(ctx, 1),
  "wfs-high": (ctx) => current(ctx, -1),
  "wfs-low": (ctx) => current(ctx, 1),
  polarity,
  "gas-wrong": gasKind,
  "gas-low": (ctx) => gasFlow(ctx, 1),
  "gas-high": (ctx) => gasFlow(ctx, -1),
  "drag-excess": dragAngle,
  "push-excess": dragAngle,
  "push-on-slag": pullInstead,
  "work-angle": workAngle,
  "pass-too-big": passSize,
  gap: fitUpGap,
  "arc-long": ({ setup }) =>
    number("arc length", "small-length", null, setup.electrodeDiameterMm, {
      reason: "About the core diameter.",
      source: strongest("apprenticeship-notes"),
    }),
  contam: fixed(
    "bright metal on each side",
    "small-length",
    25,
    "Dirt is drawn in from beside the joint as well.",
    ownEstimate,
  ),
  "crater-unfilled": fixed(
    "go back over the bead",
    "small-length",
    6,
    "Then wait until the crater is full.",
    strongest("crack-chart"),
  ),
  "moisture-plate": fixed(
    "plate at least",
    "temperature",
    95,
    "Water is gone there, with some reserve.",
    strongest("porosity-ranking"),
  ),
  "heat-interpass": ({ setup }) =>
    setup.baseMetal === "stainless"
      ? fixed(
          "start each pass below",
          "temperature",
          150,
          "The usual ceiling for stainless.",
          strongest("trade-reference-notes"),
        )()
      : noNumber("Each pass should start as cool as the first.", fromMemory),
  placement: ({ setup }) =>
    number("wire off the joint line, at most", "small-length", null, setup.electrodeDiameterMm, {
      reason:
        "Within one wire diameter of the root; a stringer is aimed at the toe of the last or one diameter off.",
      source: commonPractice,
    }),
  downhill: ({ setup }) => ({
    ...noNumber("Uphill the pool stays behind the arc.", strongest("steel-connection-handbook")),
    quantity: "progression",
    fromText: setup.progression,
    toText: "up",
  }),
};
