import { describe, expect, test } from "vitest";
import type { Draft } from "@/components/canvas/draft";
import { dragDraft, gripAt, release, tap, type Scenery } from "@/components/canvas/gesture";
import { handlesOf } from "@/components/canvas/handles";
import type { Tool } from "@/components/canvas/types";
import { emptyDrawing, newMark, scene, type Drawing } from "@/lib/marks";

const toe = newMark("toe", "undercut", {
  kind: "line",
  points: [
    { x: 100, y: 200 },
    { x: 500, y: 220 },
  ],
});
const pocket = newMark("pocket", "stuck-slag", {
  kind: "outline",
  points: [
    { x: 600, y: 300 },
    { x: 900, y: 310 },
    { x: 880, y: 500 },
  ],
});
const pore = newMark("pore", "surface-porosity", { kind: "point", at: { x: 850, y: 380 }, radius: 12 });
const drawing: Drawing = { ...emptyDrawing, marks: [toe, pocket, pore] };

function sceneryWith(tool: Tool, selectedId: string | null, draft: Draft | null = null): Scenery {
  const handles = handlesOf(drawing, tool, selectedId, 1);
  return {
    tool,
    draft,
    drawing,
    shapes: scene(drawing, { labels: () => "" }),
    handles,
    selectedId,
    unitPx: 1,
  };
}
const reach = { again: 22, tolerance: 3 };
const drag = (tool: Tool, from: { x: number; y: number }, to: { x: number; y: number }) => ({
  tool,
  from,
  to,
  trail: [from, to],
});

describe("what a press takes hold of", () => {
  test.each([
    ["the selected mark's point", "move", "toe", { x: 495, y: 235 }, { kind: "handle" }],
    ["the selected mark's line", "move", "toe", { x: 200, y: 213 }, { kind: "mark", id: "toe" }],
    ["a mark that is not selected: the photo", "move", "pore", { x: 200, y: 213 }, { kind: "pan" }],
    ["nothing: the photo", "move", null, { x: 30, y: 700 }, { kind: "pan" }],
    ["a drawing tool: never an old mark", "line", "toe", { x: 495, y: 225 }, { kind: "stretch" }],
    ["the scale's end is set on release", "scale", null, { x: 40, y: 50 }, { kind: "place" }],
  ] as const)("%s", (_, tool, selected, at, expected) => {
    expect(gripAt(sceneryWith(tool, selected), at, 22)).toMatchObject(expected);
  });

  test("a path begun goes on point by point", () => {
    const begun: Draft = { kind: "path", tool: "line", points: [{ x: 3, y: 4 }], next: null };
    expect(gripAt(sceneryWith("line", null, begun), { x: 70, y: 80 }, 22)).toEqual({ kind: "place" });
  });
});

describe("a drag and its release", () => {
  const [from, to] = [
    { x: 50, y: 60 },
    { x: 80, y: 100 },
  ];

  test("the draft of a moved mark is the very action its release sends", () => {
    const grip = { kind: "mark", id: "toe" } as const;
    const draft = dragDraft(grip, null, drag("move", from, to));
    const action = { type: "mark.moveBy", id: "toe", by: { x: 30, y: 40 } };
    expect(draft).toEqual({ kind: "change", action });
    expect(release(grip, null, drag("move", from, to), reach).finished).toEqual({ kind: "change", action });
  });

  test("a point taken hold of beside its middle does not jump", () => {
    const grip = gripAt(sceneryWith("move", "toe"), { x: 490, y: 230 }, 22);
    const step = release(grip, null, drag("move", { x: 490, y: 230 }, { x: 491, y: 250 }), reach);
    expect(step.finished).toMatchObject({
      action: { type: "mark.movePoint", index: 1, to: { x: 501, y: 240 } },
    });
  });

  test("a drag out of a spot gives its radius", () => {
    expect(release({ kind: "stretch" }, null, drag("point", from, to), reach).finished).toEqual({
      kind: "shape",
      shape: { kind: "point", at: from, radius: 50 },
    });
  });

  test("a straight drag is a line of two points", () => {
    expect(release({ kind: "stretch" }, null, drag("line", from, to), reach).finished).toEqual({
      kind: "shape",
      shape: { kind: "line", points: [from, to] },
    });
  });

  test("a point placed under the magnifier is where it was let go, not where it was pressed", () => {
    const step = release({ kind: "place" }, null, drag("line", from, to), reach);
    expect(step.draft).toMatchObject({ kind: "path", points: [to] });
  });
});

describe("taps", () => {
  const place = { kind: "stretch" } as const;
  const tapAll = (tool: Tool, points: readonly { x: number; y: number }[]) =>
    points.reduce<ReturnType<typeof tap>>((step, at) => tap(place, step.draft, tool, at, reach), {
      draft: null,
      finished: null,
    });
  const [a, b, c] = [
    { x: 10, y: 20 },
    { x: 200, y: 30 },
    { x: 210, y: 240 },
  ];

  test("the last point again finishes a line", () => {
    const { draft, finished } = tapAll("line", [a, b, c, { x: 212, y: 245 }]);
    expect(draft).toBeNull();
    expect(finished).toEqual({ kind: "shape", shape: { kind: "line", points: [a, b, c] } });
  });

  test("the first point again closes an outline, but not of two points", () => {
    expect(tapAll("outline", [a, b, c, { x: 12, y: 22 }]).finished).toMatchObject({
      shape: { kind: "outline", points: [a, b, c] },
    });
    expect(tapAll("outline", [a, b, { x: 205, y: 33 }]).finished).toBeNull();
  });

  test("the same place twice is not a line", () => {
    expect(tapAll("line", [a, { x: 11, y: 21 }])).toMatchObject({ finished: null, draft: { points: [a] } });
  });

  test("the second end finishes a scale", () => {
    expect(tapAll("scale", [a, b]).finished).toEqual({
      kind: "scale",
      scaleKind: "two-points",
      points: [a, b],
    });
  });

  test("a tap with the point tool is a spot without a size", () => {
    expect(tapAll("point", [b]).finished).toMatchObject({ shape: { kind: "point", at: b, radius: null } });
  });
});

test("a freehand loop becomes an outline of few corners, a scribble becomes nothing", () => {
  const loop = Array.from({ length: 120 }, (_, i) => ({
    x: 300 + 100 * Math.cos((i / 120) * 2 * Math.PI),
    y: 300 + 70 * Math.sin((i / 120) * 2 * Math.PI),
  }));
  const round = release(
    { kind: "stretch" },
    null,
    { tool: "outline", from: loop[0]!, to: loop.at(-1)!, trail: loop },
    reach,
  );
  const shape = round.finished?.kind === "shape" ? round.finished.shape : null;
  expect(shape?.kind).toBe("outline");
  expect(shape?.kind === "outline" && shape.points.length).toBeLessThan(30);
  expect(shape?.kind === "outline" && shape.points.length).toBeGreaterThan(6);
  const dash = [loop[0]!, loop[1]!, loop[2]!];
  const none = release(
    { kind: "stretch" },
    null,
    { tool: "outline", from: dash[0]!, to: dash[2]!, trail: dash },
    reach,
  );
  expect(none).toEqual({ draft: null, finished: null });
});
