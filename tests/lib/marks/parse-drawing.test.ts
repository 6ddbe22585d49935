import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { emptyDrawing, newMark } from "@/lib/marks";
import { parseDrawing, parseDrawingText, serialiseDrawing } from "@/lib/marks/parse-drawing";
import { arbDrawing } from "../../arbitraries";

test("parse of serialise is the drawing", () => {
  fc.assert(
    fc.property(arbDrawing, (drawing) => {
      expect(parseDrawingText(serialiseDrawing(drawing))).toEqual({ ok: true, value: drawing });
    }),
  );
});

test("whatever JSON comes in, the answer is a drawing or issues, never a throw", () => {
  fc.assert(
    fc.property(fc.jsonValue(), (json) => {
      const result = parseDrawing(json);
      if (!result.ok) expect(result.issues.length).toBeGreaterThan(0);
    }),
  );
});

describe("refusals name the place", () => {
  const pore = newMark("p1", "surface-porosity", { kind: "point", at: { x: 3, y: 4 }, radius: 2 });

  test("text that is no JSON", () => {
    expect(parseDrawingText("{marks")).toMatchObject({ ok: false, issues: [{ code: "drawing-not-json" }] });
  });

  test.each([
    [{ ...emptyDrawing, schemaVersion: 7 }, 7],
    [{ marks: [] }, "none"],
    [null, "none"],
  ])("a version we do not know", (json, found) => {
    expect(parseDrawing(json)).toMatchObject({
      ok: false,
      issues: [{ code: "drawing-version-unknown", path: ["schemaVersion"], data: { found } }],
    });
  });

  test("a radius below zero", () => {
    const bad = { ...emptyDrawing, marks: [{ ...pore, shape: { ...pore.shape, radius: -2 } }] };
    expect(parseDrawing(bad)).toMatchObject({
      ok: false,
      issues: [{ code: "drawing-malformed", path: ["marks", 0, "shape", "radius"] }],
    });
  });

  test("two marks with one id", () => {
    const bad = { ...emptyDrawing, marks: [pore, { ...pore, id: "p2" }, { ...pore, note: "again" }] };
    expect(parseDrawing(bad)).toEqual({
      ok: false,
      issues: [{ code: "drawing-id-twice", path: ["marks", 2, "id"], data: { id: "p1" } }],
    });
  });
});
