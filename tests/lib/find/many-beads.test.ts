import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createBead } from "@/lib/beads";
import { BeadFilterSchema, findPage, type BeadFilter, type PageAt } from "@/lib/find";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth, itDeep } from "../../setup/in-depth";
import { expectAnswers, grow, walk } from "./many-beads";

/** 998 is where lists stopped once in one data folder, below 2 000 in another: the database takes 999 parameters a query. */
const fresh = useFreshDb();

describe("many beads", () => {
  itDeep(
    "998, and with more of them more than 999: home page, filters, trends and exports answer",
    async () => {
      const { db, pen } = fresh();
      await grow(pen, 998);
      await expectAnswers(db, 998);
      const more = inDepth(4, 1003);
      await grow(pen, more);
      await expectAnswers(db, 998 + more);
    },
  );

  it("pages visit each bead that was there exactly once, while others are saved", async () => {
    const { db, pen } = fresh();
    const sorts = BeadFilterSchema.shape.sort.unwrap().options;
    const arb = fc.record({
      sort: fc.constantFrom(...sorts),
      size: fc.integer({ min: 7, max: 60 }),
      backwards: fc.boolean(),
    });
    await fc.assert(
      fc.asyncProperty(arb, async ({ sort, size, backwards }) => {
        const filter: BeadFilter = { sort, joint: "lap" };
        const there = await walk(db, filter, "start", 500);
        const seen: string[] = [];
        let at: PageAt = backwards ? "end" : "start";
        for (let page = 0; ; page += 1) {
          const found = await findPage(db, filter, {}, { at, size });
          seen.push(...found.beads.map(({ id }) => id));
          const on = backwards ? found.previous : found.next;
          if (on === null) break;
          at = backwards ? { before: on } : { after: on };
          // Others work meanwhile: at the front, at the back, and between.
          if (page % 3 === 0)
            await createBead(pen, {
              title: `Meanwhile ${page}`,
              setup: { ...(await anySetup()), joint: "lap" },
              createdAt: new Date(Date.UTC(2026, 10, 26 - (page % 40), 12)),
            });
        }
        const seenOnce = new Set(seen);
        expect(seenOnce.size).toBe(seen.length);
        expect(there.filter((id) => !seenOnce.has(id))).toEqual([]);
      }),
      { numRuns: inDepth(2, 10), seed: 3 },
    );
  });
});

async function anySetup() {
  const { emptyRunSetup } = await import("@/lib/setup");
  return emptyRunSetup;
}
