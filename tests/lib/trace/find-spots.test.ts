import { describe, expect, it } from "vitest";
import { findSpots, spots } from "@/lib/trace";
import { besideBead, isInZone } from "@/lib/trace/spot-zone";
import { inDepth } from "../../setup/in-depth";
import { answerWith, discReader, discs, straightBead } from "./drawn-spots";

/** A bead of 100 px from left to right over a photo of 900 by 600, everything `k` times as large. */
const scene = (k: number) => {
  const at = (x: number, y: number, radius: number) => ({ x: k * x, y: k * y, radius: k * radius });
  const hole = { kind: "hole" as const, ...at(300, 310, 12) };
  const ball = { kind: "spatter" as const, ...at(520, 410, 9) };
  // A hole beside the bead, a ball far off it, a hole too small to ask about.
  const others = [
    { kind: "hole" as const, ...at(420, 400, 12) },
    { kind: "spatter" as const, ...at(200, 560, 12) },
    { kind: "hole" as const, ...at(600, 290, 2.2) },
  ];
  const stations = straightBead([k * 100, k * 300], [k * 800, k * 300], k * 100);
  return { hole, ball, stations, image: discs(k * 900, k * 600, [hole, ball, ...others]) };
};

describe("suggestions of holes and spatter", () => {
  it.each(inDepth([1, 2], [1, 2, 3]))(
    "are where holes and balls lie about the bead, however large the photo: %d times",
    async (k) => {
      const { hole, ball, stations, image } = scene(k);
      const found = await findSpots(image, stations, discReader, spots);
      expect(found.map(({ kind }) => kind).toSorted()).toEqual(["hole", "spatter"]);
      for (const truth of [hole, ball]) {
        const { at, radiusPx } = found.find(({ kind }) => kind === truth.kind)!;
        expect(Math.hypot(at.x - truth.x, at.y - truth.y)).toBeLessThan(1.5 * k);
        expect(Math.abs(radiusPx / truth.radius - 1)).toBeLessThan(0.12);
      }
    },
  );

  it("are none where the answer is less sure than the level, and none without toes", async () => {
    const { stations, image } = scene(1);
    const doubt = () => Promise.resolve(answerWith([]).map((v) => v));
    expect(await findSpots(image, stations, doubt, spots)).toEqual([]);
    const strict = { ...spots, holeFrom: 0.99, spatterFrom: 0.99 };
    expect(await findSpots(image, stations, discReader, strict)).toEqual([]);
    expect(await findSpots(image, [], discReader, spots)).toEqual([]);
  });
});

describe("the zone about a bead", () => {
  const beside = besideBead(straightBead([100, 300], [800, 300], 100), 100);
  it.each([
    ["on the face", 400, 330, true, true],
    ["beside a toe", 400, 380, false, true],
    ["as far off as spatter is looked for", 400, 449, false, true],
    ["farther off", 400, 455, false, false],
    ["before the start by a quarter width", 75, 300, false, true],
    ["before it by more than half", 45, 300, false, false],
  ])("%s", (_, x, y, hole, spatter) => {
    expect(isInZone("hole", beside({ x, y }))).toBe(hole);
    expect(isInZone("spatter", beside({ x, y }))).toBe(spatter);
  });
});
