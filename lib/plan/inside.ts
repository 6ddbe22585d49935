import { voltsAtFeed } from "@/lib/trade";
import { windowQueryFor, type RunSetup } from "@/lib/setup";
import { feedBounds } from "./bounds";
import { objections } from "./gate";
import type { PlanAsk } from "./ask";
import { dialSteps } from "./tables/figures";
import { modelFor } from "./model";
import { handLimits } from "./size";

/** The dials that a series of beads may turn. */
export type TurnedField = "wireFeedMPerMin" | "volts" | "ctwdMm" | "travelSpeedMmPerMin" | "travelAngleDeg";

const within = (value: number | null, band: { low: number; high: number } | null): boolean =>
  value === null || band === null || (value >= band.low - 1e-9 && value <= band.high + 1e-9);

/**
 * Says of any set-up of one wire, joint, position and plate whether its dials lie inside the wire's rows, under what the
 * mains input holds, within what the plate takes and a hand keeps up with, and whether the check has nothing against it.
 * null where no row pairs volts with feed: nothing can be vouched for then.
 */
export function insideOf(base: RunSetup): ((setup: RunSetup) => boolean) | null {
  const model = modelFor(base);
  const query = windowQueryFor(base);
  if (model === null || query === null || base.joint === null || base.position === null) return null;
  const bounds = feedBounds(model);
  const feeds = { low: bounds.bottom.feedMPerMin, high: bounds.top.feedMPerMin };
  const { slow, fast } = handLimits(base);
  return (setup) => {
    const { wireFeedMPerMin: feed, volts, ctwdMm, travelSpeedMmPerMin, travelAngleDeg } = setup;
    return (
      within(feed, feeds) &&
      (feed === null || within(volts, voltsAtFeed(query, feed))) &&
      within(ctwdMm, model.window.ctwdMm) &&
      within(travelAngleDeg, model.window.travelAngleDeg) &&
      within(travelSpeedMmPerMin, { low: slow, high: fast }) &&
      objections(setup).length === 0
    );
  };
}

/** How far a dial is followed, as a share of where it stands. */
const FAR = 3;

/** A value as it can be set on a dial: the nearest whole step, without binary dust. */
export function onDial(dials: PlanAsk["dials"], field: TurnedField, value: number): number {
  const step = dialSteps[dials][field];
  return Number((Math.round(value / step) * step).toPrecision(12));
}

/** The smallest turn of a dial. */
export const dialStep = (dials: PlanAsk["dials"], field: TurnedField): number => dialSteps[dials][field];

/**
 * How far one dial may be turned, all others held, before the set-up leaves its rows: in whole steps outwards from where it
 * stands. null where that is not known, or lies outside already.
 */
export function turnedRange(
  setup: RunSetup,
  field: TurnedField,
  dials: PlanAsk["dials"] = "metric",
): { readonly low: number; readonly high: number } | null {
  const value = setup[field];
  const inside = insideOf(setup);
  if (value === null || inside === null || !inside(setup)) return null;
  const step = dialSteps[dials][field];
  const most = FAR * value + 10 * step;
  const end = (by: 1 | -1): number => {
    let last = value;
    for (let n = 1; ; n += 1) {
      const at = onDial(dials, field, value + by * n * step);
      if (at < 0 || at > most || !inside({ ...setup, [field]: at })) return last;
      last = at;
    }
  };
  return { low: end(-1), high: end(1) };
}
