import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hostName, siteOfRequest } from "@/lib/sites/host.mjs";
import { readSites } from "@/lib/sites/sites.mjs";

const around = { data: "/srv", backups: "/mnt", database: null, photos: null };
const sites = readSites(
  JSON.stringify({ north: { hosts: ["north.example", "n.example"] }, south: { hosts: ["south.example"] } }),
  around,
);
interface Asked {
  readonly host?: string | readonly string[];
  readonly forwarded?: string;
  readonly url?: string;
  readonly trusts?: boolean;
}
function siteOf({ host = [], forwarded, url = "/", trusts = false }: Asked): string | null {
  const hosts = [host].flat().flatMap((one) => ["Host", one]);
  const rawHeaders = [...hosts, ...(forwarded === undefined ? [] : ["X-Forwarded-Host", forwarded])];
  return siteOfRequest(sites, { url, rawHeaders }, trusts)?.site.name ?? null;
}

describe("whose a request is", () => {
  it("is told by the name alone: no port, no capitals, no dot at the end", () => {
    for (const host of ["north.example", "NORTH.Example:3000", "north.example.", "n.example.:80"])
      expect(siteOf({ host }), host).toBe("north");
    expect(siteOf({ host: "south.example" })).toBe("south");
  });

  it("is nobody's where the name is none of ours, or is no name", () => {
    const others = ["", "east.example", "xnorth.example", "north.example.evil.example", "127.0.0.1:3000"];
    const odd = [
      " north.example",
      "north.example,south.example",
      "a@north.example",
      "north.example/..",
      "north_.example",
    ];
    const more = [
      "north.example..",
      "north.example:",
      "north.example:123456",
      "[::1]",
      "north.example\u0000",
      "ｎorth.example",
    ];
    for (const host of [...others, ...odd, ...more]) expect(siteOf({ host }), host).toBeNull();
    expect(siteOf({})).toBeNull();
  });

  it("is nobody's where a request says it twice", () => {
    expect(siteOf({ host: ["north.example", "south.example"] })).toBeNull();
    expect(siteOf({ host: ["north.example", "north.example"] })).toBeNull();
    expect(siteOf({ host: "north.example", url: "http://south.example/" })).toBeNull();
    expect(siteOf({ host: "north.example", url: "*" })).toBeNull();
  });

  it("believes nobody in front unless a proxy stands there", () => {
    expect(siteOf({ host: "north.example", forwarded: "south.example" })).toBe("north");
    expect(siteOf({ host: "127.0.0.1:3000", forwarded: "south.example" })).toBeNull();
    const trusts = true;
    expect(siteOf({ trusts, host: "127.0.0.1:3000", forwarded: "south.example" })).toBe("south");
    expect(siteOf({ trusts, host: "127.0.0.1:3000", forwarded: "north.example, south.example" })).toBe(
      "south",
    );
    expect(siteOf({ trusts, host: "south.example", forwarded: "south.example" })).toBe("south");
    // What somebody wrote past the proxy does not lead to another site than the proxy's own Host.
    expect(siteOf({ trusts, host: "north.example", forwarded: "south.example" })).toBeNull();
    expect(siteOf({ trusts, host: "north.example", forwarded: "east.example" })).toBeNull();
    expect(siteOf({ trusts, host: "north.example" })).toBe("north");
  });

  it("gives a site to no other text than its names, however close", () => {
    const near = fc.tuple(
      fc.constantFrom("north.example", "n.example"),
      fc.nat(14),
      fc.string({ maxLength: 2 }),
    );
    const own = /^(?:north|n)\.example\.?(?::\d{1,5})?$/i;
    const south = /^south\.example\.?(?::\d{1,5})?$/i;
    fc.assert(
      fc.property(near, ([name, at, put]) => {
        const host = name.slice(0, at) + put + name.slice(at);
        expect(siteOf({ host })).toBe(own.test(host) ? "north" : south.test(host) ? "south" : null);
      }),
      { seed: 15, numRuns: 400 },
    );
  });

  it("compares names in one form", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 20 }), (text) => {
        const name = hostName(text);
        if (name !== null) expect(hostName(name)).toBe(name);
      }),
      { seed: 15, numRuns: 200 },
    );
  });
});
