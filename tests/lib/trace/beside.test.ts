import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  isGuess,
  proposeLine,
  SQUARE,
  traceBead,
  type Pixels,
  type ReadStrip,
  type ReadWhole,
} from "@/lib/trace";
import { along, drawnBead, drawnBeads, nearestRun } from "./drawn";
import { inDepth } from "../../setup/in-depth";

const [WIDTH, HEIGHT, MIDDLE] = [900, 600, 300];

/** A band from end to end at so many pixels below the picture's middle. */
const band =
  (off: number, width: number) =>
  (x: number): readonly [number, number] | null =>
    x < 110 || x > 790 ? null : [MIDDLE + off - width / 2, MIDDLE + off + width / 2];

/** A finder that sees a band in the middle of the picture and no other. */
const seesOne =
  (width: number): ReadWhole =>
  () => {
    const { answer } = SQUARE;
    const px = WIDTH / answer;
    return Promise.resolve(
      Float32Array.from({ length: answer * answer }, (_, k) => {
        const at = band(0, width)(((k % answer) + 0.5) * px);
        const y = (Math.floor(k / answer) + 0.5) * px;
        return at !== null && y > at[0] && y < at[1] ? 4 : -4;
      }),
    );
  };

const surely = nearestRun(8, null);
const proposed = async (image: Pixels, width: number, read = surely): Promise<string> => {
  const line = await proposeLine(image, seesOne(width), read);
  return line.ok ? "proposed" : line.issues[0]!.code;
};

const traced = async (image: Pixels, off: number, read: ReadStrip): Promise<string> => {
  const y = MIDDLE + off;
  const trace = await traceBead(image, along([112, y], [788, y]), read);
  return trace.ok ? "read" : trace.issues[0]!.code;
};

/** What was traced is sure, a guess as a whole that states no width, or refused. */
const surety = async (image: Pixels, off: number, read: ReadStrip): Promise<string> => {
  const y = MIDDLE + off;
  const trace = await traceBead(image, along([112, y], [788, y]), read);
  if (!trace.ok) return "refused";
  return isGuess(trace.value.stations) ? "guess" : "sure";
};

describe("a second bead that the finder did not see", () => {
  it("keeps a line from being proposed, on whichever side and however far it lies up to three widths", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.double({ min: 1.35, max: 3.1, noNaN: true }),
        fc.constantFrom(-1, 1),
        fc.integer({ min: 50, max: 64 }),
        async (apart, side, width) => {
          const other = band(side * apart * width, width);
          expect(await proposed(drawnBeads(WIDTH, HEIGHT, band(0, width), other), width)).toBe("two-beads");
        },
      ),
      {
        seed: 5,
        numRuns: inDepth(2, 24),
        examples: [
          [1.35, -1, 60],
          [3.1, 1, 60],
        ],
      },
    );
  });

  it("is none on plain plate", async () => {
    expect(await proposed(drawnBead(WIDTH, HEIGHT, band(0, 60)), 60)).toBe("proposed");
  });
});

describe("plate between two beads", () => {
  const width = 60;
  const pair = (gap: number): Pixels => {
    const off = (gap + width) / 2;
    return drawnBeads(WIDTH, HEIGHT, band(-off, width), band(off, width));
  };

  it("is not read for a bead, though its edges are toes", async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 48, max: 90 }), async (gap) => {
        // As sure of the plate as of the beads, and less sure.
        expect(await traced(pair(gap), 0, nearestRun(5, 5))).toBe("line-beside-bead");
        expect(await traced(pair(gap), 0, nearestRun(8, 5))).toBe("line-beside-bead");
      }),
      { seed: 6, numRuns: inDepth(1, 12) },
    );
  });

  it("is known from a bead with plate on one side that is taken for one, and from a bead alone", async () => {
    const doubtful = nearestRun(5, 5);
    expect(await traced(pair(60), -60, doubtful)).toBe("read");
    expect(await traced(drawnBead(WIDTH, HEIGHT, band(0, width)), 0, doubtful)).toBe("read");
  });

  it("is known from a bead in doubt between two others that do not touch it", async () => {
    const three = drawnBeads(WIDTH, HEIGHT, band(-81, width), band(0, width), band(81, width));
    expect(await traced(three, 0, nearestRun(5, null))).toBe("read");
  });

  it("is known by the bead against it being much surer, where the other side is hidden", async () => {
    // Bright to the picture's edge is no bead to this reader.
    const hidden = drawnBeads(WIDTH, HEIGHT, band(-160, 260), band(width, width));
    expect(await traced(hidden, 0, nearestRun(8, 5))).toBe("line-beside-bead");
    expect(await traced(hidden, 0, nearestRun(5, 5))).toBe("read");
    expect(await traced(hidden, width, nearestRun(8, 5))).toBe("read");
  });

  it("states no size where the reader is sure of it", async () => {
    const sure = nearestRun(8, 8);
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 48, max: 90 }), async (gap) => {
        expect(await surety(pair(gap), 0, sure)).toBe("guess");
        // The beads on either side of it have plate on one side alone that is taken for one.
        for (const side of [-1, 1])
          expect(await surety(pair(gap), (side * (gap + width)) / 2, sure)).toBe("sure");
      }),
      { seed: 7, numRuns: inDepth(1, 12) },
    );
  });

  it("is never proposed as a bead, though the finder fills it and the reader is sure", async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 54, max: 66 }), async (gap) => {
        expect(await proposed(pair(gap), gap, nearestRun(8, 8))).toBe("two-beads");
      }),
      { seed: 8, numRuns: inDepth(1, 12) },
    );
  });

  it("is not told from a pass between two others, which therefore states no size; the passes outside do", async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 4, max: 10 }), async (valley) => {
        const apart = width + valley;
        const pad = drawnBeads(WIDTH, HEIGHT, band(-apart, width), band(0, width), band(apart, width));
        expect(await surety(pad, 0, surely)).toBe("guess");
        for (const side of [-1, 1]) expect(await surety(pad, side * apart, surely)).toBe("sure");
      }),
      { seed: 9, numRuns: inDepth(1, 7) },
    );
  });

  it("casts no doubt on a bead between two others where it is itself seen in doubt", async () => {
    const three = drawnBeads(WIDTH, HEIGHT, band(-120, width), band(0, width), band(120, width));
    expect(await surety(three, 0, nearestRun(8, 4))).toBe("sure");
  });
});
