import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { addPhoto, createBead, factsDiffering, saveBead } from "@/lib/beads";
import { inventedContent, numbersFrom } from "@/lib/demo/invented";
import {
  BeadFilterSchema,
  beadSlices,
  countBeads,
  countSome,
  findPage,
  readFilter,
  recordedChoices,
  trendCounts,
  type BeadFilter,
} from "@/lib/find";
import { addPerson } from "@/lib/roster";
import { saveShopSet } from "@/lib/shop";
import { filterableFields } from "@/lib/setup";
import { imperfectionIds } from "@/lib/trade";
import { shareOf, trendFigures } from "@/lib/trends";
import { trendReport } from "./one-by-one/trend-report";
import type { Pen } from "@/lib/store";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth } from "../../setup/in-depth";
import { walk } from "./many-beads";
import { findByHand, observeAll, type ObservedBead } from "./by-hand";

/**
 * Beads by the hundred, saved as people save them, listed, filtered and counted two ways: from the facts that are kept, by
 * SQL, and by reading and assessing every bead, as it was done before. Both must agree to the last digit.
 */
const fresh = useFreshDb();
const BEADS = inDepth(120, 240);
const people: string[] = [];
/** All of them, read and assessed one by one when everything was saved; nothing is saved after that. */
let all: readonly ObservedBead[] = [];
/** Limits that a width alone meets or does not, so that every verdict occurs. Invented. */
const SHOP_SET = "shop-width-alone@1";
const widthAlone = {
  title: "Width alone",
  note: "",
  rows: [
    { id: "w", title: "Width", imperfections: [], quantity: "width", limit: 7, windowMm: null, note: "" },
  ],
};

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

async function addInvented(pen: Pen, next: () => number, before: readonly string[]): Promise<string> {
  const previousId = next() < 0.4 ? before[Math.floor(next() * before.length)] : undefined;
  const made = value(
    await createBead(pen, {
      // A few days and few times, so that many are equal.
      createdAt: new Date(Date.UTC(2026, 8, 1 + Math.floor(next() * 60), Math.floor(next() * 3))),
      welderId: next() < 0.6 ? (people[Math.floor(next() * people.length)] ?? null) : null,
      ...(previousId ? { previousId } : {}),
    }),
  );
  let photoId = "";
  if (next() < 0.8) {
    const sha256 = Math.floor(next() * 2 ** 40)
      .toString(16)
      .padStart(64, "0");
    const photo = { sha256, format: "jpeg", bytes: 9, widthPx: 1600, heightPx: 1200 };
    photoId = value(await addPhoto(pen, made.id, photo, "face")).record.id;
  }
  const content = inventedContent(next, photoId, ["iso-5817-c", "aws-d1-1-static", SHOP_SET, SHOP_SET, null]);
  const photos = photoId === "" ? [] : content.photos;
  const welder = next() < 0.3 ? "Élodie" : null;
  value(await saveBead(pen, made.id, 1, { ...content, photos, welder }));
  return made.id;
}

beforeAll(async () => {
  const { pen } = fresh();
  const next = numbersFrom(20261126);
  value(await saveShopSet(pen, null, 0, widthAlone, "Instructor"));
  for (const mark of ["W-01", "W-02", null]) {
    const added = value(await addPerson(pen, { name: `Invented ${mark ?? "third"}`, mark, role: "welder" }));
    people.push(added.id);
  }
  const ids: string[] = [];
  for (let i = 0; i < BEADS; i += 1) ids.push(await addInvented(pen, next, ids));
  all = await observeAll(pen.db);
});

const filters: readonly string[] = [
  "",
  "verdict=decided",
  "verdict=accept",
  "verdict=reject",
  "verdict=cannot-say",
  "verdict=none",
  "imperfection=undercut",
  "anyOf=undercut&anyOf=overlap",
  "cause=polarity",
  "anyCause=polarity&anyCause=volt-high",
  "cause=unknown&joint=tee",
  "welder=W-01",
  "welder=unknown",
  "person=unknown",
  "person=unknown&welder=unknown",
  "class=E71T-11&polarity=DCEN",
  "process=unknown",
  "outcome=cured",
  "outcome=unknown",
  "photo=no",
  "minThickness=3&maxThickness=6",
  "from=2026-09-10&to=2026-10-05",
  "criteria=iso-5817-c",
  "criteria=unknown&photo=yes",
];

