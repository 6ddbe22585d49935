import { MM_PER_INCH, type Source } from "@/lib/base";
import { commonPractice, remark } from "@/lib/trade";
import { emptyRunSetup, type RunSetup } from "./run-setup";

export interface ExampleSetup {
  readonly id: string;
  readonly name: string;
  readonly setup: RunSetup;
  /** Where the values come from. A starting point for scrap, never a procedure. */
  readonly source: Source;
}

const ipm = (inchesPerMinute: number) => (inchesPerMinute * MM_PER_INCH) / 1000;
const cfh = (cubicFeetPerHour: number) => (cubicFeetPerHour * 28.316846592) / 60;

const t11: Partial<RunSetup> = {
  process: "FCAW-S",
  electrodeClass: "E71T-11",
  electrodeDiameterMm: 0.9,
  polarity: "DCEN",
  gas: "none",
  baseMetal: "carbon-steel",
  travelDirection: "drag",
};
const t1: Partial<RunSetup> = {
  process: "FCAW-G",
  electrodeDiameterMm: 1.2,
  polarity: "DCEP",
  gasFlowLPerMin: cfh(40),
  ctwdMm: 20,
  travelDirection: "drag",
  travelAngleDeg: 15,
  baseMetal: "carbon-steel",
  surface: "bright",
};
const lt3: Partial<RunSetup> = {
  process: "FCAW-S",
  electrodeClass: "E308LT0-3",
  electrodeDiameterMm: 0.9,
  polarity: "DCEP",
  gas: "none",
  wireFeedMPerMin: ipm(320),
  volts: 26,
  amps: 110,
  ctwdMm: 16,
  travelDirection: "drag",
  travelAngleDeg: 15,
  baseMetal: "stainless",
  surface: "bright",
  position: "horizontal",
  inputPower: "230V",
};

const example = (id: string, name: string, note: string, ...parts: Partial<RunSetup>[]): ExampleSetup => ({
  id,
  name,
  setup: Object.assign({}, emptyRunSetup, ...parts) as RunSetup,
  source: remark(commonPractice, note),
});

const ANCHORS = "feed, volts and tip to work are the trade's bench points; the rest is chosen to suit them";
const BETWEEN =
  "feed, volts and tip to work lie between the trade's bench points for sheet and for the hottest fillet";
const CHOSEN = "chosen inside the published window, not a procedure";

/** The set-ups a person can start from. Values: common practice, no source, unless the note says otherwise. */
export const exampleSetups: readonly ExampleSetup[] = [
  example("t11-stringers", "E71T-11 0.9 mm, stringers on plate", ANCHORS, t11, {
    wireFeedMPerMin: ipm(245),
    volts: 16.5,
    amps: 140,
    ctwdMm: 19,
    travelAngleDeg: 20,
    workAngleDeg: 90,
    joint: "stringer-pad",
    position: "flat",
    thicknessMm: 6,
    surface: "mill-scale",
    inputPower: "230V",
  }),
  example("t11-lap-sheet", "E71T-11 0.9 mm, lap on 2 mm sheet", ANCHORS, t11, {
    wireFeedMPerMin: ipm(110),
    volts: 15,
    ctwdMm: 19,
    travelAngleDeg: 20,
    workAngleDeg: 45,
    joint: "lap",
    position: "horizontal",
    thicknessMm: 2,
    surface: "bright",
    inputPower: "120V",
  }),
  example("t11-tee-120", "E71T-11 0.9 mm, T-joint horizontal, 120 V", ANCHORS, t11, {
    wireFeedMPerMin: ipm(280),
    volts: 17,
    ctwdMm: 19,
    travelAngleDeg: 20,
    workAngleDeg: 45,
    joint: "tee",
    position: "horizontal",
    thicknessMm: 5,
    surface: "mill-scale",
    inputPower: "120V",
  }),
  example("t11-tee-230", "E71T-11 0.9 mm, T-joint horizontal, 230 V", BETWEEN, t11, {
    wireFeedMPerMin: ipm(300),
    volts: 17.5,
    amps: 165,
    ctwdMm: 22,
    travelAngleDeg: 20,
    workAngleDeg: 45,
    joint: "tee",
    position: "horizontal",
    thicknessMm: 6,
    surface: "mill-scale",
    inputPower: "230V",
  }),
  example("t11-overhead", "E71T-11 0.9 mm, T-joint overhead", CHOSEN, t11, {
    wireFeedMPerMin: ipm(150),
    volts: 15,
    ctwdMm: 16,
    travelAngleDeg: 15,
    workAngleDeg: 45,
    joint: "tee",
    position: "overhead",
    thicknessMm: 5,
    surface: "mill-scale",
    inputPower: "230V",
  }),
  example("t1-mix", "E71T-1M 1.2 mm in 75/25, T-joint horizontal", CHOSEN, t1, {
    electrodeClass: "E71T-1M",
    gas: "75Ar-25CO2",
    wireFeedMPerMin: ipm(300),
    volts: 25,
    amps: 200,
    workAngleDeg: 45,
    joint: "tee",
    position: "horizontal",
    thicknessMm: 8,
    inputPower: "400V-3ph",
  }),
  example("t1-co2", "E71T-1C 1.2 mm in CO2, T-joint horizontal", CHOSEN, t1, {
    electrodeClass: "E71T-1C",
    gas: "CO2",
    wireFeedMPerMin: ipm(300),
    volts: 26.5,
    amps: 200,
    workAngleDeg: 45,
    joint: "tee",
    position: "horizontal",
    thicknessMm: 8,
    inputPower: "400V-3ph",
  }),
  example("t1-vertical-up", "E71T-1M 1.2 mm, T-joint vertical up", CHOSEN, t1, {
    electrodeClass: "E71T-1M",
    gas: "75Ar-25CO2",
    wireFeedMPerMin: ipm(200),
    volts: 23,
    travelAngleDeg: 10,
    workAngleDeg: 45,
    joint: "tee",
    position: "vertical",
    progression: "up",
    thicknessMm: 10,
    inputPower: "400V-3ph",
  }),
  example("t1-groove-backed", "E71T-1M 1.2 mm, groove over backing", CHOSEN, t1, {
    electrodeClass: "E71T-1M",
    gas: "75Ar-25CO2",
    wireFeedMPerMin: ipm(320),
    volts: 25.5,
    amps: 210,
    workAngleDeg: 90,
    joint: "groove-backed",
    position: "flat",
    thicknessMm: 12,
    fitUpGapMm: 6,
    inputPower: "400V-3ph",
  }),
  example("lt1-tee", "E308LT1 1.2 mm in 75/25, T-joint horizontal", CHOSEN, t1, {
    electrodeClass: "E308LT1-1/-4",
    gas: "75Ar-25CO2",
    gasFlowLPerMin: cfh(45),
    wireFeedMPerMin: ipm(350),
    volts: 25.5,
    amps: 170,
    ctwdMm: 18,
    workAngleDeg: 45,
    joint: "tee",
    position: "horizontal",
    baseMetal: "stainless",
    thicknessMm: 6,
    inputPower: "400V-3ph",
  }),
  example("lt3-lap", "E308LT0-3 0.9 mm, lap", ANCHORS, lt3, {
    workAngleDeg: 45,
    joint: "lap",
    thicknessMm: 3,
  }),
  example("lt3-tee", "E308LT0-3 0.9 mm, T-joint", ANCHORS, lt3, {
    workAngleDeg: 45,
    joint: "tee",
    thicknessMm: 5,
  }),
];
