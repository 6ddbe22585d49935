import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import sharp from "sharp";
import { personWith } from "../app/api/shop";
import { startServer, type TestServer } from "../e2e/support/server";
import { chances } from "../faults/kills";
import { serveFrom } from "../setup/fresh-db";
import { layMigrated } from "../setup/migrated";
import { openDb, type Db } from "@/lib/db";
import { noFigures, oneBead, RESTS, type Figures } from "./one-bead";

/**
 * The pace of somebody at a bench, s from bead to bead: 150 mm of bead at 250 mm a minute, slag chipped and brushed, the plate
 * put under the phone, four marks drawn and looked at. Own estimate; a class of fifty seldom keeps it up.
 */
export const BENCH_PACE_S = 180;
export interface LoadFigures {
  readonly timed: Figures;
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

export interface LoadGround {
  readonly server: TestServer;
  readonly tokens: readonly string[];
  stop(): Promise<void>;
}

/** So many welders, each known by a token of their own, as each has an account of their own. Needs the keys of `db`'s folder. */
export async function weldersIn(db: Db, people: number): Promise<readonly string[]> {
  const tokens: string[] = [];
  for (let i = 0; i < people; i += 1) {
    const { token } = await personWith({ db, by: "test" }, "welder", `welder${i}`, `W-${i + 1}`);
    tokens.push(await token(["beads:read", "beads:write"]));
  }
  return tokens;
}

/** The built server with so many welders. */
export async function loadGround(people: number): Promise<LoadGround> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-load-"));
  const file = path.join(folder, "toeline.db");
  await layMigrated(file);
  // Tokens are made with the key of this folder.
  serveFrom(folder);
  const db = openDb(`file:${file}`);
  const tokens = await weldersIn(db, people).finally(() => db.$disconnect());
  const server = await startServer(folder, { accounts: true });
  const stop = async (): Promise<void> => {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  };
  return { server, tokens, stop };
}

/** Everybody's rests: false when the time is up. `next`: chances of this person's own. */
export const restsOf =
  (until: number, paceMs: number, next: (below: number) => number) => async (): Promise<boolean> => {
    await pause(Math.min((paceMs / RESTS) * (0.5 + next(1000) / 1000), until - performance.now()));
    return performance.now() < until;
  };

/**
 * All of them at work for so many minutes, each beginning somewhere in their pace. `least`: so many beads each makes to the
 * end, however long a busy machine takes for them.
 */
export async function load(
  { server, tokens }: LoadGround,
  {
    minutes,
    paceMs,
    least = 0,
  }: { readonly minutes: number; readonly paceMs: number; readonly least?: number },
): Promise<LoadFigures> {
  const jpeg = await bigPhoto();
  // The first page of a server that just began is nobody's wait.
  await (await fetch(`${server.url}/`, { headers: { authorization: `Bearer ${tokens[0]}` } })).text();
  const began = performance.now();
  const until = began + minutes * 60_000;
  const figures = noFigures();
  const most: number[] = [];
  const watch = setInterval(() => {
    const minute = Math.floor((performance.now() - began) / 60_000);
    most[minute] = Math.max(most[minute] ?? 0, memoryOf(server.pid()));
  }, 500);
  let photos = 0;
  const work = async (token: string, who: number): Promise<void> => {
    const next = chances(who + 1);
    let made = 0;
    const rests = restsOf(until, paceMs, next);
    const known = { authorization: `Bearer ${token}`, origin: server.url };
    const person = {
      figures,
      book: [],
      async ask(where: string, init: RequestInit = {}) {
        const headers = { ...(init.headers as Record<string, string>), ...known };
        const answer = await fetch(`${server.url}${where}`, { ...init, headers });
        return new Response(await answer.arrayBuffer(), { status: answer.status });
      },
      photo: () => withComment(jpeg, `photo ${(photos += 1)}`),
      goesOn: async () => (await rests()) || made < least,
    };
    await pause((next(1000) / 1000) * Math.min(paceMs, until - began));
    for (; performance.now() < until || made < least; made += 1) await oneBead(person);
  };
  await Promise.all(tokens.map(work));
  clearInterval(watch);
  return { timed: figures, minutes: [...most].map((bytes) => bytes ?? 0) };
}
