import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import sharp from "sharp";
import { emptyDrawing, type Mark } from "@/lib/marks";
import { personWith } from "../app/api/shop";
import { startServer, type TestServer } from "../e2e/support/server";
import { chances } from "../faults/kills";
import { serveFrom } from "../setup/fresh-db";
import { layMigrated } from "../setup/migrated";
import { openDb } from "@/lib/db";

/**
 * The pace of somebody at a bench, s from bead to bead: 150 mm of bead at 250 mm a minute, slag chipped and brushed, the plate
 * put under the phone, four marks drawn and looked at. Own estimate; a class of fifty seldom keeps it up.
 */
export const BENCH_PACE_S = 180;
/** Saves while one bead is marked: the workbench saves after each mark. */
const MARKS = 4;

/** What came of one kind of request. */
export interface Timed {
  readonly times: number[];
  readonly failed: string[];
}

export const kinds = ["list", "make", "upload", "open", "save"] as const;
type Kind = (typeof kinds)[number];

export interface LoadFigures {
  readonly timed: Readonly<Record<Kind, Timed>>;
  /** Most memory of the server and what it started in each minute, bytes; the last may be a part of one. */
  readonly minutes: readonly number[];
}

/** The value below which so many of 100 lie, ms; 0: there is none. */
export function percentile(times: readonly number[], percent: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil((sorted.length * percent) / 100) - 1)] ?? 0;
}

/** 12 megapixels as a phone sends them, some 3 MB; each photo differs in a comment behind its first marker. */
async function bigPhoto(): Promise<Buffer> {
  const noise = { type: "gaussian", mean: 128, sigma: 18 } as const;
  return sharp({ create: { width: 4000, height: 3000, channels: 3, background: "#777", noise } })
    .jpeg({ quality: 75 })
    .toBuffer();
}

export function withComment(jpeg: Buffer, text: string): Buffer {
  const words = Buffer.from(text);
  const head = Buffer.from([0xff, 0xfe, 0, 0]);
  head.writeUInt16BE(words.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, words, jpeg.subarray(2)]);
}

/** Memory of a process and all that came out of it, where the system says. */
function memoryOf(pid: number): number {
  const children = new Map<number, number[]>();
  const own = new Map<number, number>();
  for (const name of readdirSync("/proc").filter((one) => /^\d+$/.test(one))) {
    try {
      const status = readFileSync(`/proc/${name}/status`, "utf8");
      const parent = Number(/^PPid:\s+(\d+)/m.exec(status)?.[1]);
      children.set(parent, [...(children.get(parent) ?? []), Number(name)]);
      own.set(Number(name), 1024 * Number(/^VmRSS:\s+(\d+)/m.exec(status)?.[1] ?? 0));
    } catch {
      // Gone meanwhile.
    }
  }
  const sum = (of: number): number =>
    (own.get(of) ?? 0) + (children.get(of) ?? []).reduce((all, child) => all + sum(child), 0);
  return sum(pid);
}

async function timed(into: Timed, ask: () => Promise<Response>): Promise<Response | null> {
  const began = performance.now();
  try {
    const answer = await ask();
    if (!answer.ok) into.failed.push(`${answer.status} ${(await answer.text()).slice(0, 200)}`);
    else into.times.push(performance.now() - began);
    return answer.ok ? answer : null;
  } catch (error) {
    into.failed.push(String(error));
    return null;
  }
}

/** One of those who work: how they are known, and what comes of what they ask. */
interface Person {
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly timed: LoadFigures["timed"];
  /** Another photo each time. */
  readonly photo: () => Buffer;
  /** Between two things they do: the pace divided among them, half of it up to one and a half. False: the time is up. */
  readonly goesOn: () => Promise<boolean>;
}

interface Bead {
  readonly id: string;
  readonly revision: number;
  readonly content: Readonly<Record<string, unknown>>;
}

const mark = (i: number): Mark => ({
  id: `m${i}`,
  imperfection: "undercut",
  shape: { kind: "line", points: [0, 1, 2, 3].map((j) => ({ x: 400 + 300 * j, y: 500 + 40 * i + 9 * j })) },
  place: "upper-toe",
  stretch: "run",
  patterns: ["continuous"],
  gauge: [],
  note: "",
});

