import { randomUUID } from "node:crypto";
import { setTimeout as pause } from "node:timers/promises";
import sharp from "sharp";
import type { TestServer } from "../e2e/support/server";
import { chances } from "../faults/kills";
import type { Written } from "./book";
import { noFigures, oneBead, type Figures } from "./one-bead";
import { restsOf, withComment } from "./people";
import { BROKE } from "./proxy";
import type { Servers } from "./servers";

export interface Together {
  readonly figures: Figures;
  /** Everything that somebody sent, with what was said yes to of it. */
  readonly book: readonly Written[];
  /** When connections broke, ms since it began. */
  readonly broken: readonly number[];
  /** From the kill until the server answered again, ms since it began; null: none was killed. */
  readonly down: readonly [from: number, to: number] | null;
}

/** What breaks on the way is sent again, with the same ids. */
const ATTEMPTS = 240;
const AGAIN_MS = 250;

/** An answer of a server, whatever its status, read whole; what breaks on the way is asked again. */
async function asked(url: string, where: string, init: RequestInit, broke: () => void): Promise<Response> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      const answer = await fetch(`${url}${where}`, init);
      if (answer.headers.has(BROKE)) throw new Error("no server answered");
      return new Response(await answer.arrayBuffer(), { status: answer.status });
    } catch (error) {
      broke();
      if (attempt >= ATTEMPTS) throw error;
      await pause(AGAIN_MS);
    }
  }
}

async function smallPhoto(): Promise<Buffer> {
  const noise = { type: "gaussian", mean: 128, sigma: 12 } as const;
  return sharp({ create: { width: 1000, height: 750, channels: 3, background: "#777", noise } })
    .jpeg({ quality: 70 })
    .toBuffer();
}

async function killed(
  began: number,
  server: TestServer,
  afterMs: number,
): Promise<readonly [number, number]> {
  await pause(afterMs);
  // From before it dies: what it holds breaks while it does.
  const from = performance.now() - began;
  await server.kill();
  await pause(2000);
  await server.revive();
  return [from, performance.now() - began];
}

interface HowLong {
  readonly minutes: number;
  readonly paceMs: number;
  readonly kill: boolean;
  /** So many beads each makes to the end, however long a busy machine takes for them. */
  readonly least?: number;
}

/** Everybody at work through the proxy; the last server is killed in the middle and started again, where `kill` says so. */
export async function workTogether(
  { servers, proxy, tokens }: Servers,
  { minutes, paceMs, kill, least = 0 }: HowLong,
): Promise<Together> {
  const [figures, book, broken] = [noFigures(), [] as Written[], [] as number[]];
  const jpeg = await smallPhoto();
  const began = performance.now();
  const until = began + minutes * 60_000;
  const work = async (token: string, who: number): Promise<void> => {
    const next = chances(who + 1);
    const rests = restsOf(until, paceMs, next);
    let made = 0;
    const known = { authorization: `Bearer ${token}`, origin: proxy.url };
    const person = {
      figures,
      book,
      ask(where: string, init: RequestInit = {}) {
        const headers = { ...(init.headers as Record<string, string>), ...known };
        return asked(proxy.url, where, { ...init, headers }, () => broken.push(performance.now() - began));
      },
      photo: () => withComment(jpeg, randomUUID()),
      goesOn: async () => (await rests()) || made < least,
    };
    await pause((next(1000) / 1000) * Math.min(paceMs, until - began));
    for (; performance.now() < until || made < least; made += 1) await oneBead(person);
  };
  const last = servers.at(-1);
  const [down] = await Promise.all([
    kill && last ? killed(began, last, minutes * 30_000) : null,
    ...tokens.map(work),
  ]);
  return { figures, book, broken, down };
}

/** Statuses of codes that lead nowhere, typed in turn at each server. */
export async function wrongCodes({ servers }: Servers, times: number): Promise<readonly number[]> {
  const statuses: number[] = [];
  for (let i = 0; i < times; i += 1) {
    const url = servers[i % servers.length]?.url ?? "";
    const answer = await fetch(`${url}/api/hand-in/CCC${100 + i}`, {
      method: "POST",
      headers: { origin: url },
    });
    statuses.push(answer.status);
    await answer.text();
  }
  return statuses;
}
