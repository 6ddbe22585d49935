import { createHash, randomUUID } from "node:crypto";
import { setTimeout as pause } from "node:timers/promises";
import sharp from "sharp";
import { openDb } from "@/lib/db";
import { newId } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import type { TestServer } from "../e2e/support/server";
import { tellS3 } from "../setup/s3-stub";
import { withComment, type Timed } from "./people";
import type { Servers } from "./servers";

/** What a server said yes to; each of it has to be there in the end. */
interface Acknowledged {
  readonly id: string;
  readonly number: number;
  /** Its last save that was answered: revision and title. */
  saved: { readonly revision: number; readonly title: string } | null;
  /** Its photo, once that was answered. */
  sha256: string | null;
}

export interface Together {
  readonly list: Timed;
  readonly make: Timed;
  readonly save: Timed;
  readonly upload: Timed;
  readonly acknowledged: readonly Acknowledged[];
  /** When connections broke, ms since it began. */
  readonly broken: readonly number[];
  /** From the kill until the server answered again, ms since it began; null: none was killed. */
  readonly down: readonly [from: number, to: number] | null;
}

/** Each attempt goes to the next server, as a proxy sends them; one that breaks is tried again with the same ids. */
const ATTEMPTS = 60;
const AGAIN_MS = 250;

interface Work {
  readonly urls: readonly string[];
  readonly began: number;
  readonly broken: number[];
  turn: number;
}

/** An answer, whatever its status. What breaks on the way or comes from a server that cannot reach its database is asked again. */
async function asked(work: Work, where: string, init: RequestInit = {}): Promise<Response> {
  for (let attempt = 0; ; attempt += 1) {
    const url = work.urls[(work.turn += 1) % work.urls.length] ?? "";
    try {
      const answer = await fetch(`${url}${where}`, {
        ...init,
        headers: { ...(init.headers as Record<string, string>), origin: url },
      });
      const body = await answer.arrayBuffer();
      return new Response(body, { status: answer.status });
    } catch (error) {
      work.broken.push(performance.now() - work.began);
      if (attempt >= ATTEMPTS) throw error;
      await pause(AGAIN_MS);
    }
  }
}

async function timed(
  into: Timed,
  ask: () => Promise<Response>,
  isGood = ({ ok }: Response) => ok,
): Promise<Response | null> {
  const from = performance.now();
  const answer = await ask();
  if (isGood(answer)) into.times.push(performance.now() - from);
  else into.failed.push(`${answer.status} ${(await answer.clone().text()).slice(0, 200)}`);
  return isGood(answer) ? answer : null;
}

interface Bead {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  readonly content: { readonly title: string };
}

const json = { "content-type": "application/json" };

/** Looks at the list, makes a bead, saves it, photographs it; each answer that says yes is written down. */
async function round(
  work: Work,
  into: Pick<Together, "list" | "make" | "save" | "upload">,
  known: Acknowledged[],
  photo: Buffer,
): Promise<void> {
  await timed(into.list, () => asked(work, "/api/beads?limit=10"));
  const id = newId();
  const made = await timed(into.make, () =>
    asked(work, "/api/beads", { method: "POST", headers: json, body: JSON.stringify({ id, title: "Made" }) }),
  );
  if (made === null) return;
  const bead = (await made.json()) as Bead;
  const mine: Acknowledged = { id, number: bead.number, saved: null, sha256: null };
  known.push(mine);
  const title = `Saved ${id}`;
  const body = JSON.stringify({ basedOn: bead.revision, content: { ...bead.content, title } });
  const isSaved = async (answer: Response): Promise<Bead | null> => {
    if (answer.ok) return (await answer.json()) as Bead;
    // Its answer was lost, so it came twice; then what is there is what was sent.
    const there = (await (await asked(work, `/api/beads/${id}`)).json()) as Bead;
    return answer.status === 409 && there.content.title === title ? there : null;
  };
  const saved = await timed(
    into.save,
    () => asked(work, `/api/beads/${id}`, { method: "PUT", headers: json, body }),
    ({ ok, status }) => ok || status === 409,
  );
  const now = saved && (await isSaved(saved));
  if (saved && !now) into.save.failed.push("409 and not what was sent");
  if (now) mine.saved = { revision: now.revision, title };
  const sha256 = createHash("sha256").update(photo).digest("hex");
  const sent = { method: "POST", headers: { "content-type": "image/jpeg" }, body: new Uint8Array(photo) };
  if (await timed(into.upload, () => asked(work, `/api/beads/${id}/photos?id=${newId()}`, sent)))
    mine.sha256 = sha256;
}

