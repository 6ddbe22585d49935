import { describe, expect, it } from "vitest";
import { listExercises, listHandIns } from "@/lib/classroom";
import { clearDemoShop, demoToClear, isDemoThere } from "@/lib/demo";
import { demoBeads } from "@/lib/demo/beads";
import { fillDemoShop } from "@/lib/demo/fill-shop";
import { listInspections, listJobs } from "@/lib/jobs";
import { listGroups } from "@/lib/roster";
import { listShopSets } from "@/lib/shop";
import { allSubjects, writeSetting, type Pen } from "@/lib/store";
import { createBead } from "@/lib/beads";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";
import { listBeads } from "../../setup/stored-beads";

const fresh = useFreshDb();

// One shop for both, because filling it takes longest.
describe("the demo shop", () => {
  it("fills an empty database with everything there is to look at, and the log knows all of it", async () => {
    const { db, folder } = fresh();
    const system: Pen = { db, by: "system" };
    // As lib/cli/demo.ts fills it.
    await fillDemoShop(system, folder);
    await writeSetting(system, "demo.filled", true);
    const beads = await listBeads(db);
    expect(beads.map(({ content }) => content.title).sort()).toEqual(
      demoBeads.map(({ title }) => title).sort(),
    );
    expect(beads.every(({ photos }) => photos.length === 1)).toBe(true);
    const [group] = await listGroups(db);
    expect(group?.members.length).toBeGreaterThan(0);
    expect((await listExercises(db, { groupId: group!.id })).length).toBe(1);
    expect((await listHandIns(db)).length).toBe(2);
    expect([(await listJobs(db)).length, (await listInspections(db)).length]).toEqual([1, 1]);
    expect((await listShopSets(db)).length).toBe(1);
    const { findings, photos } = await verifyRecords(db, folder);
    expect(findings).toEqual([]);
    expect(photos).toBe(demoBeads.length);
  });
});

describe("clearing a demo shop in which nobody worked", () => {
  it("leaves an empty shop, of which the log tells everything that was there", async () => {
    const { db, folder } = fresh();
    // The installation's keys and what it signed of the log are not the demo's.
    const notOfTheHouse = (subject: string) => !/^(key|checkpoint):/.test(subject);
    const there = (await allSubjects(db)).filter(
      (subject) => notOfTheHouse(subject) && !subject.startsWith("setting:"),
    );
    expect(await demoToClear(db)).toMatchObject({ gone: there.length, staying: 0 });
    expect(await isDemoThere(db)).toBe(true);
    const owner: Pen = { db, by: "owner" };
    expect(await clearDemoShop(owner, folder)).toMatchObject({ ok: true, value: { gone: there.length } });
    expect((await allSubjects(db)).filter(notOfTheHouse)).toEqual(["setting:demo.filled"]);
    const cleared = await db.logEntry.findMany({ where: { action: "demo.cleared" } });
    expect(cleared.map(({ subject }) => subject).sort()).toEqual([...there].sort());
    expect(cleared.every(({ by, digest }) => by === "owner" && digest === null)).toBe(true);
    expect(await verifyRecords(db, folder)).toMatchObject({ findings: [], photos: 0, frozen: 0 });
    expect([await demoToClear(db), await isDemoThere(db)]).toEqual([null, false]);
    expect(await createBead(owner)).toMatchObject({ ok: true, value: { number: 1 } });
  });
});
