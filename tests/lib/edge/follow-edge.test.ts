import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { followEdge, windowFor, type EdgeWindow, type GreyPatch } from "@/lib/edge";
import { MOST_CORNERS } from "@/lib/edge/follow-edge";
import { distanceToPolyline, pointAlong, polylineLength, type Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import { inDepth } from "../../setup/in-depth";
import { chance, painted } from "./pictures";

type Spot = Point<"photo">;

const whole = ({ columns, rows }: GreyPatch): EdgeWindow => ({
  corner: { x: 0, y: 0 },
  stepPx: 1,
  columns,
  rows,
});

/** Largest and mean distance of a line from points of a truth. */
function miss(line: readonly Spot[], truth: readonly Spot[]): { most: number; mean: number } {
  const off = truth.map((point) => distanceToPolyline(point, line));
  return { most: Math.max(...off), mean: off.reduce((sum, one) => sum + one, 0) / off.length };
}

describe("a followed edge", () => {
  test("on an even plate is the straight line, between any two points", () => {
    const plate = painted(60, 50, () => 120);
    const place = fc.record({ x: fc.integer({ min: 1, max: 58 }), y: fc.integer({ min: 1, max: 48 }) });
    fc.assert(
      fc.property(place, place, (a, b) => {
        expect(followEdge(plate, whole(plate), a, b)).toEqual([]);
      }),
      { seed: 7, numRuns: inDepth(60, 400) },
    );
  });

  test("on a plate with grain and no edge stays near the straight line", () => {
    const roll = chance(11);
    const plate = painted(160, 80, () => 120 + 12 * (roll() - 0.5));
    const [a, b] = [
      { x: 10, y: 40 },
      { x: 150, y: 44 },
    ];
    for (const at of followEdge(plate, whole(plate), a, b))
      expect(distanceToPolyline(at, [a, b])).toBeLessThan(10);
  });

  // The truth is the function that the picture was painted by.
  test("lies on a curved edge within a pixel, where straight lines between the same points miss it by many", () => {
    const roll = chance(4);
    const edgeAt = (x: number): number => 60 + 16 * Math.sin((x * Math.PI) / 200);
    const picture = painted(220, 120, (x, y) => {
      const covered = Math.min(1, Math.max(0, y + 0.5 - edgeAt(x)));
      return 70 + 90 * covered + 16 * (roll() - 0.5);
    });
    const on = (x: number): Spot => ({ x, y: edgeAt(x) });
    const [a, b] = [on(15), on(205)];
    const between = followEdge(picture, whole(picture), a, b);
    const truth = Array.from({ length: 181 }, (_, i) => on(20 + i));
    const followed = miss([a, ...between, b], truth);
    expect(followed.mean).toBeLessThan(1);
    expect(followed.most).toBeLessThan(2.5);
    expect(miss([a, b], truth).mean).toBeGreaterThan(8);
    expect(between.length).toBeLessThanOrEqual(MOST_CORNERS);
  });

  test("is the same path brighter or darker, and from the other end", () => {
    const edgeAt = (x: number): number => 40 + 10 * Math.sin(x / 25);
    const roll = chance(9);
    const grain = Array.from({ length: 140 * 80 }, () => 10 * roll());
    const lit = (more: number) =>
      painted(
        140,
        80,
        (x, y) => more + (y < edgeAt(x) ? 60 : 110) + grain[Math.floor(y) * 140 + Math.floor(x)]!,
      );
    const [a, b] = [
      { x: 8.5, y: 43.5 },
      { x: 131.5, y: 31.5 },
    ];
    const there = followEdge(lit(0), whole(lit(0)), a, b);
    expect(there.length).toBeGreaterThan(3);
    expect(followEdge(lit(70), whole(lit(0)), a, b)).toEqual(there);
    const back = followEdge(lit(0), whole(lit(0)), b, a).toReversed();
    expect(miss([b, ...back, a], there).most).toBeLessThan(2.5);
  });

  test("is worth no more than the points it was drawn between", () => {
    const picture = painted(100, 60, (x, y) => (y < 30 + 12 * Math.sin(x / 18) ? 60 : 150));
    const window = { ...whole(picture), stepPx: 2 };
    const ends = (grainPx: number): [PhotoPoint, PhotoPoint] => [
      { x: 10, y: 66, grainPx },
      { x: 190, y: 40 },
    ];
    for (const [grain, least] of [
      [0.5, 2],
      [7, 7],
    ] as const) {
      const between = followEdge(picture, window, ...ends(grain));
      expect(between.length).toBeGreaterThan(1);
      for (const { grainPx } of between) expect(grainPx).toBe(least);
    }
  });
});

const set = fileURLToPath(new URL("../../../demo-images/set/", import.meta.url));

interface Toe {
  readonly name: string;
  readonly toe: readonly Spot[];
  readonly widthPx: number;
  readonly picture: GreyPatch;
}

/** Both toes of a rendered bead as the renderer laid them. */
async function toesOf(name: string): Promise<readonly Toe[]> {
  const truth = JSON.parse(readFileSync(path.join(set, `${name}.json`), "utf8")) as {
    weld: Record<"leftToePx" | "rightToePx", readonly (readonly [number, number])[]>;
  };
  const { data, info } = await sharp(path.join(set, `${name}.jpg`))
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const [left, right] = [truth.weld.leftToePx, truth.weld.rightToePx].map((toe) =>
    toe.map(([x, y]) => ({ x, y })),
  );
  const widthPx = miss(right!, left!).mean;
  const picture = { columns: info.width, rows: info.height, grey: data };
  return [left!, right!].map((toe, i) => ({
    name: `${name} ${i === 0 ? "left" : "right"}`,
    toe,
    widthPx,
    picture,
  }));
}

/** A patch as a screen would cut it: each pixel the mean of those it covers. */
function cut({ columns: wide, rows: high, grey }: GreyPatch, window: EdgeWindow): GreyPatch {
  const { corner, stepPx, columns, rows } = window;
  const reach = (from: number, size: number) => [
    Math.floor(from),
    Math.min(size, Math.max(Math.floor(from) + 1, Math.floor(from + stepPx))),
  ];
  const cells = Array.from({ length: columns * rows }, (_, k) => {
    const [x, endX] = reach(corner.x + (k % columns) * stepPx, wide) as [number, number];
    const [y, endY] = reach(corner.y + Math.floor(k / columns) * stepPx, high) as [number, number];
    let sum = 0;
    for (let j = y; j < endY; j++) for (let i = x; i < endX; i++) sum += grey[j * wide + i]!;
    return sum / ((endX - x) * (endY - y));
  });
  return { columns, rows, grey: Float32Array.from(cells) };
}

/** Share of the bead's width by which a line through the same five places of a toe misses it, straight and followed. */
function missed({ toe, widthPx, picture }: Toe): { straight: number; followed: number } | null {
  const long = polylineLength(toe);
  const points = [0.04, 0.27, 0.5, 0.73, 0.96].map((share) => pointAlong(toe, share * long)!);
  const photo = { widthPx: picture.columns, heightPx: picture.rows };
  const line = points.slice(1).flatMap((to, i) => {
    const from = points[i]!;
    const window = windowFor(from, to, photo, 1.5);
    return window ? [...followEdge(cut(picture, window), window, from, to), to] : [];
  });
  if (line.length < 4) return null; // part of it lies off the photo
  const truth = Array.from({ length: 185 }, (_, i) => pointAlong(toe, (0.04 + 0.005 * i) * long)!);
  const share = (drawn: readonly Spot[]) => miss(drawn, truth).mean / widthPx;
  return { straight: share(points), followed: share([points[0]!, ...line]) };
}

/**
 * Rendered beads whose toes bend and are the edge one sees. Where a harder edge runs beside the toe (a ropey bead's ripples,
 * ground plate, the arris of a groove) the path goes there: over the whole set straight lines through five places lie
 * nearer. So it is off until it is asked for, and every stretch is seen before it counts.
 */
const bent = ["poor-start-arc-strike", "flat-wide-weave", "vertical-up-uneven", "hard-cracks"];

test.each(inDepth(bent.slice(1, 3), bent))(
  "follows the bent toes of %s nearer than straight lines",
  async (name) => {
    const toes = await toesOf(name);
    const found = toes.flatMap((toe) => missed(toe) ?? []);
    const mean = (key: "straight" | "followed") =>
      found.reduce((sum, one) => sum + one[key], 0) / found.length;
    const percent = (share: number) => (100 * share).toFixed(1);
    console.info(
      `${name}: off the toe by ${percent(mean("straight"))} % of the bead's width straight, ${percent(mean("followed"))} % followed`,
    );
    expect(mean("followed")).toBeLessThan(mean("straight"));
  },
);