const ask = (query: string): BeadFilter => readFilter(new URLSearchParams(query)).filter;

async function pagesOf(filter: BeadFilter, size: number): Promise<string[]> {
  const ids: string[] = [];
  for await (const slice of beadSlices(fresh().db, filter, {})) ids.push(...slice.map(({ bead }) => bead.id));
  expect(size).toBeGreaterThan(0);
  return ids;
}

/** A report of before as the figures of now: lists of beads are only counted. */
function figuresOf(
  found: readonly ObservedBead[],
  by: (one: ObservedBead) => string | null,
  period: "week" | "month",
  ofWelders = false,
) {
  const known = new Set(all.filter(({ bead }) => bead.welderId !== null).map(({ welder }) => welder));
  const report = trendReport(found, { period, by, most: 4 });
  const pareto = ({ total, rows }: typeof report.imperfections) => ({
    total,
    rows: rows.map(({ beadIds: _, ...row }) => ({
      ...row,
      ofBeads: row.key === null ? null : shareOf(row.count, report.beads),
    })),
  });
  return {
    beads: report.beads,
    rejected: report.rejects.rejected,
    undecided: report.rejects.undecidedIds.length,
    imperfections: pareto(report.imperfections),
    causes: pareto(report.causes),
    chart: report.chart.ok
      ? {
          ok: true,
          value: {
            ...report.chart.value,
            points: report.chart.value.points.map(({ beadIds: _, ...point }) => point),
          },
        }
      : report.chart,
    groups: report.groups.map(({ key, beads, rejects, mostSeen }) => ({
      key,
      beads,
      rejected: rejects.rejected,
      mostSeen,
      keys: key === null ? [] : [key],
      standing: !ofWelders || key === null ? null : known.has(key) ? "person" : "nobody",
      // Each of these people has a word of their own.
      person: null,
    })),
  };
}

it("every verdict occurs among them, so that no filter is tried on nothing", () => {
  const verdicts = new Set(findByHand(all, {}).map(({ verdict }) => verdict));
  expect(verdicts).toEqual(new Set(["accept", "reject", "cannot-say", null]));
});

