import { describe, expect, test } from "vitest";
import { draftPicture } from "@/components/canvas/draft-picture";
import { finish, placePoint, type Step } from "@/components/canvas/draft";
import { scalePickHint, scalePickKinds, scalePicks } from "@/components/canvas/scale-picks";

const far = (i: number) => ({ x: 1000 * Math.cos(i), y: 1000 * Math.sin(i), grainPx: 2 });
const pick = (kind: (typeof scalePickKinds)[number], count: number): Step =>
  Array.from({ length: count }, (_, i) => far(i)).reduce<Step>(
    (step, at) => placePoint("scale", step.draft, at, 20, { scaleKind: kind }),
    { draft: null, finished: null },
  );

describe.each(scalePickKinds)("picking %s", (kind) => {
  const { fewest, most } = scalePicks[kind];

  test("is finished by its last point, every point with the grain it was seen with", () => {
    const { draft, finished } = pick(kind, most);
    expect(draft).toBeNull();
    expect(finished).toEqual({
      kind: "scale",
      scaleKind: kind,
      points: Array.from({ length: most }, (_, i) => far(i)),
    });
  });

  test("cannot be finished one point short", () => {
    expect(finish(pick(kind, fewest - 1).draft)).toBeNull();
  });

  test("says something new at every point until there are enough", () => {
    const hints = Array.from({ length: fewest }, (_, placed) => scalePickHint(kind, placed));
    expect(new Set(hints).size).toBe(fewest);
  });
});

test("a disc may be finished from its fifth point on", () => {
  expect(finish(pick("disc", 5).draft)).toMatchObject({ kind: "scale", scaleKind: "disc" });
});

test("edges are drawn one by one, not joined across the corners", () => {
  const paths = draftPicture(pick("edges", 4).draft, 1).filter(({ kind }) => kind === "path");
  expect(paths.map((path) => path.kind === "path" && path.points.length)).toEqual([2, 2, 2, 2]); // casing and line
});