async function smallPhoto(): Promise<Buffer> {
  const noise = { type: "gaussian", mean: 128, sigma: 12 } as const;
  return sharp({ create: { width: 1000, height: 750, channels: 3, background: "#777", noise } })
    .jpeg({ quality: 70 })
    .toBuffer();
}

async function killed(work: Work, server: TestServer, afterMs: number): Promise<readonly [number, number]> {
  await pause(afterMs);
  await server.kill();
  const from = performance.now() - work.began;
  await pause(2000);
  await server.revive();
  return [from, performance.now() - work.began];
}

/** So many people on all servers; the last of them is killed in the middle and started again, where `kill` says so. */
export async function workTogether(
  { servers }: Servers,
  { people, minutes, thinkMs, kill }: { people: number; minutes: number; thinkMs: number; kill: boolean },
): Promise<Together> {
  const fresh = (): Timed => ({ times: [], failed: [] });
  const into = { list: fresh(), make: fresh(), save: fresh(), upload: fresh() };
  const work: Work = { urls: servers.map(({ url }) => url), began: performance.now(), broken: [], turn: 0 };
  const acknowledged: Acknowledged[] = [];
  const jpeg = await smallPhoto();
  const until = work.began + minutes * 60_000;
  const person = async (who: number): Promise<void> => {
    await pause((thinkMs * who) / people);
    while (performance.now() < until) {
      await round(work, into, acknowledged, withComment(jpeg, randomUUID()));
      await pause(thinkMs);
    }
  };
  const last = servers.at(-1);
  const [down] = await Promise.all([
    kill && last ? killed(work, last, minutes * 30_000) : null,
    ...Array.from({ length: people }, (_, who) => person(who)),
  ]);
  return { ...into, acknowledged, broken: work.broken, down };
}

/** What of all that was said yes to is not there, and what else is wrong; none: []. */
export async function lostOf(
  { servers, database, photos, endpoint }: Servers,
  { acknowledged }: Together,
): Promise<readonly string[]> {
  const folder = servers[0]?.dataFolder ?? "";
  const db = openDb(database, folder);
  const forget = tellS3(endpoint);
  try {
    const lost: string[] = [];
    const beads = await db.bead.findMany({ include: { photos: { select: { sha256: true } } } });
    const byId = new Map(beads.map((bead) => [bead.id, bead]));
    for (const { id, number, saved, sha256 } of acknowledged) {
      const there = byId.get(id);
      if (there?.number !== number) lost.push(`bead ${number} is ${there?.number ?? "gone"}`);
      if (saved && (there?.revision !== saved.revision || there.title !== saved.title))
        lost.push(`save ${saved.revision} of bead ${number}`);
      if (sha256 && !there?.photos.some((photo) => photo.sha256 === sha256)) lost.push(`photo of ${number}`);
    }
    const numbers = beads.map(({ number }) => number).sort((a, b) => a - b);
    for (const [i, number] of numbers.entries())
      if (number !== i + 1) lost.push(`number ${number} where ${i + 1} was due`);
    const { findings } = await verifyRecords(db, folder, { photos });
    lost.push(...findings.map((finding) => JSON.stringify(finding)));
    return lost;
  } finally {
    forget();
    await db.$disconnect();
  }
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
