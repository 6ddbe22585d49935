import { beforeAll, describe, expect, it } from "vitest";
import { groupLines } from "@/app/trends/lines";
import { createBead } from "@/lib/beads";
import { findPage, readFilter, trendCounts } from "@/lib/find";
import { welderJoiner } from "@/lib/find/join-welders";
import { addPerson } from "@/lib/roster";
import { trendFigures, type TrendCounts } from "@/lib/trends";
import { useFreshDb } from "../../setup/fresh-db";

/** Rows as the page draws them, each with the address of its beads. */
const hrefsOf = (counts: TrendCounts) =>
  groupLines(trendFigures(counts, { period: "month", most: 8 }).groups, {}, {
    field: "welder",
    wordOf: (word) => word,
  } as Parameters<typeof groupLines>[2]);

const people = [
  { id: "m", mark: "W-07", name: "Marit Oddny" },
  { id: "v", mark: null, name: "Vesna Ling" },
  { id: "w", mark: "W-09", name: "Vesna Ling" },
];

describe("whose a bead is", () => {
  const join = welderJoiner(people);

  it("is its person's where it is linked, whatever stands on it", () => {
    expect(join("m", "somebody")).toMatchObject({
      id: "person:m",
      personId: "m",
      standing: "person",
      label: "W-07",
    });
    expect(join("gone", "W-07")).toMatchObject({ id: "person:gone", standing: "person", label: null });
  });

  it("is the one person's whose mark or name it is, whatever its case and blanks", () => {
    for (const word of ["W-07", " w-07 ", "marit  oddny", "MARIT ODDNY"])
      expect(join(null, word)?.id).toBe("person:m");
  });

  it("stays a word where nobody or several go by it, and is nobody's where nothing is recorded", () => {
    expect(join(null, "vesna ling")).toMatchObject({ id: "word:vesna ling", standing: "several" });
    expect(join(null, "Shift 2")).toMatchObject({ standing: "nobody" });
    expect(join(null, "SHIFT 2")?.id).toBe(join(null, "Shift 2")?.id);
    expect([join(null, null), join(null, "  ")]).toEqual([null, null]);
  });
});

describe("trends by welder", () => {
  const fresh = useFreshDb();
  const value = <T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T => {
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    return result.value;
  };
  beforeAll(async () => {
    const { pen } = fresh();
    const { id } = value(await addPerson(pen, { name: "Marit Oddny", mark: "W-07", role: "welder" }));
    for (const start of [
      { welderId: id },
      { welderId: id },
      { welder: "Marit Oddny" },
      { welder: "w-07" },
      { welder: "Shift 2" },
      { welder: "shift 2" },
      {},
    ])
      value(await createBead(pen, start));
  });

  it("have one row for one person, linked or typed, which leads to all of their beads", async () => {
    const { groups } = await trendCounts(fresh().db, {}, {}, "welder");
    const [first, second, third] = groups;
    expect(groups).toHaveLength(3);
    expect(first).toMatchObject({ key: "W-07", beads: 4, standing: "person" });
    expect(first?.keys).toEqual(["Marit Oddny", "W-07", "w-07"]);
    expect(second).toMatchObject({ beads: 2, standing: "nobody", keys: ["Shift 2", "shift 2"] });
    expect(third).toMatchObject({ key: null, beads: 1, standing: null, keys: [] });
    const query = new URLSearchParams(first!.keys.map((word) => ["anyWelder", word]));
    const { filter } = readFilter(query);
    expect((await findPage(fresh().db, filter, {}, { at: "start", size: 50 })).beads).toHaveLength(4);
  });

  it("keep two people apart who go by one name and have no mark", async () => {
    const { db, pen } = fresh();
    const two = [
      value(await addPerson(pen, { name: "Vesna Ling", mark: null, role: "welder" })),
      value(await addPerson(pen, { name: "Vesna Ling", mark: null, role: "welder" })),
    ];
    for (const [i, { id }] of two.entries())
      for (let bead = 0; bead <= i; bead += 1) value(await createBead(pen, { welderId: id }));
    const counts = await trendCounts(db, {}, {}, "welder");
    const { groups } = counts;
    const theirs = groups.filter(({ key }) => key === "Vesna Ling");
    expect(theirs.map(({ beads }) => beads)).toEqual([2, 1]);
    // Nothing but the address leads from a row to its beads: to those of this person alone.
    for (const { href } of hrefsOf(counts).filter(({ name }) => name === "Vesna Ling")) {
      const { filter, unread } = readFilter(new URLSearchParams(href.slice(href.indexOf("?") + 1)));
      expect(unread).toEqual([]);
      const { beads } = await findPage(db, filter, {}, { at: "start", size: 50 });
      const rows = await db.bead.findMany({ where: { id: { in: beads.map(({ id }) => id) } } });
      const owners = new Set(rows.map(({ welderId }) => welderId));
      expect([owners.size, two.some(({ id }) => owners.has(id))]).toEqual([1, true]);
    }
  });

  it("lead each to as many beads as it counts, over names shared, typed, marked and linked", async () => {
    const { db, pen } = fresh();
    for (const word of ["Vesna Ling", "VESNA LING", "Idris"]) value(await createBead(pen, { welder: word }));
    const { id } = value(await addPerson(pen, { name: "Shift 2", mark: "W-08", role: "welder" }));
    value(await createBead(pen, { welderId: id }));
    // One's mark is another's name; the first is also typed by a name of their own.
    const [marked, named] = [
      value(await addPerson(pen, { name: "Oda Brandt", mark: "Kestrel", role: "welder" })),
      value(await addPerson(pen, { name: "Kestrel", mark: null, role: "welder" })),
    ];
    for (const start of [{ welderId: marked.id }, { welder: "Oda Brandt" }, { welderId: named.id }])
      value(await createBead(pen, start));
    const counts = await trendCounts(db, {}, {}, "welder");
    const [{ groups }, lines] = [counts, hrefsOf(counts)];
    for (const [i, { href }] of lines.entries()) {
      const { filter } = readFilter(new URLSearchParams(href.slice(href.indexOf("?") + 1)));
      const { beads } = await findPage(db, filter, {}, { at: "start", size: 50 });
      expect([lines[i]?.name, beads.length]).toEqual([lines[i]?.name, groups[i]?.beads]);
    }
    expect(groups.reduce((sum, { beads }) => sum + beads, 0)).toBe(await db.bead.count());
  });
});
