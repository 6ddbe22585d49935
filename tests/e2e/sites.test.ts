import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { makeToken } from "@/lib/account";
import { db } from "@/lib/db";
import { scopes } from "@/lib/people";
import { inSite } from "@/lib/sites";
import { ownerOf, placesOf, type Owner } from "../setup/furnished-site";
import { inDepth, itDeep } from "../setup/in-depth";
import {
  askedOfNorth,
  makeTwoSites,
  marksIn,
  marksOf,
  siteKinds,
  stateOf,
  type SiteKind,
  type TwoSites,
} from "../setup/two-sites";
import { startSites, type SitesServer } from "./support/sites";

const root = path.join(import.meta.dirname, "../..");
const [NORTH, SOUTH] = ["north.localhost", "south.localhost"];

describe.each(inDepth<readonly SiteKind[]>(["folders"], siteKinds))("in %s", (kind) => {
  let two: TwoSites;
  let server: SitesServer;
  let [north, south] = [{} as Owner, {} as Owner];
  let places: Record<string, string> = {};

  beforeAll(async () => {
    two = await makeTwoSites({ broken: { hosts: ["broken.localhost"] } }, kind);
    for (const [name, value] of Object.entries(two.env)) vi.stubEnv(name, value);
    north = await inSite(two.north, () => ownerOf("owner"));
    south = await inSite(two.south, () => ownerOf("owner"));
    places = await inSite(two.north, () => placesOf(two.north));
    // Somebody else holds it: no server may open it.
    const broken = path.join(two.folder, "sites/broken");
    mkdirSync(broken, { recursive: true });
    writeFileSync(
      path.join(broken, "serving.lock"),
      "no database at all, but long enough to be taken for one".repeat(40),
    );
    // A database that is not there is found by whoever sets up; the folder that is held, by the server itself.
    const shut = { TOELINE_SHUT: JSON.stringify({ broken: "The PostgreSQL cannot be used." }) };
    server = await startSites({ ...two.env, ...(kind === "servers" && shut) });
  });
  afterAll(async () => {
    await server?.stop();
    for (const site of [two.north, two.south]) await inSite(site, () => db().$disconnect());
    vi.unstubAllEnvs();
    await two.remove();
  });

  const byCookie = ({ cookie }: Owner) => ({ cookie });
  const byToken = ({ token }: Owner) => ({ authorization: `Bearer ${token}` });

  /** Every page there is, with what one site has in the places of its address. */
  function pages(): readonly string[] {
    return readdirSync(path.join(root, "app"), { recursive: true, encoding: "utf8" })
      .filter((file) => path.basename(file) === "page.tsx")
      .map((file) => `/${path.dirname(file)}`.replace(/^\/\.$/, "/"))
      .map((at) => at.replace(/\[(\w+)\]/g, (_, name: string) => places[name] ?? `no-${name}`))
      .sort();
  }
  const lists = ["/", "/people", "/jobs", "/groups", "/log", "/keys", "/criteria", "/students"];
  const tried = () => pages().filter((at) => inDepth(at.includes("/bead") || lists.includes(at), true));

  async function marksShown(
    host: string,
    at: string,
    headers: Record<string, string>,
    marks: ReadonlySet<string>,
  ) {
    const { text } = await server.ask(host, at, { headers });
    return marksIn(text, marks, at);
  }

  describe("several sites on one server", () => {
    it("show nothing of one another on any page, whoever looks", async () => {
      const marks = await marksOf(two.north, two.south);
      const found: string[] = [];
      const first = two.bucket?.asked.length ?? 0;
      const all = tried();
      const lookers = { stranger: byCookie(north), owner: byCookie(south), ...inDepth({}, { nobody: {} }) };
      for (const [who, headers] of Object.entries(lookers))
        for (const at of all) {
          const shown = await marksShown(SOUTH, at, headers, marks);
          if (shown.length > 0) found.push(`${who} ${at}: ${shown.join(" ")}`);
        }
      expect(found).toEqual([]);
      expect(askedOfNorth(two, first)).toEqual([]);
      expect(pages().length).toBeGreaterThan(50);
      // The same pages at home show what was looked for.
      const home: string[] = [];
      for (const at of lists) {
        const { text } = await server.ask(NORTH, at, { headers: byCookie(north) });
        if (marksIn(text, marks, "").length > 0) home.push(at);
      }
      expect(home).toEqual(expect.arrayContaining(["/", "/people", "/jobs", "/groups", "/log", "/keys"]));
    });

    it("do nothing for one another, whatever action is sent to which", async () => {
      const manifest = JSON.parse(
        readFileSync(path.join(root, ".next/server/server-reference-manifest.json"), "utf8"),
      ) as { node: Record<string, unknown> };
      const actions = Object.keys(manifest.node).sort();
      expect(actions.length).toBeGreaterThan(80);
      const marks = await marksOf(two.north, two.south);
      const before = await stateOf(two.north);
      const ids = ["beadId", "handInId", "personId", "jobId", "inspectionId", "exerciseId", "groupId"].map(
        (name) => places[name],
      );
      const found: string[] = [];
      for (const id of inDepth(ids.slice(0, 1), ids)) {
        // One for each round: a token that is used too often is answered by that alone.
        const token = await inSite(two.south, () =>
          makeToken(db(), south.userId, { name: "round", scopes, days: 1 }),
        );
        if (!token.ok) throw new Error("no token");
        for (const action of actions.filter((_, i) => inDepth(i % 10 === 0, true)))
          for (const shown of [byCookie(north), { authorization: `Bearer ${token.value}` }]) {
            const kind = { "next-action": action, "content-type": "text/plain;charset=UTF-8" };
            const headers = { ...shown, ...kind, origin: `http://${SOUTH}` };
            const body = JSON.stringify([id, 1, {}]);
            const { text } = await server.ask(SOUTH, "/sign-in", { method: "POST", headers, body });
            const leaked = marksIn(text, marks, id ?? "");
            if (leaked.length > 0) found.push(`${action}: ${leaked.join(" ")}`);
          }
      }
      expect(found).toEqual([]);
      expect(await stateOf(two.north)).toEqual(before);
    });

    it("count by themselves, also where both write at once", async () => {
      const make = async (host: string, owner: Owner): Promise<number> => {
        const headers = { ...byToken(owner), "content-type": "application/json" };
        const { text } = await server.ask(host, "/api/beads", { method: "POST", headers, body: "{}" });
        return (JSON.parse(text) as { number: number }).number;
      };
      const last = async (site: typeof two.north) =>
        (await inSite(site, () => db().bead.aggregate({ _max: { number: true } })))._max.number ?? 0;
      const [inNorth, inSouth] = [await last(two.north), await last(two.south)];
      const made = await Promise.all(
        Array.from({ length: 12 }, () => [make(NORTH, north), make(SOUTH, south)]).flat(),
      );
      const numbers = (of: number) => made.filter((_, i) => i % 2 === of).sort((a, b) => a - b);
      expect(numbers(0)).toEqual(Array.from({ length: 12 }, (_, i) => inNorth + i + 1));
      expect(numbers(1)).toEqual(Array.from({ length: 12 }, (_, i) => inSouth + i + 1));
    });

    it("are told by their names alone: any other gets one sentence", async () => {
      const first = (...lines: readonly string[]) => server.sendHead(...lines, "Connection: close");
      const at = "GET /sign-in HTTP/1.1";
      for (const host of [NORTH, "NORTH.localhost", "north.localhost.", `north.localhost:${server.port}`])
        expect(await first(at, `Host: ${host}`), host).toContain(" 200 ");
      for (const host of [
        "east.localhost",
        "127.0.0.1",
        "xnorth.localhost",
        "north.localhost,south.localhost",
      ])
        expect(await first(at, `Host: ${host}`), host).toContain(" 421 ");
      expect(await first(at, `Host: ${NORTH}`, `Host: ${SOUTH}`)).toContain(" 421 ");
      expect(await first(`GET http://${SOUTH}/sign-in HTTP/1.1`, `Host: ${NORTH}`)).toContain(" 421 ");
      for (const path of ["/", "/api/openapi.json", "/icons/icon-192.png", "/_next/static/none.js"]) {
        const { status, text } = await server.ask("east.localhost", path);
        expect([status, text]).toEqual([421, "No site of this name is served here.\n"]);
      }
      // Nobody is led elsewhere by what stands in front, nor by what we say to ourselves.
      for (const more of [{ "x-forwarded-host": SOUTH }, { "x-toeline-inside": `guess ${SOUTH}` }]) {
        const { text } = await server.ask(NORTH, "/api/beads", { headers: { ...byToken(south), ...more } });
        expect(text).toContain("sign-in-first");
        expect((await server.ask("127.0.0.1", "/api/beads", { headers: more })).status).toBe(421);
      }
    });

    it("keep one another's pictures out of the framework's own copies", async () => {
      const at = `/_next/image?w=64&q=75&url=${encodeURIComponent(`/api/photos/${places["sha256"]}/small`)}`;
      for (const [host, owner] of [
        [NORTH, north],
        [SOUTH, south],
      ] as const)
        expect((await server.ask(host, at, { headers: byCookie(owner) })).status).toBe(404);
    });

    it("go on while one cannot be opened, and say so to this machine alone", async () => {
      expect((await server.ask("broken.localhost", "/")).status).toBe(503);
      const health = await server.ask("127.0.0.1", "/api/health");
      const { ok, sites } = JSON.parse(health.text) as { ok: boolean; sites: Record<string, string> };
      expect([ok, sites["north"], sites["south"]]).toEqual([false, "open", "open"]);
      expect(sites["broken"]).toContain("cannot be used");
      for (const headers of [{ "x-forwarded-for": "10.0.0.1" }, { forwarded: "for=10.0.0.1" }])
        expect((await server.ask("127.0.0.1", "/api/health", { headers })).status).toBe(421);
      const own = await server.ask(NORTH, "/api/health");
      expect(own.status).toBe(200);
      expect(own.text).not.toMatch(/south|broken/);
    });

    itDeep("make what is made beside the pages each for themselves, also side by side", async () => {
      const marks = await marksOf(two.north, two.south);
      const of = async (host: string, owner: Owner, at: string) => {
        const { status, text } = await server.ask(host, at, { headers: byToken(owner) });
        return [status, marksIn(text, marks, "").length > 0];
      };
      for (const at of ["/api/export/beads.json", "/api/export/marks.csv", "/api/export/archive.zip"]) {
        const both = await Promise.all([of(NORTH, north, at), of(SOUTH, south, at)]);
        expect(both, at).toEqual([
          [200, !at.endsWith("marks.csv")],
          [200, false],
        ]);
      }
    });

    itDeep("draw papers beside the pages each from their own beads, also side by side", async () => {
      const [own] = await inSite(two.south, () => db().bead.findMany({ take: 1, select: { id: true } }));
      const sheet = async (host: string, owner: Owner, id = "") => {
        const { status, text } = await server.ask(host, `/api/beads/${id}/sheet.pdf`, {
          headers: byToken(owner),
        });
        return [status, text.startsWith("%PDF")];
      };
      const asked = [sheet(NORTH, north, places["beadId"]), sheet(SOUTH, south, own?.id)];
      expect(await Promise.all([...asked, sheet(SOUTH, south, places["beadId"])])).toEqual([
        [200, true],
        [200, true],
        [404, false],
      ]);
    });

    itDeep("outlive somebody who breaks off", async () => {
      await server.breakOff(NORTH, "/api/export/archive.zip", byToken(north));
      for (const [host, owner] of [
        [NORTH, north],
        [SOUTH, south],
      ] as const)
        expect((await server.ask(host, "/api/beads", { headers: byToken(owner) })).status).toBe(200);
    });
  });
});
