import { beforeAll, describe, expect, it } from "vitest";
import { doAside } from "@/lib/aside";
import type { LookSaid } from "@/lib/aside/looks";
import { growShop } from "@/lib/demo/grow-shop";
import { ledgerSentence } from "@/lib/ledger";
import { verifyRecords, walkParts } from "@/lib/verify";
import { serveFrom, useFreshDb } from "../../setup/fresh-db";
import { storePlainPhotos } from "../../setup/plain-photos";
import { heard, begun, type Look } from "@/components/log/look";

const fresh = useFreshDb();
beforeAll(async () => {
  const { pen, folder } = fresh();
  serveFrom(folder);
  const photos = await storePlainPhotos(pen.db, folder);
  await growShop(pen, { beads: 60, seed: 3, until: new Date("2026-11-26T12:00:00Z"), photos });
});

/** The lines of a look, of which so many are taken. */
async function linesOf(noted: Parameters<typeof verifyRecords>[2] = {}, most = Infinity): Promise<string[]> {
  const { parts } = await doAside("look", { noted: noted.noted ?? null });
  const lines: string[] = [];
  while (lines.length < most) {
    const { value, done } = await parts.next();
    if (done) break;
    lines.push(...String(value).split("\n").filter(Boolean));
  }
  await parts.return?.();
  expect((await parts.next()).done).toBe(true);
  return lines;
}
const saidIn = (lines: readonly string[]) => lines.map((line) => JSON.parse(line) as LookSaid);
const known = (lines: readonly string[]): Look => lines.reduce(heard, begun);

describe("a look at all records, aside", () => {
  it("says how far it is in every part, and at its end what the verifier says", async () => {
    const lines = await linesOf();
    const looked = saidIn(lines).flatMap((one) => (one.says === "looking" ? [one] : []));
    expect([...new Set(looked.map(({ part }) => part))]).toEqual(walkParts);
    expect(looked.map(({ place }) => place)).toEqual(looked.map(({ part }) => walkParts.indexOf(part) + 1));
    expect(looked.every(({ parts }) => parts === walkParts.length)).toBe(true);
    const { head, entries, subjects, photos, frozen, signatures, derived } = await verifyRecords(
      fresh().db,
      fresh().folder,
    );
    expect(known(lines)).toMatchObject({
      state: "fits",
      head: `${entries}:${head}`,
      counts: { entries, subjects, photos, frozen, signatures, derived },
      findings: [],
    });
  });

  it("left after any line is none that ended", async () => {
    const all = await linesOf();
    for (let most = 0; most < all.length; most += 1) {
      const lines = await linesOf({}, most);
      expect(lines.length).toBe(most);
      expect(saidIn(lines).some(({ says }) => says === "ended")).toBe(false);
      expect(known(lines).state).not.toMatch(/fit/);
    }
  });

  it("says in sentences what it found, and against a head kept elsewhere", async () => {
    const { db, folder } = fresh();
    const noted = { seq: 1, hash: "0".repeat(64) };
    await db.bead.updateMany({ where: { number: { in: [1, 5] } }, data: { title: "Changed" } });
    const look = known(await linesOf({ noted }));
    const { findings } = await verifyRecords(db, folder, { noted });
    expect(look).toMatchObject({ state: "does-not-fit", found: findings.length });
    expect(look.findings).toEqual(findings.map(ledgerSentence));
    expect(look.findings.length).toBeGreaterThanOrEqual(3);
  });
});
