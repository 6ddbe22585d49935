import { beforeAll, describe, expect, it, vi } from "vitest";
import { emptyBeadJudgement } from "@/lib/assess";
import { createBead, factsDiffering, getBead, saveBead, staleBeads } from "@/lib/beads";
import { workAgain } from "@/lib/beads/work-again";
import { countBeads, findPage, trendCounts, type BeadFilter, type ListedBead } from "@/lib/find";
import { emptyDrawing } from "@/lib/marks";
import { addPerson, removePerson } from "@/lib/roster";
import { emptyRunSetup } from "@/lib/setup";
import { saveShopSet } from "@/lib/shop";
import type * as TablesFile from "@/lib/shop/tables-digest";
import { summariseCard } from "@/lib/report";
import { metric } from "@/lib/units";
import { useFreshDb } from "../../setup/fresh-db";

/** Stands in for a version of the program with other tables. */
const tables = vi.hoisted(() => ({ digest: "tables of today" }));
vi.mock("@/lib/shop/tables-digest", async (original) => ({
  ...(await original<typeof TablesFile>()),
  tablesDigest: () => tables.digest,
}));

const fresh = useFreshDb();
const ids: string[] = [];
let welderId = "";

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const limits = {
  title: "Width alone",
  note: "",
  rows: [
    { id: "w", title: "Width", imperfections: [], quantity: "width", limit: 7, windowMm: null, note: "" },
  ],
};
const judged = (widthMm: number) => ({
  ...emptyBeadJudgement,
  criteriaId: "shop-width-alone@1",
  readings: [{ quantity: "width" as const, value: widthMm, instrument: "Calliper", resolution: 0.05 }],
});

async function listed(filter: BeadFilter = {}): Promise<readonly ListedBead[]> {
  return (await findPage(fresh().db, filter, {}, { at: "start", size: 48 })).beads;
}
const verdicts = async (filter: BeadFilter = {}) =>
  (await listed({ sort: "number", ...filter })).map(({ said }) => (said === null ? "again" : said.verdict));
const figures = async () => trendCounts(fresh().db, {}, {}, "joint");

beforeAll(async () => {
  const { pen } = fresh();
  welderId = value(await addPerson(pen, { name: "Marit Oddny", mark: null, role: "welder" })).id;
  for (const widthMm of [5, 9])
    ids.push(
      value(await createBead(pen, { title: `Bead ${widthMm}`, welderId, judgement: judged(widthMm) })).id,
    );
});

