/**
 * `npm run -s load:sites -- 100`: so many sites on one server, each the copy of a small shop; what the process takes of memory
 * before anybody asks, with each site in use once, and after everybody's first page was asked for three times. Needs a build.
 */
import { cpSync, mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { db } from "@/lib/db";
import { inSite, loadSites } from "@/lib/sites";
import { startSites, type SitesServer } from "../e2e/support/sites";
import { ownerOf } from "../setup/furnished-site";
import { smallBead } from "../setup/small-shop";
import { makeTwoSites } from "../setup/two-sites";

const count = Number(process.argv[2] ?? 20);
const names = Array.from({ length: count }, (_, i) => `site-${i}`);
const others = Object.fromEntries(names.map((name) => [name, { hosts: [`${name}.localhost`] }]));
const two = await makeTwoSites(others);
Object.assign(process.env, two.env);
let server: SitesServer | null = null;

const memoryMb = (of: SitesServer): number =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${of.pid()}/status`, "utf8"))?.[1] ?? 0) / 1024;

try {
  const token = await inSite(two.north, async () => {
    for (let i = 0; i < 12; i += 1) await smallBead({ db: db(), by: "test" }, two.north.folder, i);
    const owner = await ownerOf("owner");
    await db().$queryRawUnsafe("PRAGMA wal_checkpoint(TRUNCATE)");
    await db().$disconnect();
    return owner.token;
  });
  for (const { name, folder } of loadSites())
    if (names.includes(name)) {
      mkdirSync(path.dirname(folder), { recursive: true });
      cpSync(two.north.folder, folder, { recursive: true });
    }
  const begun = performance.now();
  const running = await startSites(two.env);
  server = running;
  const headers = { authorization: `Bearer ${token}` };
  const rows: (readonly [string, number, number])[] = [
    ["started, nobody asked", memoryMb(running), performance.now() - begun],
  ];
  const visit = async (some: readonly string[], addresses: readonly string[]): Promise<number> => {
    const times: number[] = [];
    for (const name of some)
      for (const at of addresses) {
        const before = performance.now();
        const { status } = await running.ask(`${name}.localhost`, at, { headers });
        if (status !== 200) throw new Error(`${name} ${at}: ${status}`);
        times.push(performance.now() - before);
      }
    return times.sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
  };
  const note = async (what: string, some: readonly string[], addresses: readonly string[]) => {
    const median = await visit(some, addresses);
    rows.push([what, memoryMb(running), median]);
  };
  await note("one site: first page, list", names.slice(0, 1), ["/", "/api/beads"]);
  // What the program itself takes once it has been used, whoever for.
  for (let i = 0; i < 15; i += 1) await visit(names.slice(0, 1), ["/", "/api/beads"]);
  await note("the same site again, warm", names.slice(0, 1), ["/", "/api/beads"]);
  const warm = memoryMb(running);
  await note(`each of ${count} once`, names, ["/", "/api/beads"]);
  const all = memoryMb(running);
  for (let i = 0; i < 3; i += 1) await visit(names, ["/"]);
  await note("each, the fourth time", names, ["/"]);
  for (const [what, megabytes, ms] of rows)
    console.log(`${what.padEnd(28)} ${megabytes.toFixed(0).padStart(5)} MB  ${ms.toFixed(0).padStart(6)} ms`);
  console.log(`a further site in use: ${((all - warm) / (count - 1)).toFixed(1)} MB`);
} finally {
  await server?.stop();
  await two.remove();
}
