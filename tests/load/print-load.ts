/**
 * `npm run load -- 50 10`: so many people for so many minutes on the built server, and how long they waited.
 * `npm run load:two -- 200 5`, which is `--servers 2`: on so many servers with one PostgreSQL and one bucket, behind one proxy;
 * one of them is killed half-way and started again. Then the book of all that was said yes to is compared with what is there.
 */
import { loadavg } from "node:os";
import { parseArgs } from "node:util";
import { buildApp } from "@/lib/cli/prepare.mjs";
import { wrongAfter } from "./book";
import { kinds, type Timed } from "./one-bead";
import { BENCH_PACE_S, load, loadGround, percentile } from "./people";
import { startServers } from "./servers";
import { workTogether, wrongCodes } from "./together";

/** So long after a server answers again a request may still hang on what was broken, ms. */
const AFTER_MS = 2000;

const use = `npm run -s load -- [--servers 2] [--people 50] [--minutes 10] [--pace ${BENCH_PACE_S}]     also: PEOPLE MINUTES
up to 500 people, 120 minutes, 4 servers; --pace: seconds from bead to bead, ${BENCH_PACE_S} as somebody at a bench needs`;

const text = { type: "string" } as const;

function asked() {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { servers: text, people: text, minutes: text, pace: text, help: { type: "boolean" } },
  });
  const [people, minutes] = [values.people ?? positionals[0], values.minutes ?? positionals[1]].map(Number);
  const servers = Number(values.servers ?? 1);
  const pace = Number(values.pace ?? BENCH_PACE_S);
  const within = (value: number | undefined, most: number): value is number =>
    value !== undefined && value > 0 && value <= most;
  if (!values.help && within(people, 500) && within(minutes, 120) && within(servers, 4) && within(pace, 3600))
    return { people, minutes, servers, paceMs: 1000 * pace };
  console.log(use);
  return process.exit(values.help ? 0 : 2);
}

const ms = (value: number): string => Math.round(value).toString().padStart(7);

function line(name: string, { times, failed }: Timed): string {
  const cells = [percentile(times, 50), percentile(times, 95), percentile(times, 100)].map(ms).join(" ");
  const why = failed[0] === undefined ? "" : `   ${failed[0]}`;
  return `${name.padEnd(18)} ${String(times.length).padStart(6)} ${cells} ${String(failed.length).padStart(7)}${why}`;
}

const lineHead = `${"ms".padEnd(18)} ${"done".padStart(6)} ${["p50", "p95", "max", "errors"].map((word) => word.padStart(7)).join(" ")}`;

const failures = (all: readonly Timed[]): number => all.reduce((sum, { failed }) => sum + failed.length, 0);

/** What is promised on two cores that do nothing else, ms. */
const goals = { list: 1000, upload: 5000 } as const;
const names = { list: "list", make: "make", upload: "upload of 12 MP", open: "open", save: "save" } as const;

async function onOne(people: number, minutes: number, paceMs: number): Promise<boolean> {
  const ground = await loadGround(people);
  try {
    const { timed, minutes: most } = await load(ground, { minutes, paceMs });
    console.log(lineHead);
    for (const kind of kinds) console.log(line(names[kind], timed[kind]));
    for (const kind of ["list", "upload"] as const) {
      const reached = percentile(timed[kind].times, 95);
      const met = reached <= goals[kind] ? "met" : "NOT MET";
      console.log(`${names[kind]}: p95 ${Math.round(reached)} ms, goal ${goals[kind]} ms: ${met}`);
    }
    const [first = 1] = most;
    for (const [minute, bytes] of most.entries())
      console.log(
        `minute ${String(minute + 1).padStart(3)}         most memory ${Math.round(bytes / 2 ** 20)} MB, ${(bytes / first).toFixed(2)} of the first minute's`,
      );
    return failures(Object.values(timed)) === 0;
  } finally {
    await ground.stop();
  }
}

async function onSeveral(count: number, people: number, minutes: number, paceMs: number): Promise<boolean> {
  const servers = await startServers(count, people);
  try {
    const { figures, book, broken, down } = await workTogether(servers, { minutes, paceMs, kill: true });
    console.log(lineHead);
    for (const kind of kinds) console.log(line(kind, figures[kind]));
    const [from, to] = down ?? [0, 0];
    const s = (at: number): string => (at / 1000).toFixed(1);
    console.log(`one server away    from ${s(from)} s to ${s(to)} s`);
    const elsewhen = broken.filter((at) => at < from || at > to + AFTER_MS);
    console.log(
      `connections        ${broken.length} broke, each was tried again; ${elsewhen.length} of them at any other time`,
    );
    const saves = book.flatMap((one) => one.saves).length;
    const photos = book.filter(({ sha256 }) => sha256 !== null).length;
    const beads = book.filter(({ number }) => number !== null).length;
    const wrong = await wrongAfter(servers, book);
    console.log(
      `said yes to        ${beads} beads, ${saves} saves, ${photos} photos; lost, twice or unsound: ${wrong.length} ${wrong.slice(0, 5).join("; ")}`,
    );
    const looked = (await wrongCodes(servers, 40)).filter((status) => status === 404).length;
    console.log(`wrong codes        ${looked} of 40 looked at, over all servers together (30 are allowed)`);
    const isQuiet = failures(Object.values(figures)) === 0 && elsewhen.length === 0;
    return isQuiet && wrong.length === 0 && looked === 30;
  } finally {
    await servers.stop();
  }
}

const { people, minutes, servers, paceMs } = asked();
await buildApp();
const before = loadavg()[0]!;
const rate = (people * 60_000) / paceMs;
console.log(
  `${people} people for ${minutes} minutes on ${servers} server(s), a bead each ${paceMs / 1000} s: ${rate.toFixed(1)} photos of the class a minute.`,
);
const isGood = await (servers === 1
  ? onOne(people, minutes, paceMs)
  : onSeveral(servers, people, minutes, paceMs));
// What else the machine did makes times longer, and is no fault of the server's.
console.log(`the machine's own load: ${before.toFixed(1)} before, ${loadavg()[0]!.toFixed(1)} at the end`);
process.exitCode = isGood ? 0 : 1;
