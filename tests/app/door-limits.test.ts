import { beforeAll, describe, expect, it, vi } from "vitest";
import { MOST_JSON_BYTES } from "@/lib/base";
import { readBody } from "@/app/_door/read-body";
import { PUT } from "@/app/api/beads/[beadId]/route";
import { POST as makeBead } from "@/app/api/beads/route";
import { PUT as saveLimits } from "@/app/api/criteria/[key]/route";
import { POST as makeLimits } from "@/app/api/criteria/route";
import { POST as diagnose } from "@/app/api/diagnose/route";
import { PUT as saveJob } from "@/app/api/jobs/[jobId]/route";
import { POST as judge } from "@/app/api/judge/route";
import { POST as measure } from "@/app/api/measure/route";
import { createBead, getBead } from "@/lib/beads";
import { useFreshDb } from "../setup/fresh-db";

const fresh = useFreshDb();
const store = vi.hoisted(() => ({ db: null as unknown }));
vi.mock("next/cache", () => ({ revalidatePath: () => {} }));
vi.mock("@/lib/db", async (original) => ({ ...(await original<object>()), db: () => store.db }));
beforeAll(() => {
  store.db = fresh().db;
});

const HEADERS = { host: "localhost:3000", "content-type": "application/json" };
const sent = (body: BodyInit, method: string) =>
  new Request("http://localhost:3000/x", { method, headers: HEADERS, body, duplex: "half" } as RequestInit);

/** White space around an empty object: as good JSON as any, and as long as one likes. Sent without saying how long. */
function endless(bytes: number): { readonly body: ReadableStream<Uint8Array>; readonly taken: () => number } {
  const piece = new Uint8Array(2 ** 20).fill(0x20);
  let given = 0;
  const body = new ReadableStream<Uint8Array>({
    pull(controller) {
      if (given >= bytes) return controller.close();
      given += piece.length;
      controller.enqueue(piece);
    },
  });
  return { body, taken: () => given };
}

const doors: Readonly<Record<string, (body: BodyInit) => Promise<Response>>> = {
  "POST /api/beads": (body) => makeBead(sent(body, "POST")),
  "PUT /api/beads/x": (body) => PUT(sent(body, "PUT"), { params: Promise.resolve({ beadId: "x" }) }),
  "PUT /api/jobs/x": (body) => saveJob(sent(body, "PUT"), { params: Promise.resolve({ jobId: "x" }) }),
  "POST /api/criteria": (body) => makeLimits(sent(body, "POST")),
  "PUT /api/criteria/x": (body) => saveLimits(sent(body, "PUT"), { params: Promise.resolve({ key: "x" }) }),
  "POST /api/measure": (body) => measure(sent(body, "POST")),
  "POST /api/judge": (body) => judge(sent(body, "POST")),
  "POST /api/diagnose": (body) => diagnose(sent(body, "POST")),
};

describe("a JSON door", () => {
  it.each(Object.entries(doors))(
    "reads no more than it says and answers 413 in words: %s",
    async (_, door) => {
      const { body, taken } = endless(114 * 2 ** 20);
      const answer = await door(body);
      expect(answer.status).toBe(413);
      expect(await answer.text()).toMatch(/larger than 4 MB/);
      // A piece or two were on their way when it was enough.
      expect(taken()).toBeLessThanOrEqual(MOST_JSON_BYTES + 3 * 2 ** 20);
    },
  );

  it("answers more points than can be measured in time with 422 in words, and saves nothing", async () => {
    const made = await createBead(fresh().pen, {});
    if (!made.ok) throw new Error("no bead");
    const points = Array.from({ length: 500 }, (_, i) => ({ x: i % 30, y: i }));
    const mark = (i: number) => ({
      id: `m${i}`,
      imperfection: "gas-mark",
      shape: { kind: "line", points },
      place: null,
      stretch: null,
      patterns: [],
      gauge: [],
      note: "",
    });
    const drawing = (marks: number) => ({
      schemaVersion: 1,
      scale: null,
      weldLine: null,
      marks: Array.from({ length: marks }, (_, i) => mark(i)),
    });
    const save = (marks: number) => {
      const photos = [{ id: "p", role: "face", drawing: drawing(marks) }];
      const body = JSON.stringify({ basedOn: 1, content: { ...made.value.content, photos } });
      return PUT(sent(body, "PUT"), { params: Promise.resolve({ beadId: made.value.id }) });
    };
    const answer = await save(41);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toMatch(/20500 points of at most 20000/);
    expect((await getBead(fresh().db, made.value.id))?.revision).toBe(1);
    expect((await save(40)).status).toBe(200);
    const measured = await measure(sent(JSON.stringify({ drawing: drawing(41) }), "POST"));
    expect([measured.status, await measured.text()]).toEqual([422, expect.stringMatching(/at most 20000/)]);
  });
});

it("a body that says it is too long is not read at all", async () => {
  const { body, taken } = endless(2 ** 22);
  const request = new Request("http://x/", {
    method: "POST",
    headers: { "content-length": "9999" },
    body,
    duplex: "half",
  } as RequestInit);
  expect(await readBody(request, 100)).toBeNull();
  expect(taken()).toBeLessThanOrEqual(2 ** 20);
});
