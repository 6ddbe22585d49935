import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { staleBeads } from "@/lib/beads";
import { openDb, type Db } from "@/lib/db";
import { growShop } from "@/lib/demo/grow-shop";
import { wrongAfter } from "../load/book";
import { kinds } from "../load/one-bead";
import { startServers, type Servers } from "../load/servers";
import { workTogether, wrongCodes, type Together } from "../load/together";

/** The lock of one that was killed goes with its connection; a slice of the other follows. On a busy machine every wait is longer. */
const TAKEN_OVER = { leastMs: 5000, waits: 10 };

let servers: Servers;
let done: Together;
let db: Db;
beforeAll(async () => {
  servers = await startServers(2, 12);
  db = openDb(servers.database, servers.servers[0]?.dataFolder);
});
afterAll(async () => {
  await db?.$disconnect();
  await servers?.stop();
});

/** Whatever guards there are, as somebody does who owns the database. */
const behindBacks = (statement: string): Promise<unknown> =>
  db.$transaction(async (tx) => {
    await tx.$executeRawUnsafe("SET LOCAL session_replication_role = replica");
    await tx.$executeRawUnsafe(statement);
  });

/** What is found wrong while a fault is put in; it is out again whatever was found, for what comes after. */
async function wrongWhile(put: string, back: string): Promise<string> {
  await behindBacks(put);
  try {
    return (await wrongAfter(servers, done.book)).join("\n");
  } finally {
    await behindBacks(back);
  }
}

