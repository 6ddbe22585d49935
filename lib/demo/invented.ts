import { emptyBeadJudgement, type BeadContent } from "@/lib/assess";
import { emptyDrawing, type Drawing, type Mark } from "@/lib/marks";
import { emptyRunSetup, type RunSetup } from "@/lib/setup";
import { imperfectionIds, joints, positions } from "@/lib/trade";

/** Numbers from 0 to 1 out of a seed: the same seed, the same shop. A 32-bit mixing generator, for nothing but this. */
export function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Next = () => number;
const oneOf = <T>(next: Next, all: readonly T[]): T => all[Math.floor(next() * all.length)] as T;

const runs: readonly Partial<RunSetup>[] = [
  { process: "FCAW-S", electrodeClass: "E71T-11", electrodeDiameterMm: 0.9, polarity: "DCEN", gas: "none" },
  { process: "FCAW-S", electrodeClass: "E71T-11", electrodeDiameterMm: 0.9, polarity: "DCEP", gas: "none" },
  { process: "FCAW-G", electrodeClass: "E71T-1C", electrodeDiameterMm: 1.2, polarity: "DCEP", gas: "CO2" },
  { process: "GMAW", electrodeClass: "ER70S-6", electrodeDiameterMm: 0.9, polarity: "DCEP" },
  {},
];
const titles = [
  "Lap, first pass",
  "Tee, ropey",
  "Corner on thin plate",
  "Overhead stringer",
  "Gußeck, Probe",
];
const notes = ["", "", "Sounds like bacon", "Cold lap at the start, wind at the door", "After the new liner"];
const criteria = ["iso-5817-c", "iso-5817-b", "aws-d1-1-static", null, null];
const causes = ["polarity", "ctwd-long", "travel-fast", "volt-high"];

function inventedSetup(next: Next): RunSetup {
  return {
    ...emptyRunSetup,
    ...oneOf(next, runs),
    joint: oneOf(next, joints),
    position: oneOf(next, [...positions, null]),
    thicknessMm: oneOf(next, [2, 3, 6, 10, null]),
    volts: oneOf(next, [17, 19.5, null]),
    wireFeedMPerMin: oneOf(next, [3.2, 5.1, null]),
  };
}

function inventedMark(next: Next, at: number): Mark {
  const [x, y] = [200 + 1000 * next(), 520 + 160 * next()];
  return {
    id: `m${at}`,
    imperfection: oneOf(next, imperfectionIds.slice(0, 14)),
    shape: {
      kind: "line",
      points: [
        { x, y },
        { x: x + 20 + 200 * next(), y },
      ],
    },
    place: oneOf(next, ["upper-toe", "face", null] as const),
    stretch: null,
    patterns: [],
    gauge: [],
    note: "",
  };
}

/** 10 pixels a millimetre, and the weld along the middle. */
const scaled = {
  ...emptyDrawing,
  scale: { kind: "two-points", a: { x: 100, y: 1100 }, b: { x: 1100, y: 1100 }, lengthMm: 100 },
  weldLine: [
    { x: 150, y: 600 },
    { x: 1450, y: 610 },
  ],
} satisfies Drawing;

/** A bead of nobody's with one photo of 1600 by 1200 pixels: set-up, marks to scale, criteria or none, sometimes a try. */
export function inventedContent(
  next: Next,
  photoId: string,
  criteriaIds: readonly (string | null)[] = criteria,
): BeadContent {
  const marks = Array.from({ length: Math.floor(next() * 4) }, (_, at) => inventedMark(next, at));
  const outcome = oneOf(next, ["cured", "better", "worse", null, null] as const);
  return {
    title: oneOf(next, titles),
    welder: null,
    setup: inventedSetup(next),
    judgement: {
      ...emptyBeadJudgement,
      criteriaId: oneOf(next, criteriaIds),
      lookedFor:
        next() < 0.5 ? [...imperfectionIds.filter((id) => marks.every((m) => m.imperfection !== id))] : [],
      readings:
        next() < 0.3
          ? [{ quantity: "width", value: 4 + 6 * next(), instrument: "Calliper", resolution: 0.05 }]
          : [],
      tried: outcome && { causeId: oneOf(next, causes), sentence: "Change one thing.", step: "" },
      outcome,
      note: oneOf(next, notes),
    },
    photos: [{ id: photoId, role: "face", drawing: { ...scaled, marks } }],
  };
}
