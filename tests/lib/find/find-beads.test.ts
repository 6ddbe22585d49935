import { beforeAll, describe, expect, it } from "vitest";
import { emptyBeadJudgement } from "@/lib/assess";
import { createBead, saveBead } from "@/lib/beads";
import {
  countBeads,
  deleteFilter,
  filterFields,
  filterQuery,
  findPage,
  listSavedFilters,
  readFilter,
  saveFilter,
  type BeadFilter,
} from "@/lib/find";
import { emptyRunSetup } from "@/lib/setup";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const ask = (query: string): BeadFilter => readFilter(new URLSearchParams(query)).filter;

async function titles(query: string): Promise<readonly string[]> {
  const { beads } = await findPage(fresh().db, ask(query), {}, { at: "start", size: 48 });
  return beads.map(({ title }) => title);
}

beforeAll(async () => {
  const { pen } = fresh();
  const tee = { ...emptyRunSetup, process: "FCAW-S" as const, joint: "tee" as const, thicknessMm: 6 };
  const first = await createBead(pen, {
    title: "Tee, ropey",
    welder: "Bay 2",
    setup: { ...tee, electrodeClass: "E71T-11", polarity: "DCEP" },
    createdAt: new Date("2026-11-02T10:00:00Z"),
  });
  if (!first.ok) throw new Error("no bead");
  const next = await createBead(pen, {
    title: "Tee, ropey, try 2",
    welder: "Bay 2",
    setup: { ...tee, electrodeClass: "E71T-11", polarity: "DCEN" },
    previousId: first.value.id,
    createdAt: new Date("2026-11-03T10:00:00Z"),
  });
  if (!next.ok) throw new Error("no bead");
  const tried = { causeId: "polarity-wrong", sentence: "Swap the leads.", step: "" };
  await saveBead(pen, next.value.id, 1, {
    ...next.value.content,
    judgement: { ...emptyBeadJudgement, tried, outcome: "cured", note: "Sounds like bacon" },
  });
  await createBead(pen, {
    title: "Lap on 2 mm",
    setup: { ...emptyRunSetup, joint: "lap", thicknessMm: 2 },
    createdAt: new Date("2026-12-01T10:00:00Z"),
  });
});

describe("finding beads", () => {
  it.each([
    ["", ["Lap on 2 mm", "Tee, ropey, try 2", "Tee, ropey"]],
    ["joint=tee", ["Tee, ropey, try 2", "Tee, ropey"]],
    ["joint=tee&polarity=DCEN", ["Tee, ropey, try 2"]],
    ["process=unknown", ["Lap on 2 mm"]],
    ["welder=unknown", ["Lap on 2 mm"]],
    ["welder=Bay+2&sort=oldest", ["Tee, ropey", "Tee, ropey, try 2"]],
    ["q=BACON", ["Tee, ropey, try 2"]],
    ["q=ropey+e71t-11+%232", ["Tee, ropey, try 2"]],
    ["q=nowhere", []],
    // The number of a bead, not a word in a title.
    ["q=%232", ["Tee, ropey, try 2"]],
    // What the trade calls the same: "ropey" is a convex bead, and the wire is found as the tables write it.
    ["q=convex", ["Tee, ropey, try 2", "Tee, ropey"]],
    ["q=e71t11", ["Tee, ropey, try 2", "Tee, ropey"]],
    // A sign that is no word asks for nothing, and a quotation mark is no syntax.
    ["q=%22tee", ["Tee, ropey, try 2", "Tee, ropey"]],
    ["outcome=cured", ["Tee, ropey, try 2"]],
    // The cause belongs to the bead that had the fault, not to the one that was cured.
    ["cause=polarity-wrong", ["Tee, ropey"]],
    ["from=2026-11-03&to=2026-11-30", ["Tee, ropey, try 2"]],
    ["minThickness=3", ["Tee, ropey, try 2", "Tee, ropey"]],
    // Typed in inches, kept in millimetres: 0.12 in is 3.048 mm.
    ["minThicknessIn=0.12", ["Tee, ropey, try 2", "Tee, ropey"]],
    ["maxThicknessIn=1/8", ["Lap on 2 mm"]],
    ["photo=yes", []],
    ["verdict=none", ["Lap on 2 mm", "Tee, ropey, try 2", "Tee, ropey"]],
    ["verdict=decided", []],
  ] as const)("by %j", async (query, expected) => {
    expect(await titles(query)).toEqual(expected);
  });

  it("names what it could not read instead of finding something else", () => {
    const { filter, unread } = readFilter(new URLSearchParams("joint=knee&from=yesterday&q=&welder=A"));
    expect(unread.toSorted()).toEqual(["from", "joint"]);
    expect(filter).toEqual({ welder: "A" });
    expect(readFilter(new URLSearchParams("minThicknessIn=thick")).unread).toEqual(["minThickness"]);
    expect(readFilter(new URLSearchParams("minThicknessIn=1/4"))).toEqual({
      filter: { minThickness: 6.35 },
      unread: [],
    });
  });

  it("writes a filter as the address it was read from", () => {
    const query = "q=a+b&process=GMAW&minThickness=2.5&verdict=decided&id=x&id=y&sort=title";
    expect(filterQuery(ask(query))).toBe(query);
    expect(filterFields.length).toBeGreaterThan(20);
  });

  it("a welder's list holds their own alone", async () => {
    const { db } = fresh();
    const nobody = { welderId: "nobody" };
    expect(await findPage(db, {}, nobody, { at: "start", size: 9 })).toEqual({
      beads: [],
      next: null,
      previous: null,
    });
    expect(await countBeads(db, {}, nobody)).toEqual({ found: 0, all: 0 });
  });
});

describe("saved filters", () => {
  it("are kept under a name, replaced under the same name, and deleted, each with its entry in the log", async () => {
    const { db, pen } = fresh();
    const saved = await saveFilter(pen, " Tees ", ask("joint=tee"));
    await saveFilter(pen, "Tees", ask("joint=tee&verdict=reject"));
    expect(await listSavedFilters(db)).toMatchObject([
      { name: "Tees", filter: { joint: "tee", verdict: "reject" } },
    ]);
    expect(saved.ok && (await deleteFilter(pen, saved.value.id)).ok).toBe(true);
    expect(await listSavedFilters(db)).toEqual([]);
    expect(await saveFilter(pen, "  ", {})).toMatchObject({ issues: [{ code: "filter-name-missing" }] });
    const actions = await db.logEntry.findMany({ where: { subject: { startsWith: "filter:" } } });
    expect(actions.map(({ action }) => action)).toEqual(["filter.saved", "filter.saved", "filter.deleted"]);
  });
});
