import { expect, test } from "vitest";
import { emptyRunSetup, travelSpeed, windowFor } from "@/lib/setup";
import { timedTravelSpeed } from "@/lib/setup/travel-speed";

/** Plain arithmetic: 1 min 33 s is 93/60 = 1.55 min, not 1.33; 310 mm in that time is 200 mm/min. */
test("length over arc time, with seconds as sixtieths", () => {
  const setup = { ...emptyRunSetup, weldLengthMm: 310, arcTimeS: 93 };
  expect(travelSpeed(setup)).toEqual({ mmPerMin: 200, from: "length-and-time" });
  expect(travelSpeed({ ...setup, travelSpeedMmPerMin: 210 })).toEqual({ mmPerMin: 210, from: "recorded" });
  expect(timedTravelSpeed({ ...setup, travelSpeedMmPerMin: 210 })).toBe(200);
  expect(travelSpeed({ ...setup, arcTimeS: null })).toBeNull();
  expect(travelSpeed({ ...setup, weldLengthMm: null })).toBeNull();
});

test("the window needs class and diameter; without a position it holds for all of them", () => {
  const t11 = { ...emptyRunSetup, electrodeClass: "E71T-11", electrodeDiameterMm: 0.9 };
  expect(windowFor(emptyRunSetup)).toBeNull();
  expect(windowFor({ ...t11, electrodeDiameterMm: null })).toBeNull();
  expect(windowFor({ ...t11, electrodeClass: "shop wire" })).toBeNull();
  const anywhere = windowFor(t11)?.wireFeedMPerMin;
  const flat = windowFor({ ...t11, position: "flat" })?.wireFeedMPerMin;
  const up = windowFor({ ...t11, position: "vertical", progression: "up" })?.wireFeedMPerMin;
  expect(up?.high).toBeLessThan(flat?.high ?? 0);
  for (const one of [flat, up]) {
    expect(anywhere?.low).toBeLessThanOrEqual(one?.low ?? 0);
    expect(anywhere?.high).toBeGreaterThanOrEqual(one?.high ?? Infinity);
  }
  expect(windowFor({ ...t11, electrodeClass: "ER70S-6" })).toBeNull();
  expect(windowFor({ ...t11, electrodeClass: "ER70S-6", process: "GMAW" })).not.toBeNull();
});
