import fc from "fast-check";
import { emptyRunSetup, type RunSetup } from "@/lib/setup";
import {
  electrodeClasses,
  gases,
  inputPowers,
  joints,
  polarities,
  positions,
  processes,
  progressions,
  travelDirections,
} from "@/lib/trade";
import { baseMetals, surfaces, transfers } from "@/lib/trade/names";

const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { freq: 4, nil: null });
const number = (min: number, max: number) => maybe(fc.double({ min, max, noNaN: true }));

/** Set-ups near the tables' own classes and sizes, so that rules meet, with any field unknown. */
export const setupArb: fc.Arbitrary<RunSetup> = fc
  .record({
    process: maybe(fc.constantFrom(...processes)),
    transfer: maybe(fc.constantFrom(...transfers)),
    electrodeClass: maybe(fc.constantFrom(...electrodeClasses.map((row) => row.id), "shop wire")),
    electrodeDiameterMm: maybe(fc.constantFrom(0.8, 0.9, 1.2, 1.6, 1.7, 2.4, 3.2)),
    polarity: maybe(fc.constantFrom(...polarities)),
    gas: maybe(fc.constantFrom(...gases)),
    gasFlowLPerMin: maybe(fc.oneof(fc.constant(0), fc.double({ min: 1, max: 40, noNaN: true }))),
    wireFeedMPerMin: number(0.5, 20),
    volts: number(8, 40),
    amps: number(20, 400),
    ctwdMm: number(3, 60),
    travelDirection: maybe(fc.constantFrom(...travelDirections)),
    travelAngleDeg: number(0, 60),
    workAngleDeg: number(0, 90),
    travelSpeedMmPerMin: number(50, 800),
    weldLengthMm: number(20, 500),
    arcTimeS: number(5, 200),
    joint: maybe(fc.constantFrom(...joints)),
    position: maybe(fc.constantFrom(...positions)),
    progression: maybe(fc.constantFrom(...progressions)),
    baseMetal: maybe(fc.constantFrom(...baseMetals)),
    thicknessMm: number(0.5, 25),
    fitUpGapMm: number(0, 6),
    surface: maybe(fc.constantFrom(...surfaces)),
    inputPower: maybe(fc.constantFrom(...inputPowers)),
    outdoors: maybe(fc.boolean()),
    passCount: maybe(fc.integer({ min: 1, max: 8 })),
    targetLegMm: number(2, 15),
  })
  .map((fields) => ({ ...emptyRunSetup, ...fields }));
