import { beforeAll, describe, expect, it } from "vitest";
import { createBead } from "@/lib/beads";
import { CardSchema } from "@/lib/cards";
import { countBeads, filterQuery, findPage, readFilter, trendCounts, type BeadFilter } from "@/lib/find";
import { beginByCard, beginRun, createCard, createTrial } from "@/lib/series";
import { useFreshDb } from "../../setup/fresh-db";
import { base, trialOf } from "../trials/simulated";

const fresh = useFreshDb();
type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly issues: unknown };
function value<T>(result: Outcome<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const ids = { trial: "", other: "", card: "" };

beforeAll(async () => {
  const { pen } = fresh();
  value(await createBead(pen, { title: "By itself" }));
  ids.trial = value(await createTrial(pen, trialOf(1), null)).id;
  ids.other = value(await createTrial(pen, trialOf(2), null)).id;
  for (const place of [0, 1]) value(await beginRun(pen, ids.trial, { place, at: [] }, null));
  value(await beginRun(pen, ids.other, { place: 0, at: [] }, null));
  const card = CardSchema.parse({ title: "Tee", setup: base, ranges: [], code: "aws-d1-1" });
  ids.card = value(await createCard(pen, card, null)).id;
  for (let i = 0; i < 3; i += 1) value(await beginByCard(pen, ids.card, null));
});

const groups = async (by: "trial" | "card", filter: BeadFilter = {}) => {
  const counts = await trendCounts(fresh().db, filter, {}, by);
  return new Map(counts.groups.map(({ key, beads }) => [key, beads]));
};
const found = async (filter: BeadFilter): Promise<number> => (await countBeads(fresh().db, filter, {})).found;

describe("beads by card and by trial", () => {
  it("are counted in groups that hold every bead once, those of none together", async () => {
    expect(await groups("trial")).toEqual(
      new Map([
        [null, 4],
        [ids.trial, 2],
        [ids.other, 1],
      ]),
    );
    expect(await groups("card")).toEqual(
      new Map([
        [null, 4],
        [ids.card, 3],
      ]),
    );
  });

  it("are found by what a group's line asks for, as many as it says", async () => {
    for (const by of ["trial", "card"] as const)
      for (const [key, beads] of await groups(by))
        expect(await found({ [by]: key ?? "unknown" })).toBe(beads);
    expect(await found({ trial: "nowhere" })).toBe(0);
    const page = await findPage(fresh().db, { trial: ids.trial }, {}, { at: "start", size: 9 });
    expect(page.beads).toHaveLength(2);
  });

  it("narrow each other, and stand in an address", async () => {
    expect(await groups("trial", { card: ids.card })).toEqual(new Map([[null, 3]]));
    expect(await groups("card", { trial: ids.trial })).toEqual(new Map([[null, 2]]));
    const query = `trial=${ids.trial}&card=unknown`;
    expect(filterQuery(readFilter(new URLSearchParams(query)).filter)).toBe(query);
  });

  it("keep what other people ran to those people", async () => {
    const counts = await trendCounts(fresh().db, {}, { welderId: "nobody" }, "trial");
    expect(counts.groups).toEqual([]);
  });
});
