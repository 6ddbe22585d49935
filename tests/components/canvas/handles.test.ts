import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { draftPicture, handlePicture } from "@/components/canvas/draft-picture";
import { gripAt, release, type Scenery } from "@/components/canvas/gesture";
import { handlesOf, RADIUS_STANDOFF } from "@/components/canvas/handles";
import { pixelPicture } from "@/components/canvas-kit";
import { REACH } from "@/components/canvas-kit/pointer-machine";
import { MOST_ZOOM, PIXEL_ZOOM } from "@/components/canvas-kit/view";
import { loupeCentre } from "@/components/canvas/preview";
import { distance, distanceToPolyline } from "@/lib/geometry";
import {
  emptyDrawing,
  newMark,
  reduce,
  scene,
  startHistory,
  type Drawing,
  type DrawingAction,
  type Primitive,
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
    handlePicture(handles, key, 1).flatMap((p) => (p.kind === "circle" && p.at.x === 500 ? [p.radius] : []));
  expect(width("toe-1")[0]).toBeGreaterThan(width(null)[0]!);
});

/** CSS pixels from a place to the nearest ink; 0 where something filled lies over it. */
function clearance(list: readonly Primitive[], at: { x: number; y: number }, unitPx: number): number {
  const off = list.map((p) => {
    if (p.kind === "circle") return Math.abs(distance(p.at, at) - p.radius) - p.width / 2;
    if (p.kind === "path")
      return distanceToPolyline(at, p.closed ? [...p.points, p.points[0]!] : p.points) - p.width / 2;
    return 0;
  });
  return Math.min(...off) / unitPx;
}

test.each([4, 1, 0.25, 1 / 6, 1 / 12])(
  "at %d photo pixels to one of the screen a handle hides no spot",
  (unitPx) => {
    for (const id of ["toe", "pore"]) {
      const { handles } = scenery(id, unitPx);
      for (const handle of handles)
        for (const picked of [null, handle.key])
          expect(clearance(handlePicture([handle], picked, unitPx), handle.at, unitPx)).toBeGreaterThan(1);
    }
    const points = [60, 140, 300].map((x) => ({ x: x * unitPx, y: (x * unitPx) / 3 }));
    const draft = { kind: "path", tool: "line", points, next: { x: 900 * unitPx, y: 0 } } as const;
    for (const at of points) expect(clearance(draftPicture(draft, unitPx), at, unitPx)).toBeGreaterThan(2);
  },
);

describe("close up", () => {
  const place = fc.record({ x: fc.integer({ min: 0, max: 40000 }), y: fc.integer({ min: 0, max: 40000 }) });
  test("the hair lines of a handle meet in the point itself, to a part of a photo pixel, and leave it open", () => {
    fc.assert(
      fc.property(place, fc.double({ min: PIXEL_ZOOM, max: MOST_ZOOM, noNaN: true }), (tenfold, zoom) => {
        const at = { x: tenfold.x / 10, y: tenfold.y / 10 };
        const hairs = pixelPicture(at, 1 / zoom).flatMap((p) => (p.kind === "path" ? [p] : []));
        expect(hairs.length).toBeGreaterThan(0);
        for (const { points } of hairs) {
          const [near, far] = points;
          expect(distanceToPolyline(near!, [at, far!])).toBeLessThan(1e-9);
        }
        const ends = hairs.flatMap(({ points }) => points);
        expect(ends.reduce((sum, { x }) => sum + x, 0) / ends.length).toBeCloseTo(at.x, 6);
        expect(ends.reduce((sum, { y }) => sum + y, 0) / ends.length).toBeCloseTo(at.y, 6);
        expect(clearance(hairs, at, 1 / zoom)).toBeGreaterThan(1);
      }),
      { seed: 8, numRuns: 100 },
    );
    expect(pixelPicture({ x: 5, y: 5 }, 1 / (PIXEL_ZOOM - 0.1))).toEqual([]);
  });
});
