import fc from "fast-check";
import { expect, it } from "vitest";
import { beadsFileText } from "@/lib/exchange";
import { serialiseBeadsFile } from "@/lib/exchange/beads-file";
import { arbWholeBead } from "./bead";

it("a file of beads in slices of any size is the text of the whole", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(arbWholeBead, { maxLength: 4 }),
      fc.integer({ min: 1, max: 3 }),
      async (whole, size) => {
        const beads = whole.map(({ bead }) => bead);
        const slices = [];
        for (let from = 0; from < beads.length; from += size) slices.push(beads.slice(from, from + size));
        let text = "";
        for await (const part of beadsFileText(slices)) text += part;
        expect(text).toBe(serialiseBeadsFile(beads));
      },
    ),
    { numRuns: 60, seed: 2 },
  );
});
