import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openDb } from "@/lib/db";
import { checkData, collectStrays } from "@/lib/mend";
import { chances } from "../faults/kills";
import { smallPhoto } from "../setup/small-shop";
import { startServer, type TestServer } from "./support/server";

const SEED = 20261126;
const LIVES = 8;
const PEOPLE = 4;

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server?.stop());

interface Acknowledged {
  readonly beadId: string;
  readonly title: string;
  readonly hasPhoto: boolean;
}

let photos = 0;
/** Makes beads, photographs and renames them, until the server is gone; what of it was acknowledged. */
async function work(who: number, told: Map<string, Acknowledged>): Promise<void> {
  const { url } = server;
  const json = { origin: url, "content-type": "application/json" };
  try {
    for (let round = 0; ; round += 1) {
      const title = `Person ${who}, round ${round}`;
      const made = await fetch(`${url}/api/beads`, {
        method: "POST",
        headers: json,
        body: JSON.stringify({ title }),
      });
      if (!made.ok) throw new Error(`refused: ${made.status} ${await made.text()}`);
      const { id } = (await made.json()) as { id: string };
      told.set(id, { beadId: id, title, hasPhoto: false });
      const sent = await fetch(`${url}/api/beads/${id}/photos`, {
        method: "POST",
        headers: { origin: url, "content-type": "image/jpeg" },
        body: new Uint8Array(await smallPhoto((photos += 1), 320, 240)),
      });
      if (!sent.ok) throw new Error(`refused: ${sent.status} ${await sent.text()}`);
      await sent.arrayBuffer();
      told.set(id, { beadId: id, title, hasPhoto: true });
    }
  } catch (error) {
    if (error instanceof Error && error.message.startsWith("refused")) throw error;
  }
}

/** What the folder lacks of what was acknowledged, and what a start would stumble over; strays are collected as it does. */
async function wrongAfter(told: ReadonlyMap<string, Acknowledged>): Promise<readonly string[]> {
  const folder = server.dataFolder;
  const db = openDb(`file:${path.join(folder, "toeline.db")}`);
  try {
    await collectStrays(db, folder, new Date());
    const wrong: string[] = [];
    for (const { beadId, title, hasPhoto } of told.values()) {
      const row = await db.bead.findUnique({ where: { id: beadId }, include: { photos: true } });
      if (row?.title !== title || row.photos.length < Number(hasPhoto)) wrong.push(`lost: ${title}`);
    }
    const stale = new Set(["facts-stale"]);
    const found = await checkData(db, folder, { isServed: false });
    return [
      ...wrong,
      ...found.filter(({ code }) => !stale.has(code)).map(({ code, path: at }) => `${code} ${at.join(" ")}`),
    ];
  } finally {
    await db.$disconnect();
  }
}

describe("a real server that is killed while people write", () => {
  it("has lost nothing it acknowledged, and serves again", async () => {
    const next = chances(SEED);
    const told = new Map<string, Acknowledged>();
    for (let life = 0; life < LIVES; life += 1) {
      const people = Array.from({ length: PEOPLE }, (_, i) => work(10 * life + i, told));
      const before = told.size;
      while (told.size < before + 1 + next(6)) await pause(5);
      await pause(next(120));
      await server.kill();
      await Promise.all(people);
      expect(await wrongAfter(told), `seed ${SEED}, life ${life}`).toEqual([]);
      await server.revive();
      expect((await fetch(`${server.url}/api/health`)).status).toBe(200);
    }
    console.log(`kills of a real server, seed ${SEED}: ${LIVES}, ${told.size} acknowledged beads`);
    expect(told.size).toBeGreaterThanOrEqual(LIVES);
  });
});
