import fc from "fast-check";
import {
  gaugeQuantities,
  type Drawing,
  type DrawingAction,
  type GaugeReading,
  type Mark,
  type MarkDescription,
  type MarkShapeData,
  type Scale,
} from "@/lib/marks";
import { DRAWING_VERSION } from "@/lib/marks/drawing";
import { type Action } from "@/lib/marks/action";
import type { Point } from "@/lib/geometry";
import { imperfectionIds, patterns, places, stretches } from "@/lib/trade";

/**
 * Shared generators. Numbers are whole thousandths: no measurement is finer, and scaling one by a power of two does
 * not round. They carry no -0: JSON keeps no sign on zero, and no photo has one.
 */
const finite = (min: number, max: number): fc.Arbitrary<number> =>
  fc
    .integer({ min: Math.ceil(min * 1000), max: Math.floor(max * 1000) })
    .map((thousandths) => thousandths / 1000 + 0);

/** A point of a photo of up to 8000 pixels a side, a little outside included. */
export const arbPoint: fc.Arbitrary<Point> = fc.record({ x: finite(-50, 8000), y: finite(-50, 8000) });

/** Few ids, so that actions of a random sequence meet the same marks. */
export const arbMarkId: fc.Arbitrary<string> = fc.constantFrom("a", "b", "c", "d", "e");

const arbPoints = (minLength: number) => fc.array(arbPoint, { minLength, maxLength: 7 });

export const arbShape: fc.Arbitrary<MarkShapeData> = fc.oneof(
  fc.record({
    kind: fc.constant("point" as const),
    at: arbPoint,
    radius: fc.option(finite(0.5, 400), { nil: null }),
  }),
  fc.record({ kind: fc.constant("line" as const), points: arbPoints(2) }),
  fc.record({ kind: fc.constant("outline" as const), points: arbPoints(3) }),
);

const arbGauge: fc.Arbitrary<GaugeReading> = fc.record({
  quantity: fc.constantFrom(...gaugeQuantities),
  valueMm: finite(0, 60),
  instrument: fc.constantFrom("pit gauge", "calliper", "leg gauge"),
  resolutionMm: fc.constantFrom(0.05, 0.1, 0.5),
});

export const arbDescription: fc.Arbitrary<MarkDescription> = fc.record({
  place: fc.constantFrom(...places, null),
  stretch: fc.constantFrom(...stretches, null),
  patterns: fc.subarray([...patterns]),
  note: fc.string({ maxLength: 40 }),
  gauge: fc.array(arbGauge, { maxLength: 3 }),
});

export const arbMark: fc.Arbitrary<Mark> = fc
  .record({
    id: arbMarkId,
    imperfection: fc.constantFrom(...imperfectionIds),
    shape: arbShape,
    about: arbDescription,
  })
  .map(({ about, ...mark }) => ({ ...mark, ...about }));

export const arbScale: fc.Arbitrary<Scale> = fc.oneof(
  fc.record({
    kind: fc.constant("two-points" as const),
    a: arbPoint,
    b: arbPoint,
    lengthMm: finite(0.5, 900),
  }),
  fc.record({
    kind: fc.constant("rectangle" as const),
    corners: fc.tuple(arbPoint, arbPoint, arbPoint, arbPoint),
    widthMm: finite(5, 300),
    heightMm: finite(5, 300),
  }),
  fc.record({
    kind: fc.constant("edges" as const),
    edges: fc.array(fc.tuple(arbPoint, arbPoint), { minLength: 4, maxLength: 4 }),
    widthMm: finite(5, 300),
    heightMm: finite(5, 300),
  }),
  fc.record({
    kind: fc.constant("disc" as const),
    rim: fc.array(arbPoint, { minLength: 5, maxLength: 9 }),
    diameterMm: finite(5, 60),
  }),
  fc.record({
    kind: fc.constant("strip" as const),
    corners: fc.array(
      fc.tuple(arbPoint, finite(0, 200), finite(0, 60)).map(([point, xMm, yMm]) => ({ ...point, xMm, yMm })),
      { minLength: 8, maxLength: 12 },
    ),
    cornerSigmaPx: finite(0.05, 2),
    printFactor: finite(0.9, 1.1),
  }),
);

export const arbDrawing: fc.Arbitrary<Drawing> = fc.record({
  schemaVersion: fc.constant(DRAWING_VERSION as 1),
  scale: fc.option(arbScale, { nil: null }),
  weldLine: fc.option(arbPoints(2), { nil: null }),
  marks: fc.uniqueArray(arbMark, { selector: (mark) => mark.id, maxLength: 5 }),
});

const arbIndex = fc.integer({ min: -1, max: 8 });
/** Shifts reach beyond what a drawing may hold, so that refusals are met too. */
const arbShift: fc.Arbitrary<Point> = fc.record({ x: finite(-60_000, 120_000), y: finite(-300, 300) });

export const arbDrawingAction: fc.Arbitrary<DrawingAction> = fc.oneof(
  fc.record({ type: fc.constant("mark.add" as const), mark: arbMark }),
  fc.record({ type: fc.constant("mark.replaceShape" as const), id: arbMarkId, shape: arbShape }),
  fc.record({ type: fc.constant("mark.movePoint" as const), id: arbMarkId, index: arbIndex, to: arbPoint }),
  fc.record({ type: fc.constant("mark.moveBy" as const), id: arbMarkId, by: arbShift }),
  fc.record({ type: fc.constant("mark.insertPoint" as const), id: arbMarkId, index: arbIndex, at: arbPoint }),
  fc.record({ type: fc.constant("mark.removePoint" as const), id: arbMarkId, index: arbIndex }),
  fc.record({
    type: fc.constant("mark.setImperfection" as const),
    id: arbMarkId,
    imperfection: fc.constantFrom(...imperfectionIds),
  }),
  fc.record({
    type: fc.constant("mark.describe" as const),
    id: arbMarkId,
    about: arbDescription.chain((all) =>
      fc
        .subarray(Object.keys(all) as (keyof MarkDescription)[])
        .map((keys) => Object.fromEntries(keys.map((key) => [key, all[key]])) as Partial<MarkDescription>),
    ),
  }),
  fc.record({ type: fc.constant("mark.remove" as const), id: arbMarkId }),
  fc.record({ type: fc.constant("marks.remove" as const), ids: fc.array(arbMarkId, { maxLength: 4 }) }),
  fc.record({
    type: fc.constant("marks.setImperfection" as const),
    ids: fc.array(arbMarkId, { maxLength: 4 }),
    imperfection: fc.constantFrom(...imperfectionIds),
  }),
  fc.record({ type: fc.constant("scale.set" as const), scale: arbScale }),
  fc.record({ type: fc.constant("scale.clear" as const) }),
  fc.record({ type: fc.constant("weldLine.set" as const), points: fc.array(arbPoint, { maxLength: 5 }) }),
  fc.record({ type: fc.constant("weldLine.clear" as const) }),
);

export const arbAction: fc.Arbitrary<Action> = fc.oneof(
  { weight: 8, arbitrary: arbDrawingAction },
  { weight: 2, arbitrary: fc.constant<Action>({ type: "undo" }) },
  { weight: 1, arbitrary: fc.constant<Action>({ type: "redo" }) },
  { weight: 1, arbitrary: arbDrawing.map((drawing): Action => ({ type: "load", drawing })) },
);
