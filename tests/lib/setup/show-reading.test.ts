import { expect, test } from "vitest";
import { checkSetup, emptyRunSetup, findingSentence, showReading } from "@/lib/setup";
import { inch, metric } from "@/lib/units";

test("every numeric field in both systems", () => {
  const m = showReading(metric);
  const i = showReading(inch);
  // 25.4 mm and 0.0254 m/min per inch are exact; 28.316846592 L per cubic foot.
  expect([m("wireFeedMPerMin", 7.112), i("wireFeedMPerMin", 7.112)]).toEqual(["7.11 m/min", "280 in/min"]);
  expect([m("ctwdMm", 19.05), i("ctwdMm", 19.05)]).toEqual(["19.1 mm", "0.75 in"]);
  expect([m("electrodeDiameterMm", 1.2), i("electrodeDiameterMm", 1.2)]).toEqual(["1.2 mm", ".045 in"]);
  expect([m("gasFlowLPerMin", 16.518), i("gasFlowLPerMin", 16.518)]).toEqual(["16.5 L/min", "35 cfh"]);
  expect([m("thicknessMm", 6.35), i("thicknessMm", 6.35)]).toEqual(["6.35 mm", "1/4 in"]);
  expect(m("arcTimeS", 93)).toBe("1 min 33 s");
  expect([m("volts", 19.5), m("amps", 200), m("travelAngleDeg", 15), m("passCount", 2)]).toEqual([
    "19.5 V",
    "200 A",
    "15°",
    "2",
  ]);
});

test("a sentence reads in the person's own units", () => {
  const setup = {
    ...emptyRunSetup,
    process: "FCAW-S" as const,
    electrodeDiameterMm: 0.9,
    inputPower: "120V" as const,
    wireFeedMPerMin: 10.16,
  };
  const [found] = checkSetup(setup);
  if (!found) throw new Error("rule");
  expect(findingSentence(found, showReading(inch))).toBe(
    "120 V input gives out at about 280 in/min with this wire; 400 in/min needs a 230 V input.",
  );
});
