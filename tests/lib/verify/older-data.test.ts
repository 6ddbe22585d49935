import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { getBead, sealViews, workNow } from "@/lib/beads";
import { migrateAside } from "@/lib/cli/migrate-aside.mjs";
import { openDb } from "@/lib/db";
import { listInspections, listSigned } from "@/lib/jobs";
import { installationSigner } from "@/lib/keys";
import { checkData, collectStrays } from "@/lib/mend";
import { adoptUnlogged } from "@/lib/store";

/** Data folders as versions of before left them: what each was the last to lack, and what must be in it. */
const folders: readonly [
  name: string,
  has: { readonly keys: boolean; readonly verdicts: number; readonly series?: number },
][] = [
  ["data-without-facts", { keys: false, verdicts: 0 }],
  ["data-without-keys", { keys: false, verdicts: 4 }],
  ["data-with-keys", { keys: true, verdicts: 4 }],
  // Trial, card and gauge study, one of each; the first fixture that has any.
  ["data-with-trials", { keys: true, verdicts: 0, series: 3 }],
];

let work = "";
beforeAll(() => (work = mkdtempSync(path.join(tmpdir(), "toeline-older-"))));
afterAll(() => rmSync(work, { recursive: true, force: true }));

function unpack(name: string): string {
  const folder = path.join(work, name);
  const files = unzipSync(readFileSync(new URL(`../../fixtures/older/${name}.zip`, import.meta.url)));
  for (const [file, bytes] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
    writeFileSync(path.join(folder, file), bytes);
  }
  return folder;
}

/** What that version said of each bead, by number. */
function verdictsThen(folder: string): ReadonlyMap<number, string | null> {
  const file = new Database(path.join(folder, "toeline.db"), { readonly: true });
  try {
    const rows = file.prepare(`SELECT "number", "verdict" FROM "BeadFacts"`).all();
    return new Map(
      (rows as { number: number; verdict: string | null }[]).map((row) => [row.number, row.verdict]),
    );
  } catch {
    return new Map();
  } finally {
    file.close();
  }
}

describe("a data folder of an earlier version", () => {
  it.each(folders)(
    "%s opens, is brought up to date, verifies whole, and says what it said",
    async (name, has) => {
      const folder = unpack(name);
      const then = verdictsThen(folder);
      await migrateAside(folder);
      const db = openDb(`file:${path.join(folder, "toeline.db")}`);
      try {
        await adoptUnlogged(db);
        expect(await collectStrays(db, folder, new Date())).toEqual([]);
        await sealViews(db, folder);
        expect(await db.signingKey.count({ where: { holder: "installation" } })).toBe(has.keys ? 1 : 0);
        await installationSigner({ db, by: "system" }, new Date());
        const series = await Promise.all([db.trial.count(), db.procedureCard.count(), db.gaugeStudy.count()]);
        expect(series.reduce((sum, one) => sum + one, 0)).toBe(has.series ?? 0);
        const beads = await db.bead.findMany({ select: { id: true, number: true } });
        await workNow(
          db,
          beads.map(({ number }) => number),
        );
        expect(await checkData(db, folder, { isServed: false })).toEqual([]);
        for (const { id } of beads) expect(await getBead(db, id), id).not.toBeNull();
        const signed = (
          await Promise.all((await listInspections(db)).map(({ id }) => listSigned(db, id)))
        ).flat();
        expect(signed.map(({ intact }) => intact)).toEqual([true]);
        const now = await db.beadFacts.findMany({ select: { number: true, verdict: true } });
        for (const { number, verdict } of now)
          if (then.has(number)) expect([number, verdict]).toEqual([number, then.get(number)]);
        expect([...then.values()].filter((one) => one !== null).length).toBeGreaterThanOrEqual(has.verdicts);
      } finally {
        await db.$disconnect();
      }
    },
  );
});
