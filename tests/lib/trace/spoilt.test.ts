import { expect } from "vitest";
import { itDeep } from "../../setup/in-depth";
import { PATIENT_MS } from "../../setup/patience";
import { nodeFinder, nodeReader } from "./node-reader";
import { spoiltAnswer, type SpoiltKind } from "./rendered/spoilt";

/** Pictures from here on were looked at by nobody while the rules were settled. */
const FRESH = 1000;
const EACH = 3;

/** How many of the pictures must be refused, and by what they may be. */
const asked: readonly (readonly [SpoiltKind, least: number, codes: readonly string[]])[] = [
  ["tiny", EACH, ["bead-too-small", "no-bead", "line-too-short", "not-sure-enough"]],
  ["blown", EACH, ["light-blown", "no-bead", "not-sure-enough"]],
  ["no-bead", EACH, ["no-bead", "not-sure-enough", "line-beside-bead"]],
  ["blurred", 2, ["photo-blurred", "no-bead", "not-sure-enough"]],
  ["two-beads", 2, ["line-beside-bead", "no-bead", "not-sure-enough"]],
];

// Renders take seconds each. The ordinary run sees every refusal on drawn beads (`trace-bead.test.ts`).
for (const [kind, least, codes] of asked)
  itDeep(
    `fresh renders that are ${kind} are refused along a line, by a reason that fits`,
    async () => {
      const [read, whole] = [await nodeReader(), await nodeFinder()];
      const answers: string[] = [];
      for (let n = FRESH; answers.length < EACH && n < FRESH + 4 * EACH; n++) {
        const answer = await spoiltAnswer(kind, n, whole, read);
        if (answer !== null) answers.push(answer.traced);
      }
      expect(answers).toHaveLength(EACH);
      expect(answers.filter((code) => code !== "read" && codes.includes(code)).length).toBeGreaterThanOrEqual(
        least,
      );
    },
    4 * PATIENT_MS,
  );