describe("the kept facts and the beads themselves say the same", () => {
  it.each(filters)("list and count by %j", async (query) => {
    const { db } = fresh();
    const filter = ask(query);
    const byHand = findByHand(all, filter);
    expect(await pagesOf(filter, 7)).toEqual(byHand.map(({ beadId }) => beadId));
    expect(await countBeads(db, filter, {})).toEqual({ found: byHand.length, all: BEADS });
    const page = await findPage(db, filter, {}, { at: "start", size: 48 });
    for (const [i, { said, confirmedCause }] of page.beads.entries()) {
      expect([said?.verdict, confirmedCause]).toEqual([byHand[i]?.verdict, byHand[i]?.confirmedCause]);
    }
  });

  it.each(BeadFilterSchema.shape.sort.unwrap().options)("sorted by %s", async (sort) => {
    const byHand = findByHand(all, { sort });
    expect(await pagesOf({ sort }, 7)).toEqual(byHand.map(({ beadId }) => beadId));
  });

  it.each(filters)("trends of %j, to the last digit", async (query) => {
    const { db } = fresh();
    const found = findByHand(all, ask(query));
    for (const by of ["welder", "joint", "electrodeClass"] as const) {
      const counts = await trendCounts(db, ask(query), {}, by);
      for (const period of ["week", "month"] as const) {
        const byHand = figuresOf(
          found,
          (one) => (by === "welder" ? one.welder : one.bead.content.setup[by]),
          period,
          by === "welder",
        );
        expect(trendFigures(counts, { period, most: 4 })).toEqual(byHand);
      }
    }
  });

  it("of one person's beads too", async () => {
    const scope = { welderId: people[0]! };
    const byHand = findByHand(all, { joint: "tee" }, scope);
    const page = await findPage(fresh().db, { joint: "tee" }, scope, { at: "start", size: 200 });
    expect(page.beads.map(({ id }) => id)).toEqual(byHand.map(({ beadId }) => beadId));
    expect(byHand.length).toBeGreaterThan(0);
  });

  it("the answers a filter offers are those that stand in the records", async () => {
    const choices = await recordedChoices(fresh().db, {});
    const own = await recordedChoices(fresh().db, { welderId: people[0]! });
    const ofOwn = findByHand(all, {}, { welderId: people[0]! });
    for (const [given, beads] of [
      [choices, findByHand(all, {})],
      [own, ofOwn],
    ] as const) {
      for (const field of filterableFields)
        expect(new Set(given[field])).toEqual(new Set(beads.map(({ bead }) => bead.content.setup[field])));
      expect(new Set(given.welder)).toEqual(new Set(beads.map(({ welder }) => welder)));
      expect(new Set(given.confirmedCause)).toEqual(new Set(beads.map((one) => one.confirmedCause)));
      const marked = new Set(beads.flatMap(({ imperfections }) => imperfections));
      expect(given.imperfection).toEqual(imperfectionIds.filter((id) => marked.has(id)));
    }
  });

  it("words are found the same, however far is looked ahead for them, and counts stop where they are told to", async () => {
    const { db } = fresh();
    const sorts = BeadFilterSchema.shape.sort.unwrap().options;
    for (const q of ["tee", "e71t", "w-01", "lap cold", "nowhere"]) {
      const { found } = await countBeads(db, { q }, {});
      for (const most of [1, Math.max(1, found - 1), found, found + 1]) {
        const some = await countSome(db, { q }, {}, most);
        expect(some.found).toEqual({ count: Math.min(found, most), isMore: found > most });
        expect(some.all).toEqual({ count: Math.min(BEADS, most), isMore: BEADS > most });
      }
      for (const sort of sorts) {
        const far = await walk(db, { q, sort }, "start", 11);
        expect(far).toHaveLength(found);
        for (const lookAhead of [5, 37])
          for (const way of ["start", "end"] as const)
            expect(await walk(db, { q, sort }, way, 11, lookAhead)).toEqual(far);
      }
    }
    expect((await countBeads(db, { q: "tee" }, {})).found).toBeGreaterThan(20);
  });

  it("any combination of filters finds the same beads", async () => {
    const parts = fc.uniqueArray(fc.constantFrom(...filters.slice(1)), { minLength: 2, maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(parts, async (some) => {
        const filter = ask(some.join("&"));
        const byHand = findByHand(all, filter);
        const { found } = await countBeads(fresh().db, filter, {});
        expect(found).toBe(byHand.length);
      }),
      { numRuns: 12, seed: 7 },
    );
  });

  it("and the check of derived rows sees the one that was changed behind the program's back, and no other", async () => {
    const { db } = fresh();
    const [one, other] = await db.beadFacts.findMany({ where: { verdict: "accept" }, take: 2 });
    expect([
      (await factsDiffering(db, [one!.beadId])).has(one!.beadId),
      (await factsDiffering(db, [other!.beadId])).has(other!.beadId),
    ]).toEqual([false, false]);
    await db.beadFacts.update({ where: { number: one!.number }, data: { verdict: "reject" } });
    expect([
      (await factsDiffering(db, [one!.beadId])).has(one!.beadId),
      (await factsDiffering(db, [other!.beadId])).has(other!.beadId),
    ]).toEqual([true, false]);
    await db.beadFacts.update({ where: { number: one!.number }, data: { verdict: "accept" } });
    expect((await factsDiffering(db, [one!.beadId])).has(one!.beadId)).toBe(false);
  });
});
