import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { proposeLine, SQUARE, type ReadWhole } from "@/lib/trace";
import { drawnBead, flawless } from "./drawn";
import { inDepth } from "../../setup/in-depth";

/** A finder without a flaw for the drawn beads: what is brighter than halfway is bead. */
const brightIsBead: ReadWhole = (planes) => {
  const { side, answer } = SQUARE;
  const per = side / answer;
  return Promise.resolve(
    Float32Array.from({ length: answer * answer }, (_, k) => {
      const at = per * Math.floor(k / answer) * side + per * (k % answer);
      // Grey is what lies beside the photo.
      return planes[at]! > 0.52 ? 4 : -4;
    }),
  );
};

const straight =
  (from: number, to: number, middle: number, width: number) =>
  (x: number): readonly [number, number] | null =>
    x < from || x > to ? null : [middle - width / 2, middle + width / 2];

const said = async (edges: Parameters<typeof drawnBead>[2], whole = brightIsBead): Promise<string> => {
  const line = await proposeLine(drawnBead(900, 600, edges), whole, flawless);
  return line.ok ? "proposed" : line.issues[0]!.code;
};

describe("a weld line proposed without a click", () => {
  it("has both ends where the bead was drawn, wherever that is", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 110, max: 250 }),
        fc.integer({ min: 620, max: 790 }),
        // The drawn reader takes what lies off the photo for bright: the strip stays on it.
        fc.integer({ min: 240, max: 360 }),
        fc.integer({ min: 50, max: 90 }),
        async (from, to, middle, width) => {
          const image = drawnBead(900, 600, straight(from, to, middle, width));
          const line = await proposeLine(image, brightIsBead, flawless);
          if (!line.ok) throw new Error(line.issues[0]!.code);
          const { points } = line.value;
          const [a, b] = [points[0]!, points[points.length - 1]!];
          const long = to - from;
          expect(Math.hypot(a.x - from, a.y - middle)).toBeLessThan(0.03 * long);
          expect(Math.hypot(b.x - to, b.y - middle)).toBeLessThan(0.03 * long);
        },
      ),
      { seed: 4, numRuns: inDepth(2, 15) },
    );
  });

  it("is none where nothing is seen, where two beads are, and where finder and reader do not agree", async () => {
    const plain = straight(100, 800, 300, 70);
    expect(await said(plain)).toBe("proposed");
    expect(await said(() => null)).toBe("no-bead-in-picture");
    const { answer } = SQUARE;
    const two: ReadWhole = async (planes) =>
      (await brightIsBead(planes)).map((v, k) => (k < 8 * answer && k % answer < 100 ? 4 : v));
    expect(await said(plain, two)).toBe("two-beads");
    // A finder that sees only the left half: the reader goes on where it stops.
    const half: ReadWhole = async (planes) =>
      (await brightIsBead(planes)).map((v, k) => (k % answer > 70 ? -4 : v));
    expect(await said(plain, half)).toBe("line-unclear");
    const faint: ReadWhole = async (planes) => (await brightIsBead(planes)).map((v) => v / 10);
    expect(await said(plain, faint)).toBe("line-unclear");
  });
});
