import { readdirSync, readFileSync } from "node:fs";
import { setTimeout as pause } from "node:timers/promises";
import sharp from "sharp";
import type { TestServer } from "../e2e/support/server";

/** What came of one kind of request. */
export interface Timed {
  readonly times: number[];
  readonly failed: string[];
}

export interface LoadFigures {
  readonly people: number;
  readonly minutes: number;
  readonly list: Timed;
  readonly save: Timed;
  readonly upload: Timed;
  /** Most memory of the server and what it started, bytes. */
  readonly mostBytes: number;
}

/** The value below which 95 of 100 lie, ms; 0: there is none. */
export function p95(times: readonly number[]): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(sorted.length * 0.95) - 1)] ?? 0;
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

interface Day {
  readonly url: string;
  readonly list: Timed;
  readonly save: Timed;
  readonly upload: Timed;
  /** Another photo each time. */
  readonly photo: () => Buffer;
}

/** Looks at the list, makes a bead, photographs it. */
async function oneRound({ url, list, save, upload, photo }: Day, who: number): Promise<void> {
  await (await timed(list, () => fetch(`${url}/`)))?.text();
  const origin = { origin: url };
  const headers = { ...origin, "content-type": "application/json" };
  const body = JSON.stringify({ title: `Load ${who}` });
  const made = await timed(save, () => fetch(`${url}/api/beads`, { method: "POST", headers, body }));
  if (made === null) return;
  const { id } = (await made.json()) as { id: string };
  const sent = { method: "POST", headers: { ...origin, "content-type": "image/jpeg" } };
  await timed(upload, () =>
    fetch(`${url}/api/beads/${id}/photos`, { ...sent, body: new Uint8Array(photo()) }),
  );
}

/** So many people on the loopback, each of whom works, thinks, and works again. */
export async function load(
  server: Pick<TestServer, "url" | "pid">,
  { people, minutes, thinkMs }: { people: number; minutes: number; thinkMs: number },
): Promise<LoadFigures> {
  const until = performance.now() + minutes * 60_000;
  const fresh = (): Timed => ({ times: [], failed: [] });
  const jpeg = await bigPhoto();
  let photos = 0;
  const day: Day = {
    ...{ url: server.url, list: fresh(), save: fresh(), upload: fresh() },
    photo: () => withComment(jpeg, `photo ${(photos += 1)}`),
  };
  let mostBytes = 0;
  const watch = setInterval(() => (mostBytes = Math.max(mostBytes, memoryOf(server.pid()))), 500);
  const person = async (who: number) => {
    await pause((thinkMs * who) / people);
    while (performance.now() < until) {
      await oneRound(day, who);
      await pause(thinkMs);
    }
  };
  await Promise.all(Array.from({ length: people }, (_, who) => person(who)));
  clearInterval(watch);
  const { list, save, upload } = day;
  return { people, minutes, list, save, upload, mostBytes };
}
