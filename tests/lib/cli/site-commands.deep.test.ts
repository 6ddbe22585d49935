import { spawn } from "node:child_process";
import { cpSync, readdirSync, rmSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { db, openDb } from "@/lib/db";
import { inSite, loadSites, type Site } from "@/lib/sites";
import { smallBead } from "../../setup/small-shop";
import { makeTwoSites, stateOf, type TwoSites } from "../../setup/two-sites";

const root = path.join(import.meta.dirname, "../../..");

/** A command of package.json as somebody at a terminal runs it, with what a server of these sites is told. */
function command(two: TwoSites, name: string, ...args: readonly string[]) {
  return new Promise<{ status: number | null; said: string }>((resolve) => {
    const env = { ...process.env, ...two.env };
    const child = spawn("npm", ["run", "-s", name, "--", ...args], { cwd: root, env });
    let said = "";
    for (const stream of [child.stdout, child.stderr]) stream.on("data", (data) => (said += String(data)));
    child.on("close", (status) => resolve({ status, said }));
  });
}

const titlesOf = async ({ database, folder }: Site): Promise<readonly string[]> => {
  const client = openDb(database, folder);
  try {
    const beads = await client.bead.findMany({ orderBy: { number: "asc" }, select: { title: true } });
    return beads.map(({ title }) => title);
  } finally {
    await client.$disconnect();
  }
};
const named = (two: TwoSites, name: string): Site =>
  loadSites({ ...two.env }).find((one) => one.name === name)!;
const titles = (...numbers: readonly number[]) => numbers.map((number) => `Small ${number}, marked`);

/** Beads of these numbers in a site; nobody is connected afterwards. */
async function fill(two: TwoSites, site: Site, ...numbers: readonly number[]): Promise<void> {
  const before = { ...process.env };
  Object.assign(process.env, two.env);
  await inSite(site, async () => {
    for (const number of numbers) await smallBead({ db: db(), by: "test" }, site.photos, number);
    await db().$disconnect();
  });
  for (const name of Object.keys(two.env))
    if (before[name] === undefined) delete process.env[name];
    else process.env[name] = before[name];
}

describe("commands for one of several sites in folders", () => {
  let two: TwoSites;
  let copy = "";
  beforeAll(async () => {
    const more = { third: { hosts: ["third.localhost"] }, fourth: { hosts: ["fourth.localhost"] } };
    two = await makeTwoSites(more);
    copy = path.join(two.folder, "copy");
    await fill(two, two.north, 1, 2);
    await fill(two, two.south, 3);
  });
  afterAll(() => two?.remove());

  it("are refused where nobody said for which, or for one there is not", async () => {
    for (const [name, ...args] of [["backup", copy], ["restore", copy], ["check-data"]] as const) {
      expect(await command(two, name!, ...args)).toMatchObject({
        status: 2,
        said: expect.stringMatching(/say which one/),
      });
      expect((await command(two, name!, "--site", "east", ...args)).said).toMatch(/There is no site east/);
    }
  });

  it("back up that one alone, bring it back into another that is empty, and leave the rest", async () => {
    const south = await stateOf(two.south);
    const made = await command(two, "backup", "--site", "north", copy);
    expect(made).toMatchObject({ status: 0, said: expect.stringContaining("verified whole (2 photos)") });
    const north = await stateOf(two.north);
    const back = await command(two, "restore", copy, "--site=third");
    expect(back).toMatchObject({ status: 0, said: expect.stringContaining("2 photos") });
    expect(await titlesOf(named(two, "third"))).toEqual(titles(1, 2));
    expect((await command(two, "verify", "--site", "third")).status).toBe(0);
    // Into one that has beads it is not brought back.
    expect((await command(two, "restore", copy, "--site", "south")).status).toBe(1);
    expect(await stateOf(two.south)).toEqual(south);
    expect(await stateOf(two.north)).toEqual(north);
    expect(readdirSync(path.join(two.folder, "sites")).sort()).toEqual(["north", "south", "third"]);
  });

  it("look through that one alone", async () => {
    expect(await command(two, "check-data", "--site", "south")).toMatchObject({ status: 0 });
    rmSync(path.join(two.south.folder, "photos/originals"), { recursive: true });
    const found = await command(two, "check-data", "--site", "south");
    expect(found).toMatchObject({ status: 1, said: expect.stringMatching(/bead 1|photo/i) });
    expect(await command(two, "check-data", "--site", "north")).toMatchObject({ status: 0 });
  });

  it("move an installation of one into it", async () => {
    const alone = path.join(two.folder, "alone");
    cpSync(two.north.folder, alone, { recursive: true });
    const moved = await command(two, "move", alone, "--site", "fourth");
    expect(moved).toMatchObject({ status: 0, said: expect.stringContaining("2 photos") });
    expect(await titlesOf(named(two, "fourth"))).toEqual(titles(1, 2));
    expect((await command(two, "verify", "--site", "fourth")).status).toBe(0);
    expect((await command(two, "move", alone, "--site", "fourth")).said).toMatch(/rows already/);
  });
});

describe("commands for one of several sites on a PostgreSQL and in a bucket", () => {
  let two: TwoSites;
  beforeAll(async () => {
    two = await makeTwoSites({}, "servers");
  });
  afterAll(() => two?.remove());

  it("move an installation of one there, into its own database and its own part of the bucket", async () => {
    const one = await makeTwoSites();
    await fill(one, one.north, 4, 5, 6);
    const south = await stateOf(two.south);
    const moved = await command(two, "move", one.north.folder, "--site", "north");
    expect(moved).toMatchObject({ status: 0, said: expect.stringContaining("3 photos") });
    expect(await titlesOf(two.north)).toEqual(titles(4, 5, 6));
    expect(await stateOf(two.south)).toEqual(south);
    const places = [...(two.bucket?.objects.keys() ?? [])];
    expect(places.filter((place) => place.startsWith("/works/north/"))).toHaveLength(places.length);
    expect(places.length).toBeGreaterThan(3 * 4);
    for (const name of ["north", "south"])
      expect((await command(two, "verify", "--site", name)).status, name).toBe(0);
    await one.remove();
  });

  it("say of what lies elsewhere how it is looked after, and touch nothing", async () => {
    const before = await stateOf(two.north);
    for (const args of [["backup", path.join(two.folder, "copy")], ["check-data"]] as const) {
      const [name, ...rest] = args;
      expect(await command(two, name, "--site", "north", ...rest)).toMatchObject({ status: 2 });
    }
    expect(await stateOf(two.north)).toEqual(before);
    // One photo fewer in its part of the bucket is found for that site, and for no other.
    const gone = [...(two.bucket?.objects.keys() ?? [])].find((place) => place.includes("originals"))!;
    two.bucket?.objects.delete(gone);
    expect((await command(two, "verify", "--site", "north")).status).toBe(1);
    expect((await command(two, "verify", "--site", "south")).status).toBe(0);
  });
});
