import { describe, expect, it } from "vitest";
import { isOwnWrite, pagePolicy, sameHost } from "@/app/_door/page-policy";
import { refuseForeign } from "@/app/_door/same-site";
import config from "@/next.config";

const rules = (dev: boolean) =>
  new Map(
    pagePolicy("abc", dev)
      .split("; ")
      .map((rule) => [rule.split(" ")[0]!, rule.split(" ").slice(1)]),
  );

describe("what a page may load, and who may show it", () => {
  it("is our own, with this answer's nonce; nothing is inline but attributes that style; nobody frames it", () => {
    const policy = rules(false);
    expect(policy.get("default-src")).toEqual(["'self'"]);
    expect(policy.get("frame-ancestors")).toEqual(["'none'"]);
    expect(policy.get("object-src")).toEqual(["'none'"]);
    expect(policy.get("base-uri")).toEqual(["'none'"]);
    for (const name of ["script-src", "style-src", "style-src-elem"])
      expect(policy.get(name)).toContain("'nonce-abc'");
    for (const [name, sources] of policy) {
      expect(sources, name).not.toContain("'unsafe-eval'");
      if (name !== "style-src-attr") expect(sources, name).not.toContain("'unsafe-inline'");
      for (const source of sources) expect(source, name).not.toMatch(/^(\*|https?:|\/\/)/);
    }
  });

  it("is said on what is no page too, with where its address goes and what it is", async () => {
    const said = new Map<string, string>();
    for (const { source, headers } of (await config.headers?.()) ?? [])
      if (source === "/:path*") for (const { key, value } of headers) said.set(key, value);
    expect(said.get("Content-Security-Policy")).toBe("frame-ancestors 'none'");
    expect(said.get("X-Frame-Options")).toBe("DENY");
    expect(said.get("X-Content-Type-Options")).toBe("nosniff");
    expect(said.get("Referrer-Policy")).toBe("same-origin");
  });
});

describe("a write to a page", () => {
  const from = (origin: string | null) =>
    new Headers({ host: "localhost:3000", ...(origin === null ? {} : { origin }) });

  it("comes from one of ours, whoever is signed in or nobody", () => {
    expect(isOwnWrite("POST", from("http://localhost:3000"))).toBe(true);
    for (const origin of [null, "http://localhost:3001", "http://elsewhere.example", "null", "nonsense"])
      expect(isOwnWrite("POST", from(origin)), String(origin)).toBe(false);
    expect(isOwnWrite("GET", from(null))).toBe(true);
    expect(sameHost("http://localhost:3000", null)).toBe(false);
  });

  it("to a door for machines is refused where a browser says another site, or says none", () => {
    const asked = (headers: Record<string, string>) =>
      refuseForeign(
        new Request("http://localhost:3000/api/beads", {
          method: "POST",
          headers: { host: "localhost:3000", ...headers },
        }),
      )?.status ?? null;
    expect(asked({})).toBeNull();
    expect(asked({ origin: "http://localhost:3000", "sec-fetch-site": "same-origin" })).toBeNull();
    expect(asked({ origin: "http://elsewhere.example" })).toBe(403);
    expect(asked({ "sec-fetch-site": "same-origin" })).toBe(403);
    expect(asked({ origin: "http://localhost:3000", "sec-fetch-site": "cross-site" })).toBe(403);
    expect(asked({ host: "elsewhere.example" })).toBe(403);
  });
});
