import { describe, expect, it } from "vitest";
import { JudgeInputSchema } from "@/lib/accept";
import { answerCase, type Door } from "@/lib/case";
import { DiagnoseInputSchema } from "@/lib/diagnose";
import { MeasureCaseSchema } from "@/lib/measure";
import { PlanAskSchema } from "@/lib/plan";
import { doorCases } from "./door-cases";

type Json = null | string | number | boolean | Json[] | { [name: string]: Json };
const schemas = {
  diagnose: DiagnoseInputSchema,
  judge: JudgeInputSchema,
  measure: MeasureCaseSchema,
  plan: PlanAskSchema,
};

/** Invented; between them they use every kind of place where a name may stand. */
const whole: Readonly<Record<Door, Json>> = {
  plan: { electrodeClass: "E71T-11", electrodeDiameterMm: 0.9, joint: "tee", thicknessMm: 6, dials: "inch" },
  diagnose: {
    setup: { process: "FCAW-S", volts: 16, travelAngleDeg: 10 },
    findings: [{ imperfection: "spatter", patterns: [] }],
    bead: { widthMm: 8 },
  },
  judge: {
    criteriaId: "shop-harrow@1",
    settings: { gauges: "guarded" },
    weld: { kind: "fillet", legMm: 6 },
    observations: [
      {
        id: "u1",
        imperfection: "undercut",
        depthMm: {
          unit: "mm",
          value: 0.4,
          expandedUncertainty: 0.1,
          source: "photo",
          budget: [{ part: "picks", u: 0.05 }],
        },
      },
    ],
    beadReadings: { leg1: 6 },
    shop: {
      id: "shop-harrow",
      title: "Harrow Basin",
      version: 1,
      author: "W-01",
      rows: [{ id: "a", title: "Undercut", imperfections: ["undercut"], quantity: "depth", limit: 0.5 }],
    },
  },
  measure: {
    drawing: {
      scale: {
        kind: "edges",
        edges: [0, 1, 2, 3].map((n): Json => [
          { x: n, y: 0 },
          { x: n, y: 9 },
        ]),
        widthMm: 85,
        heightMm: 54,
        surface: { aboveMm: 0, plusMinusMm: null },
      },
      weldLine: [
        { x: 0, y: 5 },
        { x: 9, y: 5 },
      ],
      marks: [
        {
          id: "m1",
          imperfection: "undercut",
          shape: { kind: "point", at: { x: 1, y: 1 }, radius: null },
          gauge: [{ quantity: "depth", valueMm: 0.4, instrument: "F-2", resolutionMm: 0.1 }],
        },
      ],
    },
    angles: [{ a: { x: 1, y: 0 }, apex: { x: 0, y: 0 }, b: { x: 0, y: 1 } }],
    windows: [{ imperfections: ["undercut"], of: "length", windowMm: 50 }],
    options: { photo: { widthPx: 4000, heightPx: 3000 } },
  },
};

/** The case once for each object in it, with a stranger in that object, and the stranger's path. */
function withStranger(value: Json, path: readonly string[] = []): { path: string; json: Json }[] {
  if (typeof value !== "object" || value === null) return [];
  const here = Array.isArray(value)
    ? []
    : [{ path: [...path, "qqqQqq"].join("."), json: { ...value, qqqQqq: 1 } as Json }];
  const put = (key: string, json: Json): Json =>
    Array.isArray(value) ? value.with(Number(key), json) : { ...value, [key]: json };
  return [
    ...here,
    ...Object.entries(value).flatMap(([key, inner]) =>
      withStranger(inner, [...path, key]).map((one) => ({ ...one, json: put(key, one.json) })),
    ),
  ];
}

const strangers = (Object.keys(whole) as Door[]).flatMap((door) =>
  withStranger(whole[door]).map((one) => ({ door, ...one })),
);

describe("a name that nobody knows", () => {
  it.each(Object.entries(whole))("is missed in no whole case: %s is answered", (door, json) => {
    expect(answerCase(door as Door, json)).toMatchObject({ ok: true });
  });

  it("is refused by its path in whatever object it stands", () => {
    expect(strangers.length).toBeGreaterThan(35);
    for (const { door, path, json } of strangers) {
      const answer = answerCase(door, json);
      const said = answer.ok ? [] : answer.lines;
      expect(said, `${door} ${path}`).toHaveLength(1);
      expect(said[0]).toMatch(/^settings\.qqqQqq: No set has|: There is no such name here\./);
      expect(said[0]!.startsWith(`${path}: `), `${door} ${path}: ${said[0]}`).toBe(true);
    }
  });

  it("would be let through by the schemas alone, so the law above has something to catch", () => {
    const through = strangers.filter(({ door, json }) => schemas[door].safeParse(json).success);
    expect(through).toHaveLength(strangers.length);
  });

  it("is looked for no deeper than the schemas go", () => {
    let deep: Json = [];
    for (let level = 0; level < 200_000; level += 1) deep = [deep];
    expect(answerCase("judge", { stretch: deep })).toMatchObject({ ok: false });
    expect(answerCase("measure", { drawing: {}, windows: deep, toes: deep })).toMatchObject({ ok: false });
  });

  it("is none of those that cases use", () => {
    for (const { door, case: json, status } of doorCases.filter((one) => one.status === 200 && one.case))
      expect([answerCase(door, json).ok, status]).toEqual([true, 200]);
  });
});
