/**
 * `npm run load -- 50 10`: so many people for so many minutes on the built server, and how long they waited. With
 * `--servers 2`: on so many servers with one PostgreSQL and one bucket, of which one is killed half-way and started again;
 * then whether everything that was said yes to is there.
 */
import { loadavg } from "node:os";
import { parseArgs } from "node:util";
import { buildApp } from "@/lib/cli/prepare.mjs";
import { startServer } from "../e2e/support/server";
import { load, p95, type Timed } from "./people";
import { startServers } from "./servers";
import { lostOf, workTogether, wrongCodes } from "./together";

const use = `npm run -s load -- [--servers 2] [--people 50] [--minutes 10] [--think 20]     also: PEOPLE MINUTES
up to 500 people, 120 minutes, 4 servers; --think: seconds between beads`;

const text = { type: "string" } as const;

function asked() {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { servers: text, people: text, minutes: text, think: text, help: { type: "boolean" } },
  });
  const [people, minutes] = [values.people ?? positionals[0], values.minutes ?? positionals[1]].map(Number);
  const [servers, think] = [values.servers ?? 1, values.think ?? 20].map(Number);
  const within = (value: number | undefined, most: number): value is number =>
    value !== undefined && value > 0 && value <= most;
  if (!values.help && within(people, 500) && within(minutes, 120) && within(servers, 4) && within(think, 600))
    return { people, minutes, servers, thinkMs: 1000 * think };
  console.log(use);
  return process.exit(values.help ? 0 : 2);
}

function line(name: string, { times, failed }: Timed): string {
  const middle = [...times].sort((a, b) => a - b)[times.length >> 1] ?? 0;
  return `${name.padEnd(18)} ${String(times.length).padStart(6)} done, median ${Math.round(middle)} ms, p95 ${Math.round(p95(times))} ms, ${failed.length} failed${failed[0] ? ` (${failed[0]})` : ""}`;
}

const failures = (all: readonly Timed[]): number => all.reduce((sum, { failed }) => sum + failed.length, 0);

async function onOne(people: number, minutes: number, thinkMs: number): Promise<boolean> {
  const server = await startServer();
  try {
    const { list, save, upload, mostBytes } = await load(server, { people, minutes, thinkMs });
    console.log(line("list", list));
    console.log(line("save", save));
    console.log(line("upload of 12 MP", upload));
    console.log(`most memory        ${Math.round(mostBytes / 2 ** 20)} MB`);
    return failures([list, save, upload]) === 0;
  } finally {
    await server.stop();
  }
}

async function onSeveral(count: number, people: number, minutes: number, thinkMs: number): Promise<boolean> {
  const servers = await startServers(count);
  try {
    const done = await workTogether(servers, { people, minutes, thinkMs, kill: true });
    const { list, make, save, upload, acknowledged, broken, down } = done;
    console.log(line("list", list));
    console.log(line("make", make));
    console.log(line("save", save));
    console.log(line("upload", upload));
    const [from, to] = (down ?? [0, 0]).map((at) => (at / 1000).toFixed(1));
    console.log(
      `one server away    from ${from} s to ${to} s; ${broken.length} connections broke, each tried again`,
    );
    const lost = await lostOf(servers, done);
    console.log(
      `acknowledged       ${acknowledged.length} beads; lost or wrong: ${lost.length} ${lost.slice(0, 5).join("; ")}`,
    );
    const statuses = await wrongCodes(servers, 40);
    const looked = statuses.filter((status) => status === 404).length;
    console.log(`wrong codes        ${looked} of 40 looked at, over all servers together (30 are allowed)`);
    return failures([list, make, save, upload]) === 0 && lost.length === 0 && looked === 30;
  } finally {
    await servers.stop();
  }
}

const { people, minutes, servers, thinkMs } = asked();
await buildApp();
const before = loadavg()[0]!;
console.log(
  `${people} people, ${minutes} minutes, ${servers} server(s), each thinking ${thinkMs / 1000} s between beads`,
);
const isGood =
  servers === 1 ? await onOne(people, minutes, thinkMs) : await onSeveral(servers, people, minutes, thinkMs);
// What else the machine did makes times longer, and is no fault of the server's.
console.log(`the machine's own load: ${before.toFixed(1)} before, ${loadavg()[0]!.toFixed(1)} at the end`);
process.exitCode = isGood ? 0 : 1;
