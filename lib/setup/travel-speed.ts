import type { RunSetup } from "./run-setup";

export interface TravelSpeed {
  readonly mmPerMin: number;
  readonly from: "recorded" | "length-and-time";
}

/** Travel speed, mm/min: as recorded, otherwise weld length over arc time (1 min 33 s is 1.55 min). null if neither is known. */
export function travelSpeed(setup: RunSetup): TravelSpeed | null {
  if (setup.travelSpeedMmPerMin !== null) return { mmPerMin: setup.travelSpeedMmPerMin, from: "recorded" };
  const mmPerMin = timedTravelSpeed(setup);
  return mmPerMin === null ? null : { mmPerMin, from: "length-and-time" };
}

/** Weld length over arc time, mm/min, whether or not a speed was recorded. null when either is unknown. */
export function timedTravelSpeed({ weldLengthMm, arcTimeS }: RunSetup): number | null {
  return weldLengthMm === null || arcTimeS === null ? null : weldLengthMm / (arcTimeS / 60);
}