describe("a row that is not current is never shown or counted as current", () => {
  it("limits that come later mark the beads that name them, and no others", async () => {
    const { db, pen } = fresh();
    const other = value(await createBead(pen, { title: "Without" })).id;
    expect(await verdicts()).toEqual([null, null, null]);
    value(await saveShopSet(pen, null, 0, limits, "Instructor"));
    expect(await verdicts()).toEqual(["again", "again", null]);
    expect(await staleBeads(db)).toBe(2);
    // Nothing of what it said stands on its card, but its name does.
    const [card] = (await listed({ sort: "number" })).map((bead) => summariseCard(bead, null, metric));
    expect(card).toMatchObject({ title: "Bead 5", again: "all", verdict: null, firstChange: null, seen: [] });
    expect(await workAgain(db)).toEqual({ done: 2, failed: [] });
    expect(await verdicts()).toEqual(["accept", "reject", null]);
    ids.push(other);
  });

  it("other tables mark every row; verdict filters and figures leave out what is not worked out again", async () => {
    const { db } = fresh();
    vi.resetModules();
    tables.digest = "tables of tomorrow";
    // Another program on the same database: its modules are loaded anew.
    const { findPage: findThen, trendCounts: countThen, countBeads: beadsThen } = await import("@/lib/find");
    const { staleBeads: staleThen } = await import("@/lib/beads");
    const { workAgain: workThen } = await import("@/lib/beads/work-again");
    const page = await findThen(db, {}, {}, { at: "start", size: 9 });
    expect(page.beads.map(({ said }) => said)).toEqual([null, null, null]);
    expect(await staleThen(db)).toBe(3);
    for (const verdict of ["accept", "reject", "decided", "none"] as const)
      expect((await beadsThen(db, { verdict }, {})).found).toBe(0);
    expect(await countThen(db, {}, {}, "joint")).toMatchObject({ beads: 0, decided: 0, groups: [] });
    // First what is on screen.
    const [{ number: onScreen }] = page.beads as [ListedBead];
    let worked: number | null = null;
    const stop = new Error("looked after the first slice");
    await workThen(db, [onScreen], async (rest) => {
      expect(rest).toEqual({ least: 20, most: 20 });
      worked ??= (await db.beadFacts.findMany({ where: { number: onScreen } }))[0]?.stamp.length ?? 0;
      throw stop;
    }).catch((error: unknown) => expect(error).toBe(stop));
    expect(worked).toBe(16);
    await workThen(db);
    expect(await staleThen(db)).toBe(0);
    // And to this program, now the older one, they are stale in turn.
    expect(await verdicts()).toEqual(["again", "again", "again"]);
    expect((await figures()).beads).toBe(0);
    expect((await workAgain(db)).done).toBe(3);
    expect(await verdicts()).toEqual(["accept", "reject", null]);
  });

  it.each([
    [
      "a bead's readings",
      () => fresh().db.bead.update({ where: { id: ids[0]! }, data: { judgement: judged(9) } }),
    ],
    [
      "its set-up",
      () =>
        fresh().db.bead.update({
          where: { id: ids[0]! },
          data: { setup: { ...emptyRunSetup, joint: "tee" } },
        }),
    ],
    [
      "a photo of it",
      () =>
        fresh().db.photo.create({
          data: {
            id: "p1",
            beadId: ids[0]!,
            sha256: "a".repeat(64),
            role: "face",
            place: 0,
            format: "jpeg",
            bytes: 1,
            widthPx: 1600,
            heightPx: 1200,
            drawing: emptyDrawing,
          },
        }),
    ],
    ["the photo's drawing", () => fresh().db.photo.update({ where: { id: "p1" }, data: { role: "back" } })],
    ["the photo again", () => fresh().db.photo.delete({ where: { id: "p1" } })],
  ])("whatever changes %s behind the program's back leaves its row marked", async (_, change) => {
    const { db } = fresh();
    await workAgain(db);
    expect((await factsDiffering(db, [ids[0]!])).has(ids[0]!)).toBe(false);
    await change();
    expect((await verdicts())[0]).toBe("again");
    expect((await verdicts())[1]).toBe("reject");
    await workAgain(db);
    expect((await verdicts())[0]).not.toBe("again");
    expect((await factsDiffering(db, [ids[0]!])).has(ids[0]!)).toBe(false);
  });

  it("a save leaves no stale row, in one transaction with what it says", async () => {
    const { db, pen } = fresh();
    const bead = await getBead(db, ids[1]!);
    value(await saveBead(pen, ids[1]!, bead!.revision, { ...bead!.content, judgement: judged(4) }));
    expect((await verdicts())[1]).toBe("accept");
    expect(await staleBeads(db)).toBe(0);
  });

  it("a row that nobody can read stays stale and holds up no other", async () => {
    const { db } = fresh();
    await db.$executeRawUnsafe(`UPDATE "Bead" SET "setup" = '{"joint": 7}' WHERE "id" = '${ids[2]}'`);
    await db.$executeRawUnsafe(`UPDATE "BeadFacts" SET "stamp" = ''`);
    expect(await workAgain(db)).toEqual({ done: 2, failed: [3] });
    expect((await verdicts())[2]).toBe("again");
    await db.bead.update({ where: { id: ids[2]! }, data: { setup: emptyRunSetup } });
    await workAgain(db);
  });
});

describe("a person who is removed", () => {
  it("is gone from lists, filters and words at once", async () => {
    const { db, pen } = fresh();
    expect((await countBeads(db, { q: "marit" }, {})).found).toBe(2);
    expect((await countBeads(db, { welder: "Marit Oddny" }, {})).found).toBe(2);
    value(await removePerson(pen, welderId, new Date()));
    expect((await countBeads(db, { q: "marit" }, {})).found).toBe(0);
    expect((await countBeads(db, { welder: "Marit Oddny" }, {})).found).toBe(0);
    await workAgain(db);
    expect((await countBeads(db, { q: "bead" }, {})).found).toBe(2);
  });
});
