import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { envOfSite } from "@/lib/sites";
import { patterns, readSites, SitesError } from "@/lib/sites/sites.mjs";

const around = { data: "/srv/toeline", backups: "/mnt/copies", database: null, photos: null };
const read = (file: unknown, more: object = {}) => readSites(JSON.stringify(file), { ...around, ...more });
const two = { north: { hosts: ["North.Works.example."] }, south: { hosts: ["south.works.example"] } };

describe("the file of sites", () => {
  it("gives each site a place of its own", () => {
    expect(read(two)).toEqual([
      {
        ...{ name: "north", origin: null, hosts: ["north.works.example"], backups: "/mnt/copies/north" },
        ...{ folder: "/srv/toeline/sites/north", photos: "/srv/toeline/sites/north" },
        database: "file:/srv/toeline/sites/north/toeline.db",
      },
      {
        ...{ name: "south", origin: null, hosts: ["south.works.example"], backups: "/mnt/copies/south" },
        ...{ folder: "/srv/toeline/sites/south", photos: "/srv/toeline/sites/south" },
        database: "file:/srv/toeline/sites/south/toeline.db",
      },
    ]);
    const asked = patterns({
      DATABASE_URL: "postgresql://shop:pw@db:5432/toeline_{site}?sslmode=require",
      TOELINE_PHOTOS: "s3://pictures/{site}",
    });
    expect(read(two, asked)[1]).toMatchObject({
      database: "postgresql://shop:pw@db:5432/toeline_south?sslmode=require",
      photos: "s3://pictures/south",
    });
  });

  it("lets no two sites share a place or a name to be reached by, whatever they are called", () => {
    const name = fc.stringMatching(/^[a-z][a-z0-9-]{0,4}[a-z0-9]$/);
    const shared = { database: "postgresql://db/{site}", photos: "s3://b/{site}/p" };
    fc.assert(
      fc.property(fc.uniqueArray(name, { minLength: 2, maxLength: 6 }), (names) => {
        const file = Object.fromEntries(names.map((one) => [one, { hosts: [`${one}.example`] }]));
        for (const sites of [read(file), read(file, shared)])
          for (const of of ["folder", "database", "photos", "backups"] as const) {
            const places = sites.map((site) => `${site[of]}/`);
            expect(new Set(places).size).toBe(names.length);
            // Nor does one lie inside another.
            for (const one of places)
              for (const other of places) expect(one !== other && one.startsWith(other)).toBe(false);
          }
      }),
      { seed: 15, numRuns: 25 },
    );
  });

  it("is refused in a sentence where it is not clear", () => {
    const wrong: readonly (readonly [unknown, RegExp])[] = [
      [{}, /says no site/],
      [[], /says no site/],
      [{ North: { hosts: ["n.example"] } }, /no name of a site/],
      [{ "../north": { hosts: ["n.example"] } }, /no name of a site/],
      [{ north: [] }, /write \{ "hosts"/],
      [{ north: {} }, /needs "hosts" or "origin"/],
      [{ north: { hosts: "n.example" } }, /is a list/],
      [{ north: { hosts: ["http://n.example"] } }, /no host name/],
      [{ north: { hosts: ["n.example:3000"] } }, /no host name/],
      [{ north: { hosts: ["localhost"] } }, /this machine itself/],
      [{ north: { hosts: ["n.example"], folder: "/etc" } }, /there is no "folder"/],
      [{ north: { origin: "https://n.example/below" } }, /is an address like/],
      [{ north: { hosts: ["n.example"] }, south: { hosts: ["N.EXAMPLE"] } }, /named by two sites/],
      [{ north: { origin: "https://n.example" }, south: { hosts: ["s.example"] } }, /at each, or at none/],
    ];
    for (const [file, sentence] of wrong) {
      expect(() => read(file), JSON.stringify(file)).toThrow(SitesError);
      expect(() => read(file), JSON.stringify(file)).toThrow(sentence);
    }
    expect(() => readSites("{", around)).toThrow(/not JSON/);
  });

  it("asks that PostgreSQL and bucket tell the sites apart, and each its own address", () => {
    expect(() => patterns({ DATABASE_URL: "postgresql://db/toeline" })).toThrow(/\{site\}/);
    // A user of one's own is not yet a database of one's own.
    expect(() => patterns({ DATABASE_URL: "postgresql://{site}:pw@db/toeline" })).toThrow(/\{site\}/);
    expect(() => patterns({ DATABASE_URL: "postgresql://db/toeline?schema={site}" })).toThrow(/\{site\}/);
    expect(() => patterns({ TOELINE_PHOTOS: "s3://bucket" })).toThrow(/between slashes/);
    expect(() => patterns({ TOELINE_PHOTOS: "s3://bucket/p-{site}" })).toThrow(/between slashes/);
    expect(() => patterns({ TOELINE_ORIGIN: "https://one.example" })).toThrow(/TOELINE_ORIGIN/);
  });

  it("lets a process of its own know one site and no other", () => {
    const [north] = read(two);
    expect(envOfSite(north!)).toEqual({
      ...{ TOELINE_SITES: "", TOELINE_DATA: "/srv/toeline/sites/north" },
      ...{ DATABASE_URL: "", TOELINE_PHOTOS: "", TOELINE_ORIGIN: "" },
    });
  });
});
