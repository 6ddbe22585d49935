import { currentAt, legAt, voltsWithFeed, type RunSetup } from "@/lib/setup";
import type { Amount } from "../types";

/** What the models expect of a change, beside it. */
export function currentEffect(
  setup: RunSetup,
  feedMPerMin: number | null,
  ctwdMm: number | null,
): readonly Amount[] {
  const current = currentAt(setup, feedMPerMin, ctwdMm);
  if (current === null) return [];
  const relativeError = current.highAmps / current.amps - 1;
  return [{ quantity: "current about", valueSi: current.amps, unitKind: "current", relativeError }];
}

/** Leg after the change, by mass balance; nothing while travel is unknown. */
export function legEffect(
  setup: RunSetup,
  feedMPerMin: number | null,
  travelMmPerMin: number | null,
): readonly Amount[] {
  const leg = legAt(setup, feedMPerMin, travelMmPerMin);
  if (leg === null) return [];
  const { value, relativeError } = leg;
  return [{ quantity: "leg about", valueSi: value, unitKind: "small-length", relativeError }];
}

export function voltsEffect(setup: RunSetup, feedMPerMin: number): readonly Amount[] {
  const volts = voltsWithFeed(setup, feedMPerMin);
  return volts === null
    ? []
    : [
        {
          quantity: "volts that go with it, about",
          valueSi: volts,
          unitKind: "voltage",
          relativeError: null,
        },
      ];
}
