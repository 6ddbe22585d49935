import { describe, expect, test } from "vitest";
import { handlePicture } from "@/components/canvas/draft-picture";
import { gripAt, release, type Scenery } from "@/components/canvas/gesture";
import { handlesOf, RADIUS_STANDOFF } from "@/components/canvas/handles";
import { REACH } from "@/components/canvas-kit/pointer-machine";
import { loupeCentre } from "@/components/canvas/preview";
import {
  emptyDrawing,
  newMark,
  reduce,
  scene,
  startHistory,
  type Drawing,
  type DrawingAction,
} from "@/lib/marks";

const pore = newMark("pore", "surface-porosity", { kind: "point", at: { x: 850, y: 380 }, radius: 12 });
const toe = newMark("toe", "undercut", {
  kind: "line",
  points: [
    { x: 100, y: 200 },
    { x: 500, y: 220 },
    { x: 900, y: 215 },
  ],
});
const drawing: Drawing = { ...emptyDrawing, marks: [pore, toe] };

const scenery = (selectedId: string, unitPx: number, widthPx?: number): Scenery => ({
  tool: "move",
  draft: null,
  drawing,
  shapes: scene(drawing, { labels: () => "" }),
  handles: handlesOf(drawing, "move", selectedId, unitPx, widthPx),
  selectedId,
  unitPx,
});

test.each([0.1, 0.5, 1, 4, 12])(
  "a finger 22 CSS px beside a point holds it, at %d photo px each",
  (unitPx) => {
    const hold = (css: number) =>
      gripAt(scenery("toe", unitPx), { x: 500, y: 220 + css * unitPx }, REACH.touch);
    expect(REACH.touch).toBeGreaterThanOrEqual(22);
    expect(hold(21.9)).toMatchObject({ kind: "handle", handle: { key: "toe-1" } });
    expect(hold(22.1)).not.toMatchObject({ kind: "handle", handle: { key: "toe-1" } });
  },
);

describe("a pore smaller than a finger", () => {
  /** On a phone: 4 photo pixels per CSS pixel, so that the pore is 3 px across its radius. */
  const unitPx = 4;
  const handleOf = (widthPx?: number) =>
    scenery("pore", unitPx, widthPx).handles.find(({ role }) => role === "radius")!;

  test("the handle of its size stands clear of the one in its middle", () => {
    expect((handleOf().at.x - 850) / unitPx).toBe(RADIUS_STANDOFF);
    expect(RADIUS_STANDOFF).toBeGreaterThanOrEqual(2 * REACH.touch);
    expect(handleOf().stem).toEqual({ x: 862, y: 380 });
  });

  test("grows by what the hand moves outwards, wherever on the handle it took hold", () => {
    const [from, to] = [
      { x: 1030, y: 390 },
      { x: 1050, y: 390 },
    ];
    const grip = gripAt(scenery("pore", unitPx), from, REACH.touch);
    const { finished } = release(
      grip,
      null,
      { tool: "move", from, to, trail: [from, to] },
      { again: 88, tolerance: 10 },
    );
    expect(finished).toMatchObject({ action: { shape: { radius: 32, at: { x: 850, y: 380 } } } });
  });

  test("pushed in beyond nothing it keeps the least size", () => {
    const { present } = reduce(startHistory(drawing), handleOf().move({ x: 850, y: 380 }) as DrawingAction);
    expect(present.marks[0]!.shape).toMatchObject({ radius: 0.5 });
  });

  test("near the photo's right edge it stands on the left", () => {
    expect(handleOf(1000).at.x).toBe(850 - RADIUS_STANDOFF * unitPx);
  });

  test("the magnifier shows the rim, not the finger", () => {
    const action = handleOf().move({ x: 850 + 44 * 4 + 8, y: 380 });
    expect(loupeCentre({ x: 1034, y: 380 }, { kind: "change", action })).toEqual({ x: 870, y: 380 });
    expect(loupeCentre({ x: 7, y: 8 }, null)).toEqual({ x: 7, y: 8 });
  });

  test("a large pore has the handle on its rim", () => {
    const large = handlesOf(drawing, "move", "pore", 0.1).find(({ role }) => role === "radius")!;
    expect(large.at).toEqual(large.stem);
  });
});

test("the picked point is painted larger than the others", () => {
  const { handles } = scenery("toe", 1);
  const width = (key: string | null) =>
    handlePicture(handles, key, 1)
      .filter((p) => p.kind === "plate" && p.at.x === 500)
      .map((p) => (p.kind === "plate" ? p.width : 0));
  expect(width("toe-1")[0]).toBeGreaterThan(width(null)[0]!);
});
