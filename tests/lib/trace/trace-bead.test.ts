import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { traceBead, type ReadStrip } from "@/lib/trace";
import { along, drawnBead, flawless } from "./drawn";
import { inDepth } from "../../setup/in-depth";

/** A bead with a course and a swelling that are known everywhere. */
const beads = fc.record({
  width: fc.double({ min: 50, max: 90, noNaN: true }),
  slope: fc.double({ min: -0.25, max: 0.25, noNaN: true }),
  bow: fc.double({ min: -18, max: 18, noNaN: true }),
  swell: fc.double({ min: 0, max: 0.12, noNaN: true }),
  aside: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
});

const edgesOf =
  ({ width, slope, bow, swell }: { width: number; slope: number; bow: number; swell: number }) =>
  (x: number): readonly [number, number] | null => {
    if (x < 90 || x > 810) return null;
    const middle = 300 + slope * (x - 450) + bow * Math.sin(((x - 90) / 720) * Math.PI);
    const half = (width / 2) * (1 + swell * Math.sin(x / 40));
    return [middle - half, middle + half];
  };

/** Root mean square distance of both toes, down the picture, from where they were drawn, px. */
async function errorOf(
  bead: Parameters<typeof edgesOf>[0] & { aside: number },
  read: ReadStrip,
): Promise<number> {
  const edges = edgesOf(bead);
  const push = bead.aside * bead.width;
  const at = (x: number) => 300 + bead.slope * (x - 450) + push;
  const trace = await traceBead(drawnBead(900, 600, edges), along([95, at(95)], [805, at(805)]), read);
  if (!trace.ok) return Infinity;
  const errors = trace.value.stations
    .filter(({ end }) => !end)
    .flatMap(({ upper, lower }) => [upper.at.y - edges(upper.at.x)![0], lower.at.y - edges(lower.at.x)![1]]);
  return Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length);
}

describe("a traced bead", () => {
  it("lies where it was drawn, however its line was picked", async () => {
    await fc.assert(
      fc.asyncProperty(beads, async (bead) => {
        expect(await errorOf(bead, flawless)).toBeLessThan(0.8);
      }),
      { seed: 7, numRuns: inDepth(2, 40) },
    );
  });

  it("shows a reader that puts one toe a tenth of the width too far out", async () => {
    const shifted: ReadStrip = async (planes) => {
      const logits = await flawless(planes);
      // The lower toe eight rows down.
      return logits.map((_, k) => (k >= logits.length / 2 ? (logits[k - 8 * 384] ?? -8) : logits[k]!));
    };
    expect(await errorOf({ width: 70, slope: 0, bow: 0, swell: 0, aside: 0 }, shifted)).toBeGreaterThan(3);
  });

  const refused = async (
    read: ReadStrip,
    edges: (x: number) => readonly [number, number] | null,
    to = 805,
  ): Promise<string> => {
    const trace = await traceBead(drawnBead(900, 600, edges), along([95, 300], [to, 300]), read);
    return trace.ok ? "read" : trace.issues[0]!.code;
  };
  const plain = edgesOf({ width: 70, slope: 0, bow: 0, swell: 0 });

  it("is refused where it cannot be read, and read where it can", async () => {
    expect(await refused(flawless, plain)).toBe("read");
    expect(await refused(flawless, () => null)).toBe("no-bead");
    expect(await refused(flawless, plain, 150)).toBe("line-too-short");
    expect(await refused(flawless, edgesOf({ width: 30, slope: 0, bow: 0, swell: 0 }))).toBe(
      "bead-too-small",
    );
    const unsure: ReadStrip = async (planes) => (await flawless(planes)).map((v) => v / 6);
    expect(await refused(unsure, plain)).toBe("not-sure-enough");
  });

  it("is refused along a line that lies beside it, as between two beads", async () => {
    const trace = await traceBead(drawnBead(900, 600, plain), along([95, 375], [805, 375]), flawless);
    expect(trace.ok ? "read" : trace.issues[0]!.code).toBe("line-beside-bead");
    const near = await traceBead(drawnBead(900, 600, plain), along([95, 335], [805, 335]), flawless);
    expect(near.ok).toBe(true);
  });

  it("is refused where the light is blown, and where everything is blurred", async () => {
    const image = drawnBead(900, 600, plain);
    const look = (data: Uint8ClampedArray): ReturnType<typeof traceBead> =>
      traceBead({ ...image, data }, along([95, 300], [805, 300]), truthful);
    // The network would have to answer the same for a spoilt picture: here it is told.
    let answers = await flawlessOf(image);
    const truthful: ReadStrip = () => Promise.resolve(answers.shift()!);
    const blown = Uint8ClampedArray.from(image.data, (v) => (v > 150 ? 255 : v));
    const first = await look(blown);
    expect(first.ok ? "read" : first.issues[0]!.code).toBe("light-blown");
    answers = await flawlessOf(image);
    const second = await look(blurredDown(image, 25));
    expect(second.ok ? "read" : second.issues[0]!.code).toBe("photo-blurred");
    answers = await flawlessOf(image);
    expect((await look(blurredDown(image, 2))).ok).toBe(true);
  });
});

/** The flawless reader's answers to the looks at a picture. */
async function flawlessOf(image: ReturnType<typeof drawnBead>): Promise<Float32Array[]> {
  const kept: Float32Array[] = [];
  await traceBead(image, along([95, 300], [805, 300]), async (planes) => {
    const answer = await flawless(planes);
    kept.push(answer);
    return answer;
  });
  return kept;
}

/** The picture with each column averaged over `reach` pixels up and down, twice. */
function blurredDown(
  { width, height, data }: ReturnType<typeof drawnBead>,
  reach: number,
): Uint8ClampedArray {
  let from = Float64Array.from(data);
  for (let turn = 0; turn < 2; turn++) {
    const to = from.slice();
    for (let x = 0; x < width; x++)
      for (let y = 0; y < height; y++)
        for (let c = 0; c < 3; c++) {
          let [sum, count] = [0, 0];
          for (let k = Math.max(0, y - reach); k <= Math.min(height - 1, y + reach); k++, count++)
            sum += from[4 * (k * width + x) + c]!;
          to[4 * (y * width + x) + c] = sum / count;
        }
    from = to;
  }
  return Uint8ClampedArray.from(from);
}
