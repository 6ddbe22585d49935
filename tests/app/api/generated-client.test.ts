import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { openApiDocument } from "@/app/api/openapi.json/document";
import { attachBead, getJob } from "@/lib/jobs";
import { scopes, type Scope } from "@/lib/people";
import { listShopSets } from "@/lib/shop";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth, itDeep } from "../../setup/in-depth";
import { ask, methodsThere, type ApiDocument, type Described } from "./ask";
import { generateClient } from "./generated";
import { furnish, personWith } from "./shop";

const fresh = useFreshDb();
const store = vi.hoisted(() => ({ db: null as unknown }));
vi.mock("next/headers", () => ({ headers: async () => new Headers(), cookies: async () => new Map() }));
vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));
vi.mock("@/lib/db", async (original) => ({ ...(await original<object>()), db: () => store.db }));

/** The document as a client gets it. */
const served = () => JSON.parse(JSON.stringify(openApiDocument())) as ApiDocument;
const document = served();
let places: Record<string, string> = {};
let [owner, welder] = [
  {} as Awaited<ReturnType<typeof personWith>>,
  {} as Awaited<ReturnType<typeof personWith>>,
];

beforeAll(async () => {
  const { db, pen, folder } = fresh();
  store.db = db;
  vi.stubEnv("TOELINE_DATA", folder);
  vi.stubEnv("TOELINE_ACCOUNTS", "required");
  owner = await personWith(pen, "owner", "orla");
  welder = await personWith(pen, "welder", "wim");
  places = await furnish(pen, folder, welder.id);
});

interface Asked {
  readonly at: string;
  readonly method: string;
  readonly operation: Described;
}
const operations: readonly Asked[] = Object.entries(document.paths).flatMap(([at, methods]) =>
  Object.entries(methods).map(([method, operation]) => ({ at, method, operation })),
);
const scopeOf = ({ operation }: Asked): Scope | undefined => operation.security[0]?.token?.[0] as Scope;

/** What an address needs beside its places, to be answered. */
const queries: Readonly<Record<string, string>> = { "/api/inspections/{inspectionId}/pdf": "?draft" };
const filled = (at: string) => at.replace(/\{(\w+)\}/g, (_, name: string) => places[name] ?? `no ${name}`);

async function send({ at, method }: Asked, token: string | null): Promise<Response> {
  const headers = {
    host: "shop:3000",
    "content-type": "application/json",
    ...(token === null ? {} : { authorization: `Bearer ${token}` }),
  };
  const body = method === "get" ? {} : { body: "{}" };
  const url = `http://shop:3000${filled(at)}${queries[at] ?? ""}`;
  return ask(document, new Request(url, { method: method.toUpperCase(), headers, ...body }));
}

/** Checks answers by the schemas of a document; each is compiled once. */
function checker({ components }: ApiDocument) {
  const ajv = new Ajv2020({ strict: false, validateFormats: false });
  ajv.addSchema({ $id: "toeline", components });
  const made = new Map<string, ValidateFunction>();
  return (ref: string, answer: unknown): string | null => {
    const fits = made.get(ref) ?? ajv.compile({ $ref: `toeline${ref}` });
    made.set(ref, fits);
    return fits(answer) ? null : ajv.errorsText(fits.errors);
  };
}

/** What does not hold of the answer to a GET: its status, its kind, its shape. */
async function wrongIn(asked: Asked, answer: Response, fits: ReturnType<typeof checker>): Promise<string[]> {
  const [status = "", described] = Object.entries(asked.operation.responses)[0] ?? [];
  const named = `${asked.at}: `;
  if (String(answer.status) !== status) return [`${named}${answer.status} ${await answer.text()}`];
  const [type = "", content] = Object.entries(described?.content ?? {})[0] ?? [];
  if (!answer.headers.get("content-type")?.startsWith(type.replace("*", "")))
    return [`${named}${answer.headers.get("content-type")} is not ${type}`];
  if (!content?.schema) {
    await answer.arrayBuffer();
    return [];
  }
  const found = fits(content.schema.$ref, await answer.json());
  return found === null ? [] : [`${named}${found}`];
}

/** With one field renamed in a schema: what the routes answer is no longer what is said. */
function renamed(name: string, from: string, to: string): ApiDocument {
  const other = served();
  const schema = other.components.schemas[name] as {
    properties: Record<string, unknown>;
    required: string[];
  };
  schema.properties[to] = schema.properties[from];
  delete schema.properties[from];
  schema.required = schema.required.map((field) => (field === from ? to : field));
  return other;
}

