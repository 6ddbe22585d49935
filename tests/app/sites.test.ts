import { readdirSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { db } from "@/lib/db";
import { inSite, type Site } from "@/lib/sites";
import { ownerOf, placesOf, type Owner } from "../setup/furnished-site";
import { inDepth } from "../setup/in-depth";
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

const asked = vi.hoisted(() => ({ headers: new Headers() }));
vi.mock("next/headers", () => ({ headers: async () => asked.headers, cookies: async () => new Map() }));
vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));

const root = path.join(import.meta.dirname, "../..");

describe.each(inDepth<readonly SiteKind[]>(["folders"], siteKinds))("in %s", (kind) => {
  let two: TwoSites;
  let [north, south] = [{} as Owner, {} as Owner];
  let places: Record<string, string> = {};

  beforeAll(async () => {
    two = await makeTwoSites({}, kind);
    for (const [name, value] of Object.entries(two.env)) vi.stubEnv(name, value);
    vi.stubEnv("TOELINE_ACCOUNTS", "required");
    vi.spyOn(console, "warn").mockImplementation(() => undefined);
    south = await inSite(two.south, () => ownerOf("south"));
    north = await inSite(two.north, () => ownerOf("north"));
    places = await inSite(two.north, () => placesOf(two.north));
  });
  afterAll(async () => {
    for (const site of [two.north, two.south]) await inSite(site, () => db().$disconnect());
    vi.unstubAllEnvs();
    await two.remove();
  });

  type Handler = (
    request: Request,
    context: { params: Promise<Record<string, string>> },
  ) => Response | Promise<Response>;
  interface Door {
    readonly at: string;
    readonly method: string;
    readonly handler: Handler;
  }

  /** Every method of every route file there is. */
  async function doors(): Promise<readonly Door[]> {
    const files = readdirSync(path.join(root, "app"), { recursive: true, encoding: "utf8" });
    const found: Door[] = [];
    for (const file of files.filter((one) => path.basename(one) === "route.ts").sort()) {
      const route = (await import(/* @vite-ignore */ path.join(root, "app", file))) as Record<
        string,
        Handler
      >;
      for (const method of Object.keys(route).filter((name) => /^[A-Z]+$/.test(name)))
        found.push({ at: `/${path.dirname(file)}`, method, handler: route[method]! });
    }
    return found;
  }

  const queries: Readonly<Record<string, string>> = { "/api/inspections/[inspectionId]/pdf": "?draft" };

  /** Asks as the server would: with the site of its host, whatever else was sent. */
  async function ask(site: Site, { at, method, handler }: Door, credentials: Record<string, string>) {
    const filled = at.replace(/\[(\w+)\]/g, (_, name: string) => places[name] ?? `no-${name}`);
    const host = site.hosts[0]!;
    const headers = { host, "content-type": "application/json", ...credentials };
    const body = method === "GET" || method === "HEAD" ? {} : { body: JSON.stringify(places) };
    const request = new Request(`http://${host}${filled}${queries[at] ?? ""}`, { method, headers, ...body });
    const params = Object.fromEntries(
      [...at.matchAll(/\[(\w+)\]/g)].map(([, name = ""]) => [name, places[name] ?? `no-${name}`]),
    );
    asked.headers = request.headers;
    return inSite(site, async () => {
      const answer = await handler(request, { params: Promise.resolve(params) });
      const text = Buffer.from(await answer.arrayBuffer()).toString("latin1");
      const said = [...answer.headers].map((pair) => pair.join(": ")).join("\n");
      return {
        status: answer.status,
        text: `${said}\n${text}`,
        sent: `${filled} ${"body" in body ? body.body : ""}`,
      };
    });
  }

  // A check of an archive is a process of its own; the PDF of a strip is drawn for a second.
  const dear = new Set(["/api/check", "/strip/strip.pdf", "/plan/sheet.pdf"]);
  const affordable = ({ at }: Door) => inDepth(!dear.has(at), true);

  type Shown = Readonly<Record<string, Record<string, string>>>;
  const credentials = (): Shown => {
    const usual: Shown = {
      "a token of the other site": { authorization: `Bearer ${north.token}` },
      "the owner's browser of this site": { cookie: south.cookie },
    };
    const rarer: Shown = {
      "a session of the other site": { cookie: north.cookie },
      "the owner of this site": { authorization: `Bearer ${south.token}` },
      nobody: {},
    };
    return inDepth(usual, { ...usual, ...rarer });
  };

  describe("a site", () => {
    it("answers with nothing of another, whoever asks for it, at every method of every route", async () => {
      const marks = await marksOf(two.north, two.south);
      expect(marks.size).toBeGreaterThan(100);
      const before = await stateOf(two.north);
      const first = two.bucket?.asked.length ?? 0;
      const all = (await doors()).filter(affordable);
      const found: string[] = [];
      for (const [who, shown] of Object.entries(credentials()))
        for (const door of all) {
          const { status, text, sent } = await ask(two.south, door, shown);
          const leaked = marksIn(text, marks, sent);
          if (leaked.length > 0)
            found.push(`${who}, ${door.method} ${door.at} ${status}: ${leaked.join(" ")}`);
        }
      expect(found).toEqual([]);
      expect(all.length).toBeGreaterThan(60);
      expect(askedOfNorth(two, first)).toEqual([]);
      expect(await stateOf(two.north)).toEqual(before);
    });

    it("gives cookies to the name they came from alone", () => {
      expect(north.cookies.length).toBeGreaterThan(0);
      for (const one of [...north.cookies, ...south.cookies]) expect(one).not.toMatch(/domain=/i);
    });

    it("lets nobody in by a token or a session of another", async () => {
      const entered: string[] = [];
      const open = /^\/(icons|offline|sw\.js|reader|strip|plan|hand-in|api\/(check|health|openapi|hand-in))/;
      const asksWho = (await doors()).filter(({ at }) => !open.test(at));
      for (const shown of [{ authorization: `Bearer ${north.token}` }, { cookie: north.cookie }])
        for (const door of asksWho) {
          const { status } = await ask(two.south, door, shown);
          if (![401, 403, 404].includes(status)) entered.push(`${door.method} ${door.at} ${status}`);
        }
      expect(entered).toEqual([]);
      expect(asksWho.length).toBeGreaterThan(50);
    });

    it("answers with what is its own: the same questions, asked at home, show what was looked for", async () => {
      const marks = await marksOf(two.north, two.south);
      const shows: string[] = [];
      for (const door of (await doors()).filter(
        ({ method, at }) => method === "GET" && affordable({ at } as Door),
      )) {
        if (/pdf$/.test(door.at) && inDepth(true, false)) continue;
        const { text, status } = await ask(two.north, door, { authorization: `Bearer ${north.token}` });
        if (status === 200 && marksIn(text, marks, "").length > 0) shows.push(door.at);
      }
      expect(shows.length).toBeGreaterThan(20);
      for (const at of [
        "/api/beads/[beadId]",
        "/api/jobs",
        "/api/log",
        "/api/groups",
        "/api/export/beads.json",
      ])
        expect(shows).toContain(at);
    });
  });
});
