import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DrawingSchema, emptyDrawing, newMark } from "@/lib/marks";
import { arbDrawing } from "../../arbitraries";

test("a drawing reads back from its text as it was", () => {
  fc.assert(
    fc.property(arbDrawing, (drawing) => {
      expect(DrawingSchema.parse(JSON.parse(JSON.stringify(drawing)))).toEqual(drawing);
    }),
  );
});

describe("refusals name the place", () => {
  const pore = newMark("p1", "surface-porosity", { kind: "point", at: { x: 3, y: 4 }, radius: 2 });
  const refused = (json: unknown) => DrawingSchema.safeParse(json).error?.issues.map(({ path }) => path);

  test.each([
    { ...emptyDrawing, schemaVersion: 7 },
    { ...emptyDrawing, schemaVersion: undefined },
  ])("a version we do not know", (json) => expect(refused(json)).toEqual([["schemaVersion"]]));

  test("a radius below zero", () => {
    const bad = { ...emptyDrawing, marks: [{ ...pore, shape: { ...pore.shape, radius: -2 } }] };
    expect(refused(bad)).toEqual([["marks", 0, "shape", "radius"]]);
  });
});
