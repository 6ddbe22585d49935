import { describe, expect, it } from "vitest";
import {
  calibrate,
  defaultMeasureOptions,
  gaugeQuantity,
  measureCase,
  MeasureCaseSchema,
  measureMark,
  measureSentences,
  measureWeldLine,
  sumQuantities,
} from "@/lib/measure";
import { DrawingSchema, MarkSchema, type Drawing, type Mark } from "@/lib/marks";

/** 20 px per mm, invented. */
const drawing: Drawing = DrawingSchema.parse({
  schemaVersion: 1,
  scale: { kind: "two-points", a: { x: 0, y: 900 }, b: { x: 2000, y: 900 }, lengthMm: 100 },
  weldLine: [
    { x: 100, y: 500 },
    { x: 2100, y: 500 },
  ],
  marks: [],
});
const mark = (shape: unknown, more: object = {}): Mark =>
  MarkSchema.parse({
    id: "m",
    imperfection: "undercut",
    shape,
    place: "upper-toe",
    stretch: null,
    patterns: [],
    gauge: [],
    note: "",
    ...more,
  });
const calibrated = (on: Drawing) => calibrate(on.scale, defaultMeasureOptions);
const measure = (one: Mark, on: Drawing = drawing) => measureMark(on, one, calibrated(on));

describe("measureMark", () => {
  it("a line has a length and a place along the weld", () => {
    const m = measure(
      mark({
        kind: "line",
        points: [
          { x: 300, y: 400 },
          { x: 700, y: 400 },
        ],
      }),
    );
    expect(m.lengthMm!.value).toBeCloseTo(20, 9);
    expect(m.alongMm![0]).toBeCloseTo(10, 9);
    expect(m.alongMm![1]).toBeCloseTo(30, 9);
    expect([m.depthMm, m.heightMm, m.diameterMm, m.areaMm2]).toEqual([null, null, null, null]);
  });

  it("a spot has a diameter, a bare point none", () => {
    const spot = measure(mark({ kind: "point", at: { x: 500, y: 500 }, radius: 30 }));
    expect(spot.diameterMm!.value).toBeCloseTo(3, 9);
    expect(spot.alongMm![1] - spot.alongMm![0]).toBeCloseTo(3, 9);
    expect(measure(mark({ kind: "point", at: { x: 500, y: 500 }, radius: null })).diameterMm).toBeNull();
  });

  it("an outline has extent, area and the circle of its area; one that crosses itself has no area", () => {
    const ring = [
      { x: 400, y: 400 },
      { x: 480, y: 400 },
      { x: 480, y: 460 },
      { x: 400, y: 460 },
    ];
    const m = measure(mark({ kind: "outline", points: ring }));
    expect(m.areaMm2!.value).toBeCloseTo(12, 9);
    expect(m.lengthMm!.value).toBeCloseTo(5, 9);
    expect(m.diameterMm!.value).toBeCloseTo(2 * Math.sqrt(12 / Math.PI), 9);
    const crossed = measure(mark({ kind: "outline", points: [ring[0], ring[2], ring[1], ring[3]] }));
    expect(crossed.areaMm2).toBeNull();
    expect(crossed.issues.map(({ code }) => code)).toContain("outline-crosses-itself");
  });

  it("without a scale there is no size, only a reason; what a gauge read stays", () => {
    const line = mark(
      {
        kind: "line",
        points: [
          { x: 300, y: 400 },
          { x: 700, y: 400 },
        ],
      },
      { gauge: [{ quantity: "depth", valueMm: 0.4, instrument: "undercut gauge", resolutionMm: 0.1 }] },
    );
    const m = measure(line, { ...drawing, scale: null });
    expect([m.lengthMm, m.alongMm]).toEqual([null, null]);
    expect(m.issues.map(({ code }) => code)).toEqual(["no-scale"]);
    expect(m.depthMm).toMatchObject({ value: 0.4, source: "gauge", instrument: "undercut gauge" });
  });

  it("a gauge reading replaces the photo's figure, the largest of several", () => {
    const read = (valueMm: number) => ({
      quantity: "length",
      valueMm,
      instrument: "rule",
      resolutionMm: 0.5,
    });
    const line = mark(
      {
        kind: "line",
        points: [
          { x: 300, y: 400 },
          { x: 700, y: 400 },
        ],
      },
      { gauge: [read(17), read(18.5), read(16)] },
    );
    expect(measure(line).lengthMm).toMatchObject({ value: 18.5, source: "gauge" });
  });

  it("says what is missing when the weld has no line", () => {
    const line = mark({
      kind: "line",
      points: [
        { x: 300, y: 400 },
        { x: 700, y: 400 },
      ],
    });
    const m = measure(line, { ...drawing, weldLine: null });
    expect(m.alongMm).toBeNull();
    expect(m.issues.map(({ code }) => code)).toEqual(["no-weld-line"]);
  });

  it("refuses a mark beyond the horizon of the plane", () => {
    const corners = [
      { x: 900, y: 1000 },
      { x: 1100, y: 1000 },
      { x: 1300, y: 1400 },
      { x: 700, y: 1400 },
    ] as const;
    const steep: Drawing = {
      ...drawing,
      scale: { kind: "rectangle", corners: [...corners], widthMm: 50, heightMm: 50 },
    };
    const m = measure(
      mark({
        kind: "line",
        points: [
          { x: 900, y: 100 },
          { x: 1100, y: 90 },
        ],
      }),
      steep,
    );
    expect(m.lengthMm).toBeNull();
    expect(m.issues.map(({ code }) => code)).toEqual(["beyond-horizon"]);
  });

  it("measures the weld along its line", () => {
    expect(measureWeldLine(drawing, calibrated(drawing))!.value).toBeCloseTo(100, 9);
    expect(measureWeldLine({ ...drawing, weldLine: null }, calibrated(drawing))).toBeNull();
  });

  it("reports a whole case with the options it applied", () => {
    const report = measureCase(MeasureCaseSchema.parse({ drawing, options: { pickSigmaPx: 3 } }));
    expect(report.options.pickSigmaPx).toBe(3);
    expect(report.options.tiltSigmaDeg).toBe(defaultMeasureOptions.tiltSigmaDeg);
    expect(report.mmPerPx).toBeCloseTo(0.05, 9);
  });
});

describe("quantities", () => {
  it("a gauge of resolution r has u = r / sqrt(12) (JCGM 100:2008, F.2.2.1)", () => {
    const q = gaugeQuantity({ valueMm: 2, resolutionMm: 0.1, instrument: "gauge" });
    expect(q.expandedUncertainty).toBeCloseTo(0.2 / Math.sqrt(12), 12);
  });

  it("in a sum, own errors add in squares and shared ones as they are", () => {
    const q = (picks: number, tilt: number) => ({
      unit: "mm" as const,
      value: 5,
      expandedUncertainty: 2 * Math.hypot(picks, tilt),
      source: "photo" as const,
      budget: [
        { part: "picks" as const, u: picks },
        { part: "tilt" as const, u: tilt },
      ],
    });
    const sum = sumQuantities([q(3, 1), q(4, 11)]);
    expect(sum.value).toBe(10);
    expect(sum.expandedUncertainty).toBeCloseTo(2 * Math.hypot(5, 12), 12);
  });
});

it("has a sentence for every way measuring can fail", () => {
  for (const [code, sentence] of Object.entries(measureSentences)) {
    const text = sentence({ code: code as never, path: [], data: {} });
    expect(text).toMatch(/^[A-Z].*\.$/);
  }
});