describe("the document", () => {
  // The PDFs are drawn for seconds, and looked at elsewhere.
  const gets = operations.filter(({ method, at }) => method === "get" && inDepth(!/pdf$/.test(at), true));

  it("is kept by the answer of every address that can be read", async () => {
    const token = await owner.token(scopes);
    const fits = checker(document);
    const wrong: string[] = [];
    for (const asked of gets) wrong.push(...(await wrongIn(asked, await send(asked, token), fits)));
    expect(wrong).toEqual([]);
    expect(gets.length).toBeGreaterThan(30);
  });

  it("names every method of every route there is, and no other", async () => {
    expect(operations.map(({ method, at }) => `${method} ${at}`).sort()).toEqual(await methodsThere());
  });

  it("would not be, with a field renamed in it", async () => {
    const token = await owner.token(scopes);
    const fits = checker(renamed("Exercise", "handIns", "beads"));
    const one = gets.filter(({ at }) => at === "/api/exercises/{exerciseId}");
    expect(one).toHaveLength(1);
    for (const asked of one)
      expect(await wrongIn(asked, await send(asked, token), fits)).toEqual([
        expect.stringMatching(/must have required property 'beads'/),
      ]);
  });
});

describe("the rights", () => {
  const scoped = operations.filter((asked) => scopeOf(asked) !== undefined);
  const named = ({ method, at }: Asked) => `${method} ${at}`;
  /** Where somebody is let in who should be answered with this status. */
  async function open(
    asked: readonly Asked[],
    status: number,
    tokenOf: (scope: Scope) => Promise<string | null>,
  ) {
    const tokens = new Map<Scope, string | null>();
    const found: string[] = [];
    for (const one of asked) {
      const scope = scopeOf(one)!;
      const token = tokens.has(scope) ? tokens.get(scope)! : await tokenOf(scope);
      tokens.set(scope, token);
      if ((await send(one, token)).status !== status) found.push(named(one));
    }
    return found;
  }
  const without = (scope: Scope) => owner.token(scopes.filter((one) => one !== scope));

  it("are asked for at every address by its scope: all others do not open it, and no token does not", async () => {
    expect(await open(scoped, 403, without)).toEqual([]);
    expect(await open(scoped, 401, async () => null)).toEqual([]);
    expect(new Set(scoped.map(scopeOf))).toEqual(new Set(scopes));
  });

  it("would be found missing: an address said to be behind another scope is open", async () => {
    const one = scoped.find((asked) => named(asked) === "put /api/jobs/{jobId}")!;
    const operation = { ...one.operation, security: [{ token: ["limits:write"] }] };
    expect(await open([{ ...one, operation }], 403, without)).toEqual(["put /api/jobs/{jobId}"]);
  });

  it("of a welder reach no course, job, limits to write, or log, whatever the token says", async () => {
    const beyond: readonly Scope[] = ["course:read", "jobs:read", "jobs:write", "limits:write", "log:read"];
    const token = await welder.token(scopes);
    // What came for them alone is theirs (tests/lib/classroom/news.test.ts).
    const own = "get /api/news";
    const theirs = scoped.filter((asked) => beyond.includes(scopeOf(asked)!) && named(asked) !== own);
    expect(theirs.length).toBeGreaterThan(17);
    expect(await open(theirs, 403, async () => token)).toEqual([]);
    expect(
      await open(
        scoped.filter((asked) => named(asked) === own),
        200,
        async () => token,
      ),
    ).toEqual([]);
  });

  it("of a welder leave out others' trials, and others' beads of a card", async () => {
    const read = async (at: string, token: string) => {
      const request = new Request(`http://shop:3000${at}`, { headers: { authorization: `Bearer ${token}` } });
      const answer = await ask(document, request);
      return { status: answer.status, json: (await answer.json()) as unknown };
    };
    const [mine, all] = [await welder.token(["beads:read"]), await owner.token(["beads:read"])];
    const trials = async (token: string) =>
      ((await read("/api/trials", token)).json as { trials: { id: string }[] }).trials.map(({ id }) => id);
    const others = (await trials(all)).filter((id) => id !== places["trialId"]);
    expect(others).toHaveLength(1);
    expect(await trials(mine)).toEqual([places["trialId"]]);
    expect((await read(`/api/trials/${places["trialId"]}`, mine)).status).toBe(200);
    expect((await read(`/api/trials/${others[0]}`, mine)).status).toBe(403);
    expect((await read("/api/trials/nowhere", mine)).status).toBe(403);
    expect((await read("/api/trials/nowhere", all)).status).toBe(404);
    for (const at of [`/api/cards/${places["cardId"]}`, "/api/cards"]) {
      const ids = async (token: string) => {
        const { json } = (await read(at, token)) as {
          json: { beadIds: string[]; cards?: { beadIds: string[] }[] };
        };
        return json.cards?.[0]?.beadIds ?? json.beadIds;
      };
      expect(await ids(all)).toHaveLength(2);
      const [own = "", ...rest] = await ids(mine);
      expect(rest).toEqual([]);
      expect((await read(`/api/beads/${own}`, mine)).status).toBe(200);
    }
  });
});

