import Database from "better-sqlite3";
import fc from "fast-check";
import { beforeAll, describe, expect, it, vi } from "vitest";
import type { BeadContent } from "@/lib/assess";
import { addPhoto, createBead, factsDiffering, getBead, saveBead } from "@/lib/beads";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth } from "../../setup/in-depth";
import { storePlainPhotos } from "../../setup/plain-photos";

const fresh = useFreshDb();
let beadId = "";

beforeAll(async () => {
  const { pen, folder } = fresh();
  const made = await createBead(pen, { title: "Lap" });
  if (!made.ok) throw new Error("no bead");
  beadId = made.value.id;
  for (const photo of await storePlainPhotos(pen.db, folder)) await addPhoto(pen, beadId, photo, "face");
});

const stored = async () => (await getBead(fresh().db, beadId))!;

/** Every statement that the database is asked by a save of this; the number of those that are not of the transaction itself. */
async function askedBy(change: (content: BeadContent) => BeadContent): Promise<number> {
  const { revision, content } = await stored();
  const spy = vi.spyOn(Database.prototype, "prepare");
  try {
    const saved = await saveBead(fresh().pen, beadId, revision, change(content));
    expect(saved.ok).toBe(true);
    const asked = spy.mock.calls.map(([sql]) => sql);
    expect([asked[0], asked.at(-1)]).toEqual(["BEGIN", "COMMIT"]);
    return asked.length - 2;
  } finally {
    spy.mockRestore();
  }
}

/** Something that a person does to a bead: a word, a photo's role, photos put in another order, one left out of what is sent. */
const edits: readonly ((content: BeadContent, n: number) => BeadContent)[] = [
  (content, n) => ({ ...content, title: `Lap ${n}` }),
  (content, n) => ({ ...content, setup: { ...content.setup, thicknessMm: 3 + (n % 7) } }),
  (content, n) => ({
    ...content,
    photos: content.photos.map((one, i) => (i === n % 3 ? { ...one, role: n % 2 ? "back" : "face" } : one)),
  }),
  (content) => ({ ...content, photos: content.photos.toReversed() }),
  (content, n) => ({
    ...content,
    photos: [...content.photos.slice(n % 3), ...content.photos.slice(0, n % 3)],
  }),
  (content, n) => ({ ...content, photos: content.photos.filter((_, i) => i !== n % 3) }),
];

describe("a save", () => {
  it("asks the database no more than it must while others wait to write", async () => {
    // Bead and photos before and after and for the seal, the bead's row, counts, facts and what is found by, the log.
    expect(await askedBy((content) => ({ ...content, title: "Lap, chipped" }))).toBe(16);
    expect(
      await askedBy((content) => ({
        ...content,
        photos: content.photos.map((one, i) => (i === 1 ? { ...one, role: "back" as const } : one)),
      })),
    ).toBeLessThanOrEqual(17);
    // Sent again: it is read, and nothing is written.
    expect(await askedBy((content) => content)).toBe(2);
  });

  it("leaves what was sent, with facts that follow from it and a seal that holds, whatever was changed", async () => {
    const { db, pen, folder } = fresh();
    const one = fc.tuple(fc.nat({ max: edits.length - 1 }), fc.nat({ max: 40 }));
    await fc.assert(
      fc.asyncProperty(fc.array(one, { minLength: 1, maxLength: 4 }), async (steps) => {
        for (const [which, n] of steps) {
          const { revision, content } = await stored();
          const sent = edits[which]!(content, n);
          expect((await saveBead(pen, beadId, revision, sent)).ok).toBe(true);
          const now = (await stored()).content;
          const ids = new Set(sent.photos.map(({ id }) => id));
          expect({ ...now, photos: now.photos.filter(({ id }) => ids.has(id)) }).toEqual(sent);
          expect(now.photos.length).toBe(content.photos.length);
        }
        expect([...(await factsDiffering(db, [beadId]))]).toEqual([]);
      }),
      { numRuns: inDepth(12, 150) },
    );
    expect((await verifyRecords(db, folder)).findings).toEqual([]);
  });
});
