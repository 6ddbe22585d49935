import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { emptyDrawing, mapScalePoints, newMark, scene, type Drawing, type SceneShape } from "@/lib/marks";
import type { Point } from "@/lib/geometry";
import { imperfectionIds, imperfections } from "@/lib/trade";
import { arbDrawing } from "../../arbitraries";
import { scaleShape } from "./scale-shape";

const times = (p: Point, k: number): Point => ({ x: p.x * k, y: p.y * k });

function scaleDrawing(drawing: Drawing, k: number): Drawing {
  return {
    ...drawing,
    scale: drawing.scale && mapScalePoints(drawing.scale, (p) => times(p, k)),
    weldLine: drawing.weldLine?.map((p) => times(p, k)) ?? null,
    marks: drawing.marks.map((mark) => ({ ...mark, shape: scaleShape(mark.shape, k) })),
  };
}

/** Photo pixels grow, screen units do not: that is the whole difference between the two. */
function scaleScene(shapes: readonly SceneShape[], k: number): readonly SceneShape[] {
  return shapes.map((shape): SceneShape => {
    switch (shape.kind) {
      case "line":
      case "outline":
        return { ...shape, points: shape.points.map((p) => times(p, k)) };
      case "ring":
        return { ...shape, at: times(shape.at, k), radius: shape.radius * k };
      default:
        return { ...shape, at: times(shape.at, k) };
    }
  });
}

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

const words = (n: number) => (n % 3 === 0 ? "" : `no. ${n}`);
const options = { labels: (_: unknown, n: number) => words(n) };

describe("laws", () => {
  // Powers of two scale a double without rounding, so the law holds to the last bit.
  test("the scene of a drawing scaled by k is the scene scaled by k", () => {
    fc.assert(
      fc.property(
        arbDrawing,
        fc.constantFrom(0.25, 0.5, 2, 8),
        fc.integer({ min: 500, max: 8000 }),
        (drawing, k, widthPx) => {
          expect(scene(scaleDrawing(drawing, k), { ...options, widthPx: widthPx * k })).toEqual(
            scaleScene(scene(drawing, { ...options, widthPx }), k),
          );
        },
      ),
    );
  });

  test("every shape has a key of its own", () => {
    fc.assert(
      fc.property(arbDrawing, (drawing) => {
        const keys = scene(drawing, options).map((shape) => shape.key);
        expect(new Set(keys).size).toBe(keys.length);
      }),
    );
  });

  test("every number in a scene is finite, even where points coincide", () => {
    const same = { x: 40, y: 50 };
    const drawing: Drawing = {
      ...emptyDrawing,
      scale: { kind: "two-points", a: same, b: same, lengthMm: 3 },
      weldLine: [same, same],
      marks: [newMark("m", "undercut", { kind: "line", points: [same, same, same] })],
    };
    const numbers = numbersIn(scene(drawing, options));
    expect(numbers.length).toBeGreaterThan(40);
    expect(numbers.filter((n) => !Number.isFinite(n))).toEqual([]);
  });
});

describe("what is in a scene", () => {
  const drawing: Drawing = {
    ...emptyDrawing,
    scale: { kind: "two-points", a: { x: 10, y: 400 }, b: { x: 260, y: 410 }, lengthMm: 25.4 },
    weldLine: [
      { x: 30, y: 200 },
      { x: 530, y: 210 },
    ],
    marks: [
      newMark("one", "undercut", {
        kind: "line",
        points: [
          { x: 100, y: 150 },
          { x: 300, y: 150 },
        ],
      }),
      newMark("two", "surface-porosity", { kind: "point", at: { x: 500, y: 205 }, radius: 6 }),
      newMark("three", "arc-strike", { kind: "point", at: { x: 20, y: 33 }, radius: null }),
    ],
  };
  const shapes = scene(drawing, { labels: (mark) => mark.id, widthPx: 600 });
  const byKey = (key: string) => shapes.find((shape) => shape.key === key);

  test("badges count 1..n in the drawing's order", () => {
    const badges = shapes.filter((shape) => shape.kind === "badge");
    expect(badges.map(({ number }) => number)).toEqual([1, 2, 3]);
  });

  test("a badge hangs above the middle of a line; words stand right of it, left near the right edge", () => {
    expect(byKey("one:badge")).toMatchObject({ at: { x: 200, y: 150 }, offset: { x: 0, y: -20 } });
    expect(byKey("one:label")).toMatchObject({ side: "right", text: "one" });
    expect(byKey("two:label")).toMatchObject({ side: "left", text: "two" });
  });

  test("a pore with a size is a ring of that size; one without is a spot of the same size on every zoom", () => {
    expect(byKey("two:body")).toMatchObject({ kind: "ring", radius: 6 });
    expect(byKey("three:body")).toMatchObject({ kind: "spot" });
  });

  test("the weld line starts with a bar and ends with a dish, both pointing outwards", () => {
    expect(byKey("weld:start")).toMatchObject({ end: "start", at: { x: 30, y: 200 } });
    const crater = byKey("weld:crater");
    expect(crater).toMatchObject({ end: "crater", at: { x: 530, y: 210 } });
    expect(crater?.kind === "tick" && crater.along.x).toBeGreaterThan(0.99);
  });

  test("the scale says its stated length, or the caller's words", () => {
    expect(byKey("scale:label")).toMatchObject({ text: "25.4 mm" });
    const inches = scene(drawing, { labels: () => "", scaleLabel: "1 in" });
    expect(inches.find((shape) => shape.key === "scale:label")).toMatchObject({ text: "1 in" });
  });

  test("bodies come before every badge and word: nothing is drawn over a number", () => {
    const firstTag = shapes.findIndex((shape) => shape.role === "mark" && shape.kind === "badge");
    const lastBody = shapes.findLastIndex((shape) => "stroke" in shape);
    expect(lastBody).toBeLessThan(firstTag);
  });
});

test("no two groups share a dash or an ink", () => {
  const seen = new Map(
    imperfectionIds.map((id) => {
      const at = { x: 5, y: 6 };
      const shapes = scene(
        { ...emptyDrawing, marks: [newMark("m", id, { kind: "point", at, radius: 3 })] },
        { labels: () => "" },
      );
      const [ring] = shapes;
      if (ring?.kind !== "ring") throw new Error("no ring");
      return [imperfections[id].group, ring.stroke];
    }),
  );
  const looks = [...seen.values()];
  expect(looks).toHaveLength(6);
  for (const part of ["ink", "dash"] as const) {
    expect(new Set(looks.map((look) => JSON.stringify(look[part]))).size).toBe(looks.length);
  }
});
