import { describe, expect, it } from "vitest";
import { calibrate } from "@/lib/measure";
import {
  emptySectionDrawing,
  measureSection,
  sectionFigureIds,
  sectionFigures,
  SectionDrawingSchema,
  sectionSentence,
  type SectionDrawing,
} from "@/lib/section";
import { sectionSentences } from "@/lib/section/sentences";
import { type SectionIssueCode } from "@/lib/section/types";
import { calibration, exact, filletDrawing, px, scale, type Pair } from "./known-shapes";

const ring: readonly Pair[] = [
  [-1, -1],
  [4, -1],
  [8, 0],
  [0, 8],
  [-1, 4],
];
const whole = filletDrawing(ring, [-1, -1]);
const codes = (drawing: SectionDrawing, by: typeof scale | null = scale): readonly SectionIssueCode[] =>
  measureSection(drawing, calibrate(by, exact)).issues.map(({ code }) => code);
const read = (drawing: SectionDrawing) =>
  sectionFigureIds.filter((id) => measureSection(drawing, calibration).figures[id] !== null);

describe("what is missing in a drawing", () => {
  it("nothing: every figure of the joint is there, and no other", () => {
    expect(codes(whole)).toEqual([]);
    expect(read(whole)).toEqual(
      sectionFigureIds.filter((id) => sectionFigures[id].joints.includes("fillet")),
    );
  });

  it("everything, at the start: says what to draw, and reads nothing", () => {
    for (const joint of ["fillet", "butt"] as const) {
      const empty = emptySectionDrawing(joint);
      expect(read(empty)).toEqual([]);
      expect(codes(empty)).toContain("draw-outline");
      expect(codes(empty)).toContain("draw-edge");
      expect(codes(empty, null)).toContain("no-scale");
      expect(SectionDrawingSchema.parse(JSON.parse(JSON.stringify(empty)))).toEqual(empty);
    }
  });

  it("an edge: the area stays, the rest is null, and the issue names the edge", () => {
    const one = { ...whole, edges: whole.edges.slice(0, 1) };
    expect(read(one)).toEqual(["weld-area"]);
    expect(measureSection(one, calibration).issues).toEqual([
      { code: "draw-edge", path: ["edges"], data: { role: "plate-2" } },
    ]);
  });

  it("the root point: only what hangs on it is null", () => {
    const one = { ...whole, root: null };
    expect(codes(one)).toEqual(["mark-root"]);
    const lost = read(whole).filter((id) => !read(one).includes(id));
    expect(lost).toEqual(["throat-with-penetration", "root-penetration"]);
  });

  it("the scale: nothing is read", () => {
    const none = measureSection(whole, calibrate(null, exact));
    expect(none.issues.map(({ code }) => code)).toEqual(["no-scale"]);
    expect(Object.values(none.figures).every((figure) => figure === null)).toBe(true);
  });
});

describe("what contradicts itself", () => {
  const flat = { role: "plate-2" as const, points: [px([0, 3]), px([20, 3])] };
  const cases: readonly (readonly [SectionIssueCode, SectionDrawing])[] = [
    ["outline-crosses-itself", filletDrawing([ring[0]!, ring[2]!, ring[1]!, ring[3]!, ring[4]!], [0, 0])],
    ["edge-twice", { ...whole, edges: [...whole.edges, whole.edges[0]!] }],
    ["edge-of-other-joint", { ...whole, edges: [...whole.edges, { ...flat, role: "back" }] }],
    ["edges-parallel", { ...whole, edges: [whole.edges[0]!, flat] }],
    [
      "edge-has-no-direction",
      { ...whole, edges: [whole.edges[0]!, { role: "plate-2", points: [px([0, 5]), px([0, 5])] }] },
    ],
    ["root-off-outline", { ...whole, root: px([30, 30]) }],
  ];

  it.each(cases)("%s", (code, drawing) => {
    expect(codes(drawing)).toContain(code);
  });

  it("toes put by hand outrank those found", () => {
    const moved = measureSection({ ...whole, toes: [px([4.2, -0.8]), null] }, calibration);
    expect(moved.figures["leg-1"]?.value).toBeCloseTo(4, 9);
    expect(moved.places.toes[0]).toMatchObject(px([4, -1]));
  });
});

describe("a butt weld without its back", () => {
  const drawing: SectionDrawing = {
    ...emptySectionDrawing("butt"),
    outline: (
      [
        [-6, 0],
        [0, 2],
        [6, 0],
        [1.5, -7],
        [-1.5, -7],
      ] as const
    ).map(px),
    edges: [{ role: "face", points: [px([-20, 0]), px([20, 0])] }],
  };

  it("says so, and reads the depth without knowing what is left", () => {
    const one = measureSection(drawing, calibration);
    expect(one.issues.map(({ code }) => code)).toContain("no-thickness");
    expect(one.figures.penetration?.value).toBeCloseTo(7, 9);
    expect(one.figures.unreached).toBeNull();
  });

  it("takes a stated thickness for what is left, and gives it out for no reading", () => {
    const one = measureSection(drawing, calibration, { plateThicknessMm: 10 });
    expect(one.figures.unreached?.value).toBeCloseTo(3, 9);
    expect(one.figures.thickness).toBeNull();
    expect(one.issues.map(({ code }) => code)).not.toContain("no-thickness");
  });
});

describe("words", () => {
  it("every issue has a sentence, without a gap in it", () => {
    for (const code of Object.keys(sectionSentences) as SectionIssueCode[]) {
      const text = sectionSentence({ code, path: [], data: { role: "plate-1", mm: 2, id: "x" } });
      expect(text).toMatch(/^[A-Z].*\.$/);
      expect(text).not.toMatch(/undefined|NaN/);
    }
  });

  it("every figure has a name and a meaning", () => {
    for (const id of sectionFigureIds) {
      const { name, meaning } = sectionFigures[id];
      expect(name.length).toBeGreaterThan(3);
      expect(meaning).toMatch(/\.$/);
    }
  });

  it("every figure of a fillet is read from the two plates, outline and root, the area from the outline alone", () => {
    const plates = whole.edges.filter(({ role }) => role === "plate-1" || role === "plate-2");
    expect(read({ ...whole, edges: plates })).toEqual(read(whole));
    expect(read({ ...whole, edges: [] })).toContain("weld-area");
  });
});
