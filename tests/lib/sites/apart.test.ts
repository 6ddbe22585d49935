import { existsSync, mkdirSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { backUpAside, chosenIssues, runAside, writeNightlyPlan } from "@/lib/backup";
import { lookAtNights } from "@/lib/backup/aside";
import { createBead, deleteBead, eraseDeletedBeads, letGoPhoto } from "@/lib/beads";
import { dataDir, db, photoPlace } from "@/lib/db";
import { holdPhoto, photoStore } from "@/lib/photo";
import { assessContext, listShopSets, saveShopSet } from "@/lib/shop";
import { inSite, type Site } from "@/lib/sites";
import { verifyRecords } from "@/lib/verify";
import { itDeep } from "../../setup/in-depth";
import { smallBead } from "../../setup/small-shop";
import { makeTwoSites, type TwoSites } from "../../setup/two-sites";

let two: TwoSites;
beforeAll(async () => {
  two = await makeTwoSites();
  for (const [name, value] of Object.entries(two.env)) vi.stubEnv(name, value);
});
afterAll(async () => {
  for (const site of [two.north, two.south]) await inSite(site, () => db().$disconnect());
  vi.unstubAllEnvs();
  await two.remove();
});

const pen = () => ({ db: db(), by: "test" });
const both = <T>(work: (site: Site) => Promise<T>): Promise<T[]> =>
  Promise.all([two.north, two.south].map((site) => inSite(site, () => work(site))));
const findings = async () => (await verifyRecords(db(), dataDir(), { photos: photoPlace() })).findings;

describe("two sites beside one another", () => {
  it("each count from one, without a gap, while both write at once", async () => {
    const make = async () => {
      const made = await createBead(pen(), { title: "Tee" });
      if (!made.ok) throw new Error("no bead");
      return (await db().bead.findUniqueOrThrow({ where: { id: made.value.id } })).number;
    };
    const numbers = await both(() => Promise.all(Array.from({ length: 8 }, make)));
    for (const own of numbers) expect(own.sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  it("judge by their own limits alone", async () => {
    const row = {
      id: "width",
      title: "Width",
      imperfections: [],
      quantity: "width",
      limit: 9,
      windowMm: null,
    };
    const set = { title: "North's stringers", note: "", rows: [{ ...row, note: "" }] };
    const saved = await inSite(two.north, () => saveShopSet(pen(), null, 0, set, "Owner"));
    if (!saved.ok) throw new Error(JSON.stringify(saved.issues));
    const known = await both(async () => (await listShopSets(db())).length);
    expect(known).toEqual([1, 0]);
    const [id = ""] = await inSite(two.north, async () => (await listShopSets(db())).map((one) => one.id));
    // Asked for by the other's very id too: what is judged by is looked up at home.
    const judged = await both(async () => (await assessContext(db(), [id])).shopSets.length);
    expect(judged).toEqual([1, 0]);
  });

  it("erase what is theirs and leave the other's, also of the same photo", async () => {
    const [a, b] = await both((site) => smallBead(pen(), site.folder, 7));
    expect(a!.sha256).toBe(b!.sha256);
    const stored = (site: Site) => existsSync(path.join(site.folder, "photos/originals", a!.sha256));
    await inSite(two.north, async () => {
      await deleteBead(pen(), a!.id, new Date("2026-01-01T08:00:00Z"));
      await eraseDeletedBeads(pen(), photoPlace(), new Date("2026-11-27T08:00:00Z"));
    });
    expect([stored(two.north), stored(two.south)]).toEqual([false, true]);
    expect(await both(findings)).toEqual([[], []]);
  });

  it("hold up no photo of one another: what one takes in just now, the other may let go", async () => {
    const [, b] = await both((site) => smallBead(pen(), site.folder, 8));
    const there = (site: Site) => photoStore(site.photos).size(b!.sha256, "original");
    const letGo = inSite(two.north, () => holdPhoto(b!.sha256));
    await inSite(two.south, async () => {
      await deleteBead(pen(), b!.id, new Date("2026-01-01T08:00:00Z"));
      await eraseDeletedBeads(pen(), photoPlace(), new Date("2026-11-27T08:00:00Z"));
      await letGoPhoto(db(), photoPlace(), b!.sha256);
    });
    letGo();
    expect(await there(two.south)).toBeNull();
    expect(await there(two.north)).not.toBeNull();
  });

  it("are backed up into their own folders, and their owners name no other", async () => {
    const { south, north } = two;
    const codes = (site: Site, folder: string) =>
      inSite(site, () => chosenIssues(site.folder, folder).map(({ code }) => code));
    expect(codes(north, north.backups)).toEqual([]);
    expect(codes(north, path.join(north.backups, "nights"))).toEqual([]);
    for (const folder of [
      south.backups,
      south.folder,
      two.folder,
      "/tmp",
      `${north.backups}-2`,
      path.dirname(north.backups),
    ])
      expect(codes(north, folder), folder).toEqual(["target-of-others"]);
    const plan = (folder: string) =>
      inSite(north, () => writeNightlyPlan(pen(), { folder, keep: 1, hour: 1 }, new Date()));
    expect((await plan(south.backups)).ok).toBe(false);
    expect((await plan(north.backups)).ok).toBe(true);
  });

  it("are looked after in turn, and one that fails holds up no other", async () => {
    const seen: string[] = [];
    const gone: Site = { ...two.south, name: "gone", database: "postgresql://127.0.0.1:1/none" };
    const within = [gone, two.north].map(
      (site) =>
        <T>(work: () => T) =>
          inSite(site, work),
    );
    await lookAtNights(within, db, () => {
      seen.push(dataDir());
      return dataDir();
    });
    expect(seen).toEqual([two.south.folder, two.north.folder]);
  });

  itDeep("have what is run aside for them told of no other", async () => {
    const isOwn = async () => {
      const { out } = await runAside("head.ts", []);
      const { head } = JSON.parse(out) as { head: { hash: string } };
      return (await db().logEntry.findFirst({ orderBy: { seq: "desc" } }))?.hash === head.hash;
    };
    expect(await both(isOwn)).toEqual([true, true]);
  });

  itDeep("are backed up by themselves", async () => {
    mkdirSync(two.north.backups, { recursive: true });
    const target = path.join(two.north.backups, "now");
    const made = await inSite(two.north, () => backUpAside(dataDir(), [target]));
    expect(made).toMatchObject({ ok: true, said: expect.stringContaining("verified whole") });
    expect(existsSync(path.join(target, "toeline.db"))).toBe(true);
  });
});
