import { diagnose, DiagnoseInputSchema, type DiagnoseInput, type Diagnosis } from "@/lib/diagnose";
import { emptyRunSetup, windowQueryFor, type RunSetup } from "@/lib/setup";
import {
  electrodeClasses,
  imperfectionIds,
  inputPowers,
  joints,
  parameterWindow,
  windowLines,
  type ElectrodeClass,
  type ImperfectionId,
  type Position,
  type Progression,
} from "@/lib/trade";
import { transfers } from "@/lib/trade/names";
import { linksFor } from "@/lib/diagnose/model";

/** Sizes a set-up stores, mm. */
const SIZES = [0.6, 0.8, 0.9, 1.0, 1.2, 1.3, 1.6, 1.7, 2.0, 2.4, 3.2, 4.0, 4.8];
const THICKNESSES_MM = [0.8, 1.5, 3, 6, 12, 25];
const PLACES: readonly (readonly [Position, Progression | null])[] = [
  ["flat", null],
  ["horizontal", null],
  ["vertical", "up"],
  ["vertical", "down"],
  ["overhead", null],
];

/** A small generator with a seed, so that every run of the sweep walks the same beads. */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

interface Point {
  readonly electrode: ElectrodeClass;
  readonly diameterMm: number;
  readonly joint: (typeof joints)[number];
  readonly place: (typeof PLACES)[number];
  readonly thicknessMm: number;
  readonly inputPower: (typeof inputPowers)[number] | null;
}

/** A size the class has rows for; where it has none, one size all the same. */
function sizesOf(electrode: ElectrodeClass): readonly number[] {
  const known = SIZES.filter(
    (diameterMm) =>
      (parameterWindow({
        electrode,
        diameterMm,
        gas: null,
        transfer: null,
        positions: ["flat"],
      })?.[electrode.process === "SMAW" ? "amps" : "volts"] ?? null) !== null,
  );
  return known.length > 0
    ? known
    : [electrode.process === "SMAW" ? 3.2 : electrode.process === "GTAW" ? 2.4 : 1.2];
}

/** Every class, size, joint, position, thickness and mains input. */
export function grid(): readonly Point[] {
  return electrodeClasses.flatMap((electrode) =>
    sizesOf(electrode).flatMap((diameterMm) =>
      joints.flatMap((joint) =>
        PLACES.flatMap((place) =>
          THICKNESSES_MM.flatMap((thicknessMm) =>
            [...inputPowers, null].map((inputPower) => ({
              electrode,
              diameterMm,
              joint,
              place,
              thicknessMm,
              inputPower,
            })),
          ),
        ),
      ),
    ),
  );
}

const pick = <T>(list: readonly T[], chance: () => number): T => list[Math.floor(chance() * list.length)]!;

/** How a bead of this point was run: settings in, at the edge of and out of its windows, some of them not recorded. */
export function runAt(point: Point, chance: () => number): RunSetup {
  const { electrode, diameterMm, joint, place, thicknessMm, inputPower } = point;
  const base: RunSetup = {
    ...emptyRunSetup,
    process: electrode.process,
    electrodeClass: electrode.id,
    electrodeDiameterMm: diameterMm,
    polarity: electrode.polarity.length === 0 ? null : pick(electrode.polarity, chance),
    gas: electrode.gases.length === 0 ? null : pick(electrode.gases, chance),
    transfer: electrode.process === "GMAW" ? pick(transfers, chance) : null,
    joint,
    position: place[0],
    progression: place[1],
    thicknessMm,
    inputPower,
    baseMetal: electrode.metal === "stainless" ? "stainless" : "carbon-steel",
  };
  const query = windowQueryFor(base)!;
  const lines = windowLines(query);
  const window = parameterWindow(query);
  // From a little below the low end to a little above the high one.
  const within = ([low, high]: readonly [number, number], over = 0.35) =>
    low + (high - low) * (chance() * (1 + 2 * over) - over);
  const line = lines.length === 0 ? null : pick(lines, chance);
  const some = (value: number | null, known = 0.85) =>
    value === null || chance() > known ? null : Math.round(Math.max(0.2, value) * 100) / 100;
  const amps = window?.amps ? within([window.amps.low, window.amps.high]) : null;
  const wire = line !== null;
  return {
    ...base,
    wireFeedMPerMin: wire ? some(within(line.feedMPerMin)) : null,
    volts: wire && line.volts ? some(within(line.volts)) : null,
    amps: wire ? (chance() < 0.15 ? some(amps) : null) : some(amps),
    ctwdMm: wire && line.ctwdMm ? some(within(line.ctwdMm, 0.5)) : null,
    travelSpeedMmPerMin: some(100 + 500 * chance(), 0.4),
    targetLegMm: some(2 + 10 * chance(), 0.4),
    workAngleDeg: some(30 + 70 * chance(), 0.3),
    travelAngleDeg: some(50 * chance(), 0.3),
    passCount: chance() < 0.5 ? 1 + Math.floor(4 * chance()) : null,
  };
}

export function marksFor(setup: RunSetup, chance: () => number): DiagnoseInput["findings"] {
  const can = imperfectionIds.filter((id) => linksFor(id, setup.process).length > 0);
  const count = 1 + Math.floor(3 * chance());
  return Array.from({ length: count }, (): DiagnoseInput["findings"][number] => ({
    imperfection: pick<ImperfectionId>(can, chance),
    place: pick([null, null, "face", "both-toes", "upper-toe", "lower-toe", "root"] as const, chance),
    stretch: pick([null, null, null, "start", "whole-length", "crater", "restart"] as const, chance),
    patterns: [],
  }));
}

export function ask(input: Partial<DiagnoseInput>): Diagnosis {
  const result = diagnose(DiagnoseInputSchema.parse(input));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