/** Looks at the list, makes a bead, photographs it, opens it and marks it, with a save after each mark. */
async function oneBead({ url, headers, timed: of, photo, goesOn }: Person): Promise<void> {
  const json = { ...headers, "content-type": "application/json" };
  await (await timed(of.list, () => fetch(`${url}/`, { headers })))?.text();
  if (!(await goesOn())) return;
  const body = JSON.stringify({ title: "At the bench" });
  const made = await timed(of.make, () => fetch(`${url}/api/beads`, { method: "POST", headers: json, body }));
  if (made === null) return;
  const { id } = (await made.json()) as Bead;
  if (!(await goesOn())) return;
  const sent = { method: "POST", headers: { ...headers, "content-type": "image/jpeg" } };
  const bytes = new Uint8Array(photo());
  const taken = await timed(of.upload, () =>
    fetch(`${url}/api/beads/${id}/photos`, { ...sent, body: bytes }),
  );
  if (taken === null) return;
  const photoId = ((await taken.json()) as { photo: { id: string } }).photo.id;
  await (await timed(of.open, () => fetch(`${url}/beads/${id}`, { headers })))?.text();
  const bead = (await (await fetch(`${url}/api/beads/${id}`, { headers })).json()) as Bead;
  let { revision } = bead;
  for (let marks = 1; marks <= MARKS; marks += 1) {
    if (!(await goesOn())) return;
    const drawing = { ...emptyDrawing, marks: Array.from({ length: marks }, (_, i) => mark(i)) };
    const content = { ...bead.content, photos: [{ id: photoId, role: "face", drawing }] };
    const save = JSON.stringify({ basedOn: revision, content });
    const saved = await timed(of.save, () =>
      fetch(`${url}/api/beads/${id}`, { method: "PUT", headers: json, body: save }),
    );
    if (saved === null) return;
    revision = ((await saved.json()) as Bead).revision;
  }
}

export interface LoadGround {
  readonly server: TestServer;
  readonly tokens: readonly string[];
  stop(): Promise<void>;
}

/** The built server with so many welders, each known to it by a token of their own, as each has an account of their own. */
export async function loadGround(people: number): Promise<LoadGround> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-load-"));
  const file = path.join(folder, "toeline.db");
  await layMigrated(file);
  // Tokens are made with the key of this folder.
  serveFrom(folder);
  const db = openDb(`file:${file}`);
  const tokens: string[] = [];
  try {
    for (let i = 0; i < people; i += 1) {
      const { token } = await personWith({ db, by: "test" }, "welder", `welder${i}`, `W-${i + 1}`);
      tokens.push(await token(["beads:read", "beads:write"]));
    }
  } finally {
    await db.$disconnect();
  }
  const server = await startServer(folder, { accounts: true });
  const stop = async (): Promise<void> => {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  };
  return { server, tokens, stop };
}

/** All of them at work for so many minutes, each beginning somewhere in their pace. */
export async function load(
  { server, tokens }: LoadGround,
  { minutes, paceMs }: { readonly minutes: number; readonly paceMs: number },
): Promise<LoadFigures> {
  const [began, jpeg] = [performance.now(), await bigPhoto()];
  const until = began + minutes * 60_000;
  const timedOf = Object.fromEntries(kinds.map((kind) => [kind, { times: [], failed: [] }])) as unknown;
  const most: number[] = [];
  const watch = setInterval(() => {
    const minute = Math.floor((performance.now() - began) / 60_000);
    most[minute] = Math.max(most[minute] ?? 0, memoryOf(server.pid()));
  }, 500);
  let photos = 0;
  const people = tokens.map((token, who) => {
    const next = chances(who + 1);
    return {
      ...{ url: server.url, timed: timedOf as LoadFigures["timed"] },
      headers: { authorization: `Bearer ${token}`, origin: server.url },
      photo: () => withComment(jpeg, `photo ${(photos += 1)}`),
      async goesOn() {
        await pause(Math.min((paceMs / (MARKS + 2)) * (0.5 + next(1000) / 1000), until - performance.now()));
        return performance.now() < until;
      },
      first: next(1000) / 1000,
    };
  });
  const work = async ({ first, ...person }: (typeof people)[number]): Promise<void> => {
    await pause(first * Math.min(paceMs, until - began));
    while (performance.now() < until) await oneBead(person);
  };
  await Promise.all(people.map(work));
  clearInterval(watch);
  return { timed: timedOf as LoadFigures["timed"], minutes: [...most].map((bytes) => bytes ?? 0) };
}
