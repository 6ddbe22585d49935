import { describe, expect, it } from "vitest";
import { listExercises, listHandIns } from "@/lib/classroom";
import { fillDemoShop } from "@/lib/demo/fill-shop";
import { demoBeads } from "@/lib/demo/beads";
import { listInspections, listJobs } from "@/lib/jobs";
import { listGroups } from "@/lib/roster";
import { listShopSets } from "@/lib/shop";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";
import { listBeads } from "../../setup/stored-beads";

const fresh = useFreshDb();

describe("the demo shop", () => {
  it("fills an empty database with everything there is to look at, and the log knows all of it", async () => {
    const { db, pen, folder } = fresh();
    await fillDemoShop(pen, folder);
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