describe("a save", () => {
  it("of a job or of limits that did not arrive whole, or would strike off a weld with beads, changes nothing", async () => {
    const { jobId = "", beadId = "", key = "" } = places;
    const token = await owner.token(["jobs:read", "jobs:write", "beads:read", "limits:write"]);
    const put = async (at: string, sent: unknown) => {
      const headers = { authorization: `Bearer ${token}` };
      const init = { method: "PUT", headers, body: JSON.stringify(sent) };
      const answer = await ask(document, new Request(`http://shop:3000${at}`, init));
      const { issues } = (await answer.json()) as { issues: { code: string; message: string }[] };
      return [answer.status, ...issues.map(({ code, message }) => [code, /\w{3}.*\.$/.test(message)])];
    };
    const before = await getJob(fresh().db, jobId);
    const { pen } = fresh();
    expect((await attachBead(pen, beadId, { jobId, weldId: "w1" })).ok).toBe(true);
    const content = { ...before!.content, welds: [] };
    expect(await put(`/api/jobs/${jobId}`, { basedOn: 1, content })).toEqual([409, ["weld-has-beads", true]]);
    for (const at of [`/api/jobs/${jobId}`, `/api/criteria/${key}`])
      for (const sent of [{ content }, { basedOn: 0, content }, null])
        expect(await put(at, sent)).toEqual([400, ["save-not-understood", true]]);
    expect(await getJob(fresh().db, jobId)).toEqual(before);
    expect(await listShopSets(fresh().db, { key })).toHaveLength(1);
  });
});

describe("a client generated from the document", () => {
  type Fetch = (request: Request) => Promise<Response>;
  interface Program {
    clientOf(token: string, fetch: Fetch): object;
    jobs(client: object): Promise<Record<string, unknown>>;
    allJobs(client: object): Promise<number[][]>;
    limits(client: object): Promise<Record<string, unknown>>;
  }
  let program = {} as Program;
  const client = async (given: readonly Scope[]) =>
    program.clientOf(await owner.token(given), (request) => ask(document, request));

  it("fits its types", async () => {
    const made = await generateClient(document);
    expect(made.errors).toEqual([]);
    program = (await import(/* @vite-ignore */ made.program)) as Program;
  });

  it("makes a job, changes it at its revision, and is refused in words where that has gone by", async () => {
    const done = await program.jobs(await client(["jobs:read", "jobs:write"]));
    expect(done).toMatchObject({
      ...{ numbers: [2, 2], revisions: [1, 2, 2], maker: "Yard 4" },
      statuses: [201, 200, 409, 404, 422],
    });
    expect(done["says"]).toEqual([
      [{ code: "job-changed-elsewhere", message: expect.stringMatching(/\w{3}.*\.$/) as string }],
      [{ code: "job-gone", message: expect.stringMatching(/\w{3}.*\.$/) as string }],
      [{ code: "job-not-understood", message: expect.stringMatching(/title.*\.$/) as string }],
    ]);
  });

  it("reads every job once, newest first, a page at a time", async () => {
    const own = await client(["jobs:read", "jobs:write"]);
    for (let more = 0; more < 3; more += 1) await program.jobs(own);
    expect(await program.allJobs(own)).toEqual([[5, 4], [3, 2], [1]]);
  });

  it("makes versions of limits as the editor does: none over another's, none where nothing differs", async () => {
    const done = await program.limits(await client(["beads:read", "limits:write"]));
    expect(done).toMatchObject({
      key: "shop-second-week",
      saved: [
        [1, true],
        [2, true],
        [2, false],
      ],
      statuses: [201, 200, 200, 409, 422, 404],
      versions: [
        [`Owner ${owner.mark}`, 7],
        [`Owner ${owner.mark}`, 8],
      ],
    });
    const says = done["says"] as { code: string; message: string }[][];
    expect(says.map(([first]) => first?.code)).toEqual([
      "criteria-changed-elsewhere",
      "criteria-not-understood",
      "criteria-gone",
    ]);
    for (const [first] of says) expect(first?.message).toMatch(/\w{3}.*\.$/);
  });

  itDeep("would not fit a document with a field renamed", async () => {
    const { errors } = await generateClient(renamed("Job", "revision", "version"));
    expect(errors).toContainEqual(expect.stringMatching(/'revision' does not exist/));
  });
});
