import fc from "fast-check";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { createBead, deleteBead, saveBead, staleBeads, workAgain } from "@/lib/beads";
import { applyMigrations, schemaDrift } from "@/lib/cli/schema-engine.mjs";
import { change, dialect, rowsOf, sql, type Db } from "@/lib/db";
import { rawSql } from "@/lib/db/sql";
import { growShop } from "@/lib/demo/grow-shop";
import { countBeads, findPage, trendCounts, type BeadFilter } from "@/lib/find";
import { verifyRecords } from "@/lib/verify";
import { electrodeClasses, imperfections } from "@/lib/trade";
import { useFreshDb } from "../setup/fresh-db";
import { inDepth } from "../setup/in-depth";
import { usePostgres } from "../setup/use-postgres";

const sqlite = useFreshDb();
const postgres = usePostgres();
let url = "";
let db: Db;

beforeAll(async () => {
  url = await postgres().newDatabase();
  db = postgres().open(url);
});

describe("the migrations of PostgreSQL", () => {
  it("make exactly what prisma/schema.prisma says, and are applied once", async () => {
    const { drifted, sql: missing } = await schemaDrift(url);
    expect(drifted, missing).toBe(false);
    expect(await applyMigrations(url)).toEqual([]);
  });

  it("set the triggers that SQLite has", async () => {
    const names = await rowsOf<{ name: string }>(
      db,
      sql`SELECT tgname AS "name" FROM pg_trigger WHERE NOT tgisinternal ORDER BY tgname`,
    );
    // What SQLite meets at a replacing insert, PostgreSQL meets at TRUNCATE.
    const there = names.map(({ name }) => name.replace(/_no_truncate$/, "_no_replace"));
    expect([...new Set(there)].sort()).toEqual([...sqliteTriggers()].sort());
  });

  it("sort every text by its bytes", async () => {
    const others = await rowsOf<{ table: string; column: string }>(
      db,
      sql`SELECT table_name AS "table", column_name AS "column" FROM information_schema.columns
        WHERE table_schema = 'public' AND table_name <> '_prisma_migrations' AND data_type = 'text' AND collation_name IS DISTINCT FROM 'C'`,
    );
    expect(others).toEqual([]);
  });
});

/** Names of the triggers that all migrations of SQLite leave behind. */
function sqliteTriggers(): ReadonlySet<string> {
  const folder = fileURLToPath(new URL("../../prisma/migrations", import.meta.url));
  const names = new Set<string>();
  for (const file of readdirSync(folder, { recursive: true, encoding: "utf8" }).sort()) {
    if (!file.endsWith(".sql")) continue;
    const text = readFileSync(path.join(folder, file), "utf8");
    for (const [, way, name = ""] of text.matchAll(/(CREATE|DROP) TRIGGER "(\w+)"/g))
      if (way === "CREATE") names.add(name);
      else names.delete(name);
  }
  return names;
}

/** Numbers that a search finds in kept words. */
async function found(on: Db, asked: readonly (readonly string[])[]): Promise<readonly number[]> {
  const query = dialect.numbersWithWords(asked);
  const rows = await rowsOf<Record<string, unknown>>(on, query);
  return rows.map((row) => Number(Object.values(row)[0])).sort((a, b) => a - b);
}

describe("words", () => {
  const trade = [
    ...Object.keys(imperfections),
    ...Object.values(imperfections).flatMap(({ name, alsoCalled }) => [name, ...alsoCalled]),
    ...electrodeClasses.map(({ id }) => id),
    ...["E71T-1C", "1.2 mm", "75/25", "don't", "über", "Łuk", "naïve", "Ærø", "3F", "#12", "a-b_c"],
  ];
  // The same words in another order, as well: what is several words must stand in a row to be found.
  const turned = trade.map((word) =>
    word
      .split(/[^\p{L}\p{N}]+/u)
      .reverse()
      .join(" "),
  );
  const arbText = fc.array(fc.oneof(fc.constantFrom(...trade, ...turned), fc.string({ maxLength: 6 })), {
    maxLength: 8,
  });
  const arbAsked = fc
    .constantFrom(...trade)
    .chain((word) => fc.nat({ max: word.length }).map((n) => word.slice(0, n)));

  it.each([
    ["E71T-1C", ["E71T-1C", "1C, E71T", "E71T-1"], [1]],
    ["E71T-1", ["E71T-1C", "1C, E71T", "E71T-1"], [1, 3]],
    ["1.2", ["wire 1.2 mm", "2.1", "1, 2"], [1, 3]],
    ["uber", ["über", "Uberlap", "ueber"], [1, 2]],
  ])("%s is found in the same texts on both", async (word, texts, expected) => {
    for (const on of [sqlite().db, db]) {
      await change(on, rawSql('DELETE FROM "BeadWords"'));
      for (const [i, text] of texts.entries()) await change(on, dialect.keepWords(i + 1, text));
      expect(await found(on, [[word]])).toEqual(expected);
    }
  });

  it("find the same on both databases", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(arbText, { minLength: 1, maxLength: 6 }),
        fc.array(arbAsked, { minLength: 1, maxLength: 3 }),
        async (texts, words) => {
          const asked = words.filter((word) => /[\p{L}\p{N}]/u.test(word)).map((word) => [word]);
          for (const on of [sqlite().db, db]) await change(on, rawSql('DELETE FROM "BeadWords"'));
          for (const [i, parts] of texts.entries()) {
            const text = parts.join("\n").normalize("NFKC").replaceAll("\0", "");
            for (const on of [sqlite().db, db]) await change(on, dialect.keepWords(i + 1, text));
          }
          if (asked.length > 0) expect(await found(db, asked)).toEqual(await found(sqlite().db, asked));
        },
      ),
      { numRuns: inDepth(15, 400), seed: 15 },
    );
  });
});

