import type { GivenSetup } from "./scenario";

/** Set-ups with everything in order, from which a scenario departs. Basis: common practice, no source. */

/** E71T-11 0.9 mm, fillet on 6 mm: 245 in/min, 16.5 V, 19 mm. */
export const benchT11 = {
  process: "FCAW-S",
  electrodeClass: "E71T-11",
  electrodeDiameterMm: 0.9,
  polarity: "DCEN",
  gas: "none",
  baseMetal: "carbon-steel",
  wireFeedMPerMin: 6.223,
  volts: 16.5,
  ctwdMm: 19,
  travelDirection: "drag",
  travelAngleDeg: 15,
  workAngleDeg: 45,
  inputPower: "230V",
  surface: "mill-scale",
  thicknessMm: 6,
  joint: "tee",
  position: "horizontal",
} as const satisfies GivenSetup;

/** E71T-1M 1.2 mm in 75/25, fillet on 10 mm: 300 in/min, 25.5 V, 20 mm, 18 L/min. */
export const benchT1M = {
  process: "FCAW-G",
  electrodeClass: "E71T-1M",
  electrodeDiameterMm: 1.2,
  polarity: "DCEP",
  gas: "75Ar-25CO2",
  gasFlowLPerMin: 18,
  baseMetal: "carbon-steel",
  wireFeedMPerMin: 7.62,
  volts: 25.5,
  ctwdMm: 20,
  travelDirection: "drag",
  travelAngleDeg: 15,
  workAngleDeg: 45,
  inputPower: "400V-3ph",
  surface: "bright",
  thicknessMm: 10,
  joint: "tee",
  position: "horizontal",
} as const satisfies GivenSetup;

/** E308LT1-1/-4 1.2 mm in 75/25, fillet on 6 mm stainless: 350 in/min, 26 V, 18 mm, 20 L/min. */
export const benchCored308 = {
  process: "FCAW-G",
  electrodeClass: "E308LT1-1/-4",
  electrodeDiameterMm: 1.2,
  polarity: "DCEP",
  gas: "75Ar-25CO2",
  gasFlowLPerMin: 20,
  baseMetal: "stainless",
  wireFeedMPerMin: 8.89,
  volts: 26,
  ctwdMm: 18,
  travelDirection: "drag",
  travelAngleDeg: 15,
  surface: "bright",
  thicknessMm: 6,
  joint: "tee",
  position: "horizontal",
} as const satisfies GivenSetup;

/** ER70S-6 0.9 mm short-circuit in 75/25, fillet on 3 mm: 250 in/min, 18.5 V, 12 mm, 14 L/min. */
export const benchShortArc = {
  process: "GMAW",
  transfer: "short-circuit",
  electrodeClass: "ER70S-6",
  electrodeDiameterMm: 0.9,
  polarity: "DCEP",
  gas: "75Ar-25CO2",
  gasFlowLPerMin: 14,
  baseMetal: "carbon-steel",
  wireFeedMPerMin: 6.35,
  volts: 18.5,
  ctwdMm: 12,
  travelDirection: "push",
  travelAngleDeg: 10,
  inputPower: "230V",
  surface: "bright",
  thicknessMm: 3,
  joint: "tee",
  position: "horizontal",
} as const satisfies GivenSetup;

/** E7018 3.2 mm, fillet on 8 mm; the current is left to the scenario. */
export const bench7018 = {
  process: "SMAW",
  electrodeClass: "E7018",
  electrodeDiameterMm: 3.2,
  polarity: "DCEP",
  baseMetal: "carbon-steel",
  thicknessMm: 8,
  joint: "tee",
  position: "horizontal",
} as const satisfies GivenSetup;

/** Stainless butt of 3 mm with a 2.4 mm ER308L rod, DCEN, argon 9 L/min. */
export const benchTorch = {
  process: "GTAW",
  electrodeClass: "ER308L",
  electrodeDiameterMm: 2.4,
  polarity: "DCEN",
  gas: "Ar",
  gasFlowLPerMin: 9,
  baseMetal: "stainless",
  thicknessMm: 3,
  joint: "butt-open",
  position: "flat",
} as const satisfies GivenSetup;
