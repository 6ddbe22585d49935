import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { finish, placePoint, takeBackPoint, wholePath, type Draft } from "@/components/canvas/draft";
import {
  looseCorners,
  placedAlong,
  searchKey,
  stretchWanted,
  withLooseEnd,
  withStretch,
  type PathDraft,
  type Stretch,
} from "@/components/canvas/followed";
import { gripAt, type Scenery } from "@/components/canvas/gesture";
import { emptyDrawing, type PhotoPoint } from "@/lib/marks";

const spot = (x: number, y = 0): PhotoPoint => ({ x, y, grainPx: 1 });
const corner = (x: number): PhotoPoint => ({ x, y: 7.25, grainPx: 2 });

/** Places a point as the screen does, with or without an edge. */
const place = (draft: Draft | null, at: PhotoPoint, follows: boolean, shown: Stretch | null = null) => {
  const step = placePoint("line", draft, at, 0.5);
  return follows ? placedAlong(draft, step.draft, shown) : step.draft;
};

const whole = (draft: Draft | null) => (draft?.kind === "path" ? wholePath(draft) : []);

describe("a line along the edge", () => {
  test("is looked for anew where a point was set before the edge that was found was shown", () => {
    const first = place(null, spot(0), true);
    if (first?.kind !== "path") throw new Error("no path");
    const aimed: Draft = { ...first, next: spot(100) };
    const set = place(aimed, spot(100), true, null);
    expect(stretchWanted(set, true)).toEqual(stretchWanted(aimed, true));
    expect(searchKey(set, true)).not.toBe(searchKey(aimed, true));
    expect(searchKey(set, true)).not.toBeNull();
  });

  test("waits for its edge, and is straight until it came", () => {
    const draft = place(place(null, spot(0), true), spot(100), true);
    expect(stretchWanted(draft, true)).toEqual({ from: spot(0), to: spot(100) });
    expect(whole(draft)).toEqual([spot(0), spot(100)]);
    const found = withStretch(draft, { from: spot(0), to: spot(100), corners: [corner(40), corner(60)] });
    expect(whole(found)).toEqual([spot(0), corner(40), corner(60), spot(100)]);
    expect(stretchWanted(found, true)).toBeNull();
  });

  test("takes what was shown up to the pointer at once", () => {
    const one = place(null, spot(0), true);
    const aimed: Draft = { ...(one as PathDraft), next: spot(50) };
    expect(stretchWanted(aimed, true)).toEqual({ from: spot(0), to: spot(50) });
    const shown = { from: spot(0), to: spot(50), corners: [corner(25)] };
    expect(looseCorners(aimed, shown)).toEqual([corner(25)]);
    expect(wholePath(withLooseEnd(aimed as PathDraft, shown))).toEqual([spot(0), corner(25), spot(50)]);
    expect(whole(place(aimed, spot(50), true, shown))).toEqual([spot(0), corner(25), spot(50)]);
    // Of another place it is not taken.
    expect(whole(place(aimed, spot(51), true, shown))).toEqual([spot(0), spot(51)]);
  });

  test("an edge that comes too late, or for another stretch, changes nothing", () => {
    const draft = place(place(null, spot(0), true), spot(100), true);
    const other = { from: spot(0), to: spot(90), corners: [corner(45)] };
    expect(whole(withStretch(draft, other))).toEqual(whole(draft));
    expect(withStretch(null, other)).toBeNull();
    const straight = place(place(null, spot(0), false), spot(90), false);
    expect(withStretch(straight, other)).toBe(straight);
  });

  test("goes into the mark with its corners", () => {
    const draft = place(place(null, spot(0), true), spot(100), true);
    const found = withStretch(draft, { from: spot(0), to: spot(100), corners: [corner(50)] });
    const shape = { kind: "line", points: [spot(0), corner(50), spot(100)] };
    expect(finish(found)).toEqual({ kind: "shape", shape });
    // The last point again finishes it as well.
    expect(placePoint("line", found, spot(100), 5).finished).toEqual({ kind: "shape", shape });
  });

  test("never holds more points than a mark may", () => {
    let draft: Draft | null = place(null, spot(0), true);
    for (let i = 1; i < 30; i += 1) {
      draft = place(draft, spot(100 * i), true);
      const corners = Array.from({ length: 24 }, (_, k) => corner(100 * i - 99 + k));
      draft = withStretch(draft, { from: spot(100 * (i - 1)), to: spot(100 * i), corners });
      expect(whole(draft).length).toBeLessThanOrEqual(200);
    }
    expect(whole(draft).length).toBeGreaterThan(150);
  });
});

type Deed =
  | { readonly do: "place"; readonly follows: boolean }
  | { readonly do: "found"; readonly corners: number }
  | { readonly do: "back" };

const deed: fc.Arbitrary<Deed> = fc.oneof(
  fc.record({ do: fc.constant("place" as const), follows: fc.boolean() }),
  fc.record({ do: fc.constant("found" as const), corners: fc.integer({ min: 0, max: 4 }) }),
  fc.record({ do: fc.constant("back" as const) }),
);

test("points that a hand set stay where they are, in their order, and what was set straight stays straight", () => {
  fc.assert(
    fc.property(fc.array(deed, { maxLength: 40 }), (deeds) => {
      let draft: Draft | null = null;
      let set: { at: PhotoPoint; follows: boolean }[] = [];
      for (const [i, one] of deeds.entries()) {
        if (one.do === "place") {
          const at = spot(10 * i + 10);
          draft = place(draft, at, one.follows);
          set = [...set, { at, follows: one.follows }];
        } else if (one.do === "back") {
          draft = takeBackPoint(draft);
          set = set.slice(0, -1);
        } else {
          const wanted = stretchWanted(draft, true);
          const corners = Array.from({ length: one.corners }, (_, k) => corner(1000 * i + k));
          if (wanted) draft = withStretch(draft, { ...wanted, corners });
        }
        const way = whole(draft);
        expect(way.filter(({ grainPx }) => grainPx === 1)).toEqual(set.map(({ at }) => at));
        for (const [k, { at, follows }] of set.entries())
          if (k > 0 && !follows) expect(way[way.indexOf(at) - 1]).toBe(set[k - 1]!.at);
      }
    }),
    { seed: 21, numRuns: 200 },
  );
});

test("is set point by point: a drag draws no straight line past what was shown", () => {
  const scenery: Scenery = {
    tool: "line",
    draft: null,
    drawing: emptyDrawing,
    shapes: [],
    handles: [],
    selectedId: null,
    unitPx: 1,
  };
  expect(gripAt(scenery, { x: 5, y: 5 }, 22)).toEqual({ kind: "stretch" });
  for (const tool of ["line", "outline", "weld-line"] as const)
    expect(gripAt({ ...scenery, tool, follows: true }, { x: 5, y: 5 }, 22)).toEqual({ kind: "place" });
  expect(gripAt({ ...scenery, tool: "point", follows: true }, { x: 5, y: 5 }, 22)).toEqual({
    kind: "stretch",
  });
});
