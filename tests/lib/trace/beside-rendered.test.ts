import { expect } from "vitest";
import { itDeep } from "../../setup/in-depth";
import { PATIENT_MS } from "../../setup/patience";
import { nodeReader } from "./node-reader";
import { besideLines, isWrong } from "./rendered/beside-study";

/** A pair with plate between its beads that the reader is sure of; the look at what is sure was settled on it. */
const SURE_OF_PLATE = 5016;

// Renders take seconds each. The ordinary run sees the law on drawn beads (`beside.test.ts`).
itDeep(
  "plate between two rendered beads, of which the shipped reader is sure, states no size, and both beads do",
  async () => {
    const lines = await besideLines("pair", SURE_OF_PLATE, await nodeReader());
    const plate = lines.filter((one) => one.along === "between" && one.alone === "sure" && isWrong(one));
    expect(plate.length).toBeGreaterThan(0);
    expect(plate.map(({ now }) => now)).not.toContain("sure");
    const beads = lines.filter(({ along }) => along !== "between");
    expect(beads.map((one) => [one.now, isWrong(one)])).toEqual([
      ["sure", false],
      ["sure", false],
    ]);
  },
  PATIENT_MS,
);
