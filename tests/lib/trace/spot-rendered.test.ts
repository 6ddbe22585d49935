import { expect } from "vitest";
import { spots } from "@/lib/trace";
import { itDeep } from "../../setup/in-depth";
import { PATIENT_MS } from "../../setup/patience";
import { nodeReader, nodeSpots } from "./node-reader";
import { spotLine, type SpotLine } from "./rendered/spot-study";
import { spotFigures } from "./rendered/spot-tables";

/** Pictures from here on were looked at by nobody while the network was trained and its levels settled. */
const FRESH = 1000;
const PICTURES = 8;

// Renders take seconds each. The ordinary run reads a picture of the demo set (`weights.test.ts`).
itDeep(
  "of what is suggested on fresh renders of joints never trained on four in five are right, most are found, and boxes at random are neither",
  async () => {
    const [read, network] = [await nodeReader(), await nodeSpots()];
    const lines: SpotLine[] = [];
    for (let n = FRESH; n < FRESH + PICTURES; n++)
      lines.push(...(await spotLine("kept-street", n, read, { network })));
    const seen = lines.filter(({ refused }) => refused === null);
    expect(seen.length).toBeGreaterThan(PICTURES / 2);
    for (const [what, from] of [
      ["hole", spots.holeFrom],
      ["spatter", spots.spatterFrom],
    ] as const) {
      const figures = spotFigures(seen, what, from);
      expect(figures.asked).toBeGreaterThan(10);
      expect(figures.precision).toBeGreaterThanOrEqual(0.8);
      expect(figures.recall).toBeGreaterThanOrEqual(0.6);
      expect(figures.boxPrecision).toBeLessThan(0.3);
      expect(figures.boxRecall).toBeLessThan(0.3);
    }
  },
  4 * PATIENT_MS,
);