describe("two servers behind one proxy, on one database and one place of photos", () => {
  it("lose nothing they said yes to, give each bead a number without a gap, and one of them may be killed", async () => {
    done = await workTogether(servers, { minutes: 1 / 3, paceMs: 4000, kill: true, least: 1 });
    for (const kind of kinds) {
      expect(done.figures[kind].failed, kind).toEqual([]);
      expect(done.figures[kind].times.length, kind).toBeGreaterThan(5);
    }
    const [from, to] = done.down ?? [0, 0];
    expect(to).toBeGreaterThan(from);
    // Connections break while one is away, and at no other time.
    for (const at of done.broken) expect(at >= from && at <= to + 2000).toBe(true);
    expect(done.broken.length).toBeGreaterThan(0);
    expect(await wrongAfter(servers, done.book)).toEqual([]);
  });

  it("would be found out: what was said yes to and is not there", async () => {
    const whole = done.book.find(({ saves, sha256 }) => saves.length > 1 && sha256 !== null);
    if (!whole) throw new Error("nobody came to an end");
    const { id, saves, number, sha256 } = whole;
    const last = saves.at(-1)!;
    const faults: Record<string, readonly [string, string, RegExp]> = {
      "a bead": [
        `UPDATE "Bead" SET "id" = 'gone' WHERE "id" = '${id}'`,
        `UPDATE "Bead" SET "id" = '${id}' WHERE "id" = 'gone'`,
        /is gone/,
      ],
      "its last save": [
        `UPDATE "Bead" SET "revision" = "revision" - 1, "title" = '${saves.at(-2)?.title}' WHERE "id" = '${id}'`,
        `UPDATE "Bead" SET "revision" = "revision" + 1, "title" = '${last.title}' WHERE "id" = '${id}'`,
        /save \d+ of bead/,
      ],
      "a photo": [
        `UPDATE "Photo" SET "sha256" = 'none' WHERE "beadId" = '${id}'`,
        `UPDATE "Photo" SET "sha256" = '${sha256}' WHERE "beadId" = '${id}'`,
        /is there 0 times/,
      ],
      "a number": [
        `UPDATE "Bead" SET "number" = 100000 WHERE "id" = '${id}'`,
        `UPDATE "Bead" SET "number" = ${number} WHERE "id" = '${id}'`,
        /has the number 100000/,
      ],
      "the chain": [
        `UPDATE "LogEntry" SET "hash" = 'x' || "hash" WHERE "seq" = 7`,
        `UPDATE "LogEntry" SET "hash" = substr("hash", 2) WHERE "seq" = 7`,
        /"entry-changed"|"entry-does-not-follow"/,
      ],
    };
    for (const [what, [put, back, found]] of Object.entries(faults)) {
      expect(await wrongWhile(put, back), what).toMatch(found);
    }
    await behindBacks(`DROP INDEX "Bead_number_key"`);
    const other = done.book.find((one) => one.number !== null && one.id !== id)!;
    const twice = await wrongWhile(
      `UPDATE "Bead" SET "number" = ${number} WHERE "id" = '${other.id}'`,
      `UPDATE "Bead" SET "number" = ${other.number} WHERE "id" = '${other.id}'`,
    );
    expect(twice).toContain(`there: number ${number} 2 times`);
    expect(twice).toContain(`there: number ${other.number} is missing`);
    expect(await wrongAfter(servers, done.book)).toEqual([]);
    // And what the books say among themselves: a number told to two, a bead that nobody sent.
    const told = done.book.map((one) => (one === other ? { ...one, number } : one));
    expect((await wrongAfter(servers, told)).join("\n")).toMatch(/was told twice/);
    const unsent = done.book.filter((one) => one !== other);
    expect(await wrongAfter(servers, unsent)).toEqual([`bead ${other.number}, which nobody sent`]);
  });

  it("count wrong codes together", async () => {
    const statuses = await wrongCodes(servers, 40);
    expect(statuses.filter((status) => status === 404)).toHaveLength(30);
    expect(statuses.filter((status) => status === 429)).toHaveLength(10);
  });

  it("share what is to be worked out again; where one is killed the other goes on at once", async () => {
    const BEADS = 400;
    const pen = { db, by: "test" };
    await growShop(pen, { beads: BEADS, seed: 4, until: new Date("2026-11-26T12:00:00Z") });
    // Written down by the database itself, whoever does it.
    await behindBacks(
      `CREATE TABLE worked (number int, server int, at timestamptz DEFAULT clock_timestamp())`,
    );
    await behindBacks(`CREATE FUNCTION note_worked() RETURNS trigger AS
      'BEGIN INSERT INTO worked (number, server) VALUES (NEW."number", inet_client_port()); RETURN NULL; END' LANGUAGE plpgsql`);
    await behindBacks(`UPDATE "BeadFacts" SET "stamp" = 'of an earlier program'`);
    await behindBacks(
      `CREATE TRIGGER note_worked AFTER UPDATE OF "stamp" ON "BeadFacts" FOR EACH ROW EXECUTE FUNCTION note_worked()`,
    );
    const stale = await staleBeads(db);
    expect(stale).toBeGreaterThan(BEADS);
    const count = async (): Promise<number> =>
      Number((await db.$queryRawUnsafe<{ n: bigint }[]>(`SELECT COUNT(*) AS n FROM worked`))[0]?.n);
    const health = () => Promise.all(servers.servers.map(({ url }) => fetch(`${url}/api/health`)));
    await health();
    await expect.poll(count).toBeGreaterThan(50);
    const [, last] = servers.servers;
    await last!.kill();
    const killed = new Date();
    const before = await count();
    expect(before).toBeLessThan(stale);
    // Nobody asks again: the one that is left is at work.
    await expect.poll(() => staleBeads(db)).toBe(0);
    const rows =
      await db.$queryRawUnsafe<{ number: number; server: number; at: Date }[]>(`SELECT * FROM worked`);
    expect(rows.map(({ number }) => number).sort((a, b) => a - b)).toEqual(
      (await db.bead.findMany({ orderBy: { number: "asc" }, select: { number: true } })).map(
        ({ number }) => number,
      ),
    );
    const after = rows.filter(({ at }) => at > killed).map(({ at }) => at.getTime() - killed.getTime());
    console.log(`taken over after ${Math.min(...after)} ms; ${after.length} of ${stale} beads left then`);
    const earlier = rows.map(({ at }) => at.getTime()).filter((at) => at <= killed.getTime());
    const waits = earlier.sort((a, b) => a - b).map((at, i) => at - (earlier[i - 1] ?? at));
    expect(Math.min(...after)).toBeLessThan(
      Math.max(TAKEN_OVER.leastMs, TAKEN_OVER.waits * Math.max(...waits)),
    );
  });
});
