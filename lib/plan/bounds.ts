import type { Source } from "@/lib/base";
import { inputCap, type RunSetup } from "@/lib/setup";
import { ampsForThickness, AMPS_RULE_MAX_MM, together } from "@/lib/trade";
import { inputPowerKw } from "./input-power";
import { feedWhere, type AtFeed, type Model } from "./model";
import { plateShares } from "./tables/figures";

export const topCodes = ["row-top", "amps-top", "input-top", "input-power", "plate-hot"] as const;
export const bottomCodes = ["row-bottom", "amps-bottom", "plate-cold"] as const;

/** One end of the feeds that may be proposed, and what sets it. */
export interface End<Code extends string> {
  readonly code: Code;
  readonly feedMPerMin: number;
  readonly source: Source;
}
export interface FeedBounds {
  readonly top: End<(typeof topCodes)[number]>;
  readonly bottom: End<(typeof bottomCodes)[number]>;
  /** Whether anything is left between them. */
  readonly open: boolean;
}

/**
 * The feeds at which this set-up may be run: inside the rows of the wire and their amps, under what the mains input holds,
 * and within what the plate bears by the ampere rule. The narrowest end speaks.
 */
export function feedBounds(model: Model): FeedBounds {
  const [low, high] = rowEnds(model);
  const tops = [
    { code: "row-top" as const, feedMPerMin: high, source: rowSource(model) },
    ...ampsEnd(model, "high").map((end) => ({ code: "amps-top" as const, ...end })),
    ...inputEnds(model),
    ...plateEnd(model, "most").map((end) => ({ code: "plate-hot" as const, ...end })),
  ];
  const bottoms = [
    { code: "row-bottom" as const, feedMPerMin: low, source: rowSource(model) },
    ...ampsEnd(model, "low").map((end) => ({ code: "amps-bottom" as const, ...end })),
    ...plateEnd(model, "least").map((end) => ({ code: "plate-cold" as const, ...end })),
  ];
  const top = tops.reduce((a, b) => (b.feedMPerMin < a.feedMPerMin ? b : a));
  const bottom = bottoms.reduce((a, b) => (b.feedMPerMin > a.feedMPerMin ? b : a));
  return { top, bottom, open: top.feedMPerMin >= bottom.feedMPerMin };
}

/** The outer ends of the rows. */
export function rowEnds({ lines }: Model): readonly [low: number, high: number] {
  return [
    Math.min(...lines.map(({ feedMPerMin }) => feedMPerMin[0])),
    Math.max(...lines.map(({ feedMPerMin }) => feedMPerMin[1])),
  ];
}

const rowSource = ({ lines }: Model): Source => together(lines.map(({ source }) => source));

/** The feed at which something reaches a value; where even the last row's end is short of it, what lies out of reach. */
function where(model: Model, of: (at: AtFeed) => number, value: number): number {
  const [low, high] = rowEnds(model);
  const rising = (feed: number) => {
    const at = model.at(feed);
    return at === null ? NaN : of(at);
  };
  if (rising(low) > value) return -Infinity;
  return rising(high) < value ? Infinity : feedWhere(rising, value, low, high);
}

const amps = ({ current }: AtFeed): number => current.amps;

/** The rows' own span of amps. */
function ampsEnd(model: Model, end: "low" | "high") {
  const band = model.window.amps;
  if (band === null) return [];
  const feedMPerMin = where(model, amps, band[end]);
  return [{ feedMPerMin, source: band.source }];
}

/** What the plate takes at most and wants at least; thicker than the rule goes it takes whatever a wire gives. */
function plateEnd(model: Model, end: "least" | "most") {
  const { thicknessMm } = model.setup;
  if (thicknessMm === null || (end === "most" && thicknessMm > AMPS_RULE_MAX_MM)) return [];
  const rule = ampsForThickness(Math.min(thicknessMm, AMPS_RULE_MAX_MM));
  if (rule === null) return [];
  return [{ feedMPerMin: where(model, amps, plateShares[end] * rule.amps), source: rule.source }];
}

function inputEnds(model: Model): readonly End<"input-top" | "input-power">[] {
  const cap = inputCap(model.setup);
  if (cap !== null) return [{ code: "input-top", feedMPerMin: cap.maxWireFeedMPerMin, source: cap.source }];
  const power = powerOf(model.setup);
  if (power === null) return [];
  const feedMPerMin = where(model, ({ volts, current }) => (volts * current.amps) / 1000, power.value);
  return [{ code: "input-power", feedMPerMin, source: power.source }];
}

const powerOf = ({ inputPower }: RunSetup) => (inputPower === null ? null : inputPowerKw(inputPower));
