import { AREA_RELATIVE_ERROR, currentForFeed, depositAreaMm2, legFromAreaMm } from "@/lib/arc";
import { isFillet } from "@/lib/trade";
import type { ReadingContext } from "../reading";
import type { Amount } from "../types";

/** Current after the change, by the burn-off relation. */
export function currentEffect(
  ctx: ReadingContext,
  feedMPerMin: number | null,
  ctwdMm: number | null,
): readonly Amount[] {
  const { burnOff, extensionMm } = ctx.physics;
  if (burnOff === null || feedMPerMin === null || ctwdMm === null) return [];
  const arc = extensionMm === null || ctx.setup.ctwdMm === null ? 3.5 : ctx.setup.ctwdMm - extensionMm;
  const amps = currentForFeed(burnOff, (feedMPerMin * 1000) / 60, Math.max(0, ctwdMm - arc));
  return [
    {
      quantity: "current about",
      valueSi: amps,
      unitKind: "current",
      relativeError: burnOff.relativeError,
    },
  ];
}

/** Leg after the change, by mass balance. */
export function legEffect(
  ctx: ReadingContext,
  feedMPerMin: number | null,
  travelMmPerMin: number | null,
): readonly Amount[] {
  const { deposit } = ctx.physics;
  const travel = travelMmPerMin ?? ctx.physics.travelMmPerMin;
  if (deposit === null || travel === null || ctx.setup.joint === null || !isFillet(ctx.setup.joint))
    return [];
  const feedMmPerS = feedMPerMin === null ? deposit.feedMmPerS : (feedMPerMin * 1000) / 60;
  const leg = legFromAreaMm(depositAreaMm2({ ...deposit, feedMmPerS }, travel / 60));
  return [
    {
      quantity: "leg about",
      valueSi: leg,
      unitKind: "small-length",
      relativeError: AREA_RELATIVE_ERROR / 2,
    },
  ];
}
