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

/** Inspectors' examples: 24 in in 1:30, 1:15, 1:45 and 2:00, in/min. */
test.each([
  [90, 16],
  [75, 19.2],
  [105, 13.7],
  [120, 12],
])("24 in in %d s is %d in/min", (arcTimeS, ipm) => {
  const speed = travelSpeed({ ...emptyRunSetup, weldLengthMm: 24 * 25.4, arcTimeS });
  expect(Math.abs((speed?.mmPerMin ?? NaN) / 25.4 - ipm)).toBeLessThan(0.05);
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