describe("the same beads on both", () => {
  it("give the same pages, counts and figures, and verify", async () => {
    const growth = { beads: inDepth(24, 300), seed: 4, until: new Date("2026-11-26T12:00:00Z") };
    const stores = [sqlite().db, db] as const;
    for (const on of stores) await growShop({ db: on, by: "test" }, growth);
    const filters: readonly BeadFilter[] = [
      ...[{}, { q: "cold lap" }, { joint: "tee", imperfection: "undercut" }, { verdict: "reject" }],
      ...(["oldest", "number", "title", "welder"] as const).map((sort) => ({ sort })),
      { anyOf: ["porosity", "overlap"], photo: "yes", minThickness: 5 },
    ] as readonly BeadFilter[];
    for (const filter of filters) {
      const [one, other] = await Promise.all(stores.map((on) => answers(on, filter)));
      expect(other, JSON.stringify(filter)).toEqual(one);
    }
    const { findings } = await verifyRecords(db, postgres().newFolder());
    expect(findings.filter(({ code }) => code !== "photo-missing")).toEqual([]);
  });
});

/** Everything a list and its trends say, without the ids, which are chance. */
async function answers(on: Db, filter: BeadFilter) {
  const first = await findPage(on, filter, {}, { at: "start", size: 20 });
  const last = await findPage(on, filter, {}, { at: "end", size: 20 });
  const next =
    first.next === null ? null : await findPage(on, filter, {}, { at: { after: first.next }, size: 20 });
  const said = (page: typeof first | null) => page?.beads.map(({ id: _id, ...rest }) => rest);
  return {
    ...{ first: said(first), next: said(next), last: said(last) },
    counts: await countBeads(on, filter, {}),
    trends: await trendCounts(on, filter, {}, "welder"),
  };
}

describe("several servers on one database", () => {
  it("give each bead a number of its own, without a gap, and one chain", async () => {
    const shared = await postgres().newDatabase();
    const folder = postgres().newFolder();
    // Each client is what a server has: connections and a line of writers of its own.
    const servers = [0, 1, 2].map(() => postgres().open(shared, folder));
    const each = inDepth(4, 40);
    const made = await Promise.all(
      servers.flatMap((on, i) =>
        Array.from({ length: each }, async (_, n) => {
          const pen = { db: on, by: "test" };
          const bead = await createBead(pen, { title: `Server ${i}, bead ${n}` });
          if (!bead.ok) throw new Error(bead.issues[0]?.code);
          const { id, number, content } = bead.value;
          await saveBead(pen, id, 1, { ...content, title: "Saved" });
          if (n % 4 === 3) await deleteBead(pen, id, new Date());
          return number;
        }),
      ),
    );
    expect(made.sort((a, b) => a - b)).toEqual(Array.from({ length: 3 * each }, (_, i) => i + 1));
    const { findings, entries } = await verifyRecords(servers[0]!, folder);
    expect(findings).toEqual([]);
    expect(entries).toBe(3 * (2 * each + 2 * Math.floor(each / 4)));
  });

  it("share what is to be worked out again: each bead is done by one of them, and one that cannot be holds up no other", async () => {
    const shared = await postgres().newDatabase();
    const servers = [0, 1].map(() => postgres().open(shared));
    const [first] = servers;
    const beads = inDepth(30, 300);
    await growShop({ db: first!, by: "test" }, { beads, seed: 2, until: new Date("2026-11-26T12:00:00Z") });
    await change(first!, rawSql(`UPDATE "BeadFacts" SET "stamp" = 'of an earlier program'`));
    await change(
      first!,
      rawSql(
        `CREATE FUNCTION not_this_one() RETURNS trigger AS 'BEGIN RAISE EXCEPTION ''not this one''; END' LANGUAGE plpgsql`,
      ),
    );
    await change(
      first!,
      rawSql(
        `CREATE TRIGGER not_this_one BEFORE UPDATE ON "BeadFacts" FOR EACH ROW WHEN (OLD."number" = 8) EXECUTE FUNCTION not_this_one()`,
      ),
    );
    const worked = await Promise.all(servers.map((on) => workAgain(on)));
    expect(worked.reduce((sum, { done }) => sum + done, 0)).toBe(beads - 1);
    for (const { done, failed } of worked) {
      expect(done).toBeGreaterThan(0);
      expect(failed).toEqual([8]);
    }
    expect(await staleBeads(first!)).toBe(1);
  });

  it("let one of many saves from one revision win", async () => {
    const shared = await postgres().newDatabase();
    const servers = [0, 1].map(() => postgres().open(shared));
    const made = await createBead({ db: servers[0]!, by: "test" }, { title: "One" });
    if (!made.ok) throw new Error("no bead");
    const { id, content } = made.value;
    const saves = await Promise.all(
      Array.from({ length: 10 }, (_, i) =>
        saveBead({ db: servers[i % 2]!, by: "test" }, id, 1, { ...content, title: `Save ${i}` }),
      ),
    );
    expect(saves.filter(({ ok }) => ok)).toHaveLength(1);
    expect(saves.flatMap((save) => (save.ok ? [] : save.issues.map(({ code }) => code)))).toEqual(
      Array.from({ length: 9 }, () => "bead-changed-elsewhere"),
    );
  });
});
