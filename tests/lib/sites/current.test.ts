import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { fairTurns } from "@/lib/base";
import { dataDir, databaseUrl, db, photoPlace } from "@/lib/db";
import { currentSite, inSite, loadSites, ofSite, type Site } from "@/lib/sites";
import { NoSite } from "@/lib/sites/current.mjs";

let folder = "";
let sites: readonly Site[] = [];
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), "toeline-sites-"));
  const file = path.join(folder, "sites.json");
  writeFileSync(file, JSON.stringify({ north: { hosts: ["n.example"] }, south: { hosts: ["s.example"] } }));
  vi.stubEnv("TOELINE_SITES", file);
  vi.stubEnv("TOELINE_DATA", folder);
  vi.stubEnv("DATABASE_URL", "");
  vi.stubEnv("TOELINE_PHOTOS", "");
  sites = loadSites();
});
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});
const [north, south] = [() => sites[0]!, () => sites[1]!];
const later = () => new Promise((resolve) => setTimeout(resolve, 1));

describe("the site that is worked for", () => {
  it("is asked for in vain where several are served and none is known", () => {
    for (const ask of [currentSite, db, dataDir, databaseUrl, photoPlace, () => ofSite("key")])
      expect(ask).toThrow(NoSite);
  });

  it("says where everything lies, and stays through all that follows", async () => {
    const seen = async () => {
      await later();
      return [currentSite()?.name, dataDir(), photoPlace(), databaseUrl(), ofSite("key")];
    };
    const [one, other] = await Promise.all([inSite(north(), seen), inSite(south(), seen)]);
    expect(one).toEqual(["north", north().folder, north().folder, north().database, "north key"]);
    expect(other).toEqual(["south", south().folder, south().folder, south().database, "south key"]);
    expect(currentSite).toThrow(NoSite);
  });

  it("has a database client of its own, and the same each time", () => {
    const [a, b] = [inSite(north(), db), inSite(south(), db)];
    expect(a).not.toBe(b);
    expect(inSite(north(), db)).toBe(a);
  });

  it("is whoever's the work is, also where another's end lets it begin", async () => {
    const turns = fairTurns({ atOnce: 1, mostWaiting: 9 });
    const names = sites
      .flatMap((site) => [site, site])
      .map((site) =>
        inSite(site, () =>
          turns.run(site.name, async () => {
            await later();
            return [site.name, currentSite()?.name];
          }),
        ),
      );
    for (const [asked, got] of await Promise.all(names)) expect(got).toBe(asked);
  });

  it("is nobody's concern where there is one installation", () => {
    vi.stubEnv("TOELINE_SITES", "");
    expect(currentSite()).toBeNull();
    expect(dataDir()).toBe(folder);
    vi.stubEnv("TOELINE_SITES", path.join(folder, "sites.json"));
  });
});
