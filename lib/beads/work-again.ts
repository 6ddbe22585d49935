import { performance } from "node:perf_hooks";
import { setTimeout as pause } from "node:timers/promises";
import { change, dialect, rowsOf, sql, writeTogether, type Db, type Sql, type Tx } from "@/lib/db";
import { assessContext } from "@/lib/shop";
import { keepFacts } from "./keep-facts";
import { readBead } from "./read-bead";
import { staleFacts, unreadableStamp } from "./stale";

/** Beads in one slice: some 30 ms of work, so that a request in between, and whoever saves, waits no longer than that. */
const SLICE = 5;
const REST_MS = 20;
const WALK_MS = 400;
/** Of the time of a process that is busy, what nobody looks at takes one part in so many: whoever opens a page has the rest. */
const SHARE = 3;

/** How soon somebody needs it: it is on a screen, it is stale, or its advice alone is. */
type Pace = "now" | "soon" | "some day";

/** ms: at least so long, and up to so long while the process is busy with other things. */
export interface Rest {
  readonly least: number;
  readonly most: number;
}

/** How long to rest after a slice that took so long, ms. */
export function restAfter(pace: Pace, tookMs: number): Rest {
  const least = pace === "some day" ? WALK_MS : REST_MS;
  return { least, most: pace === "now" ? least : Math.max(least, (SHARE - 1) * tookMs) };
}

interface Wanted {
  /** Numbers of beads that are on somebody's screen. */
  readonly first: readonly number[];
  /** Numbers that could not be worked out: a row that nobody can read stays stale, and must not hold up the others. */
  readonly without: ReadonlySet<number>;
}

async function numbersWhere(db: Tx, where: Sql, most: number): Promise<readonly number[]> {
  const rows = await rowsOf<{ number: unknown }>(
    db,
    sql`SELECT "number" FROM "BeadFacts" WHERE ${where} LIMIT ${most}`,
  );
  return rows.map(({ number }) => dialect.numberOut(number));
}

interface Slice {
  readonly numbers: readonly number[];
  readonly pace: Pace;
}

/**
 * The beads to work out next: those on screen, then any that are stale, last those whose advice alone is. The last are all
 * beads whenever a cause is confirmed, so they are taken at a walk.
 */
async function nextOnes(db: Tx, { first, without }: Wanted, weighedBy: string, most: number): Promise<Slice> {
  const weighedElse = sql`("weighedBy" < ${weighedBy} OR "weighedBy" > ${weighedBy})`;
  const onScreen = dialect.isOneOf(sql`"number"`, first);
  const left = without.size === 0 ? sql`1 = 1` : sql`NOT (${dialect.isOneOf(sql`"number"`, [...without])})`;
  const asked: (readonly [Pace, Sql])[] = [
    ["soon", sql`${staleFacts()} AND ${left}`],
    ["some day", sql`${weighedElse} AND ${left}`],
  ];
  if (first.length > 0)
    asked.unshift(["now", sql`${onScreen} AND (${staleFacts()} OR ${weighedElse}) AND ${left}`]);
  for (const [pace, where] of asked) {
    const numbers = await numbersWhere(db, where, most);
    if (numbers.length > 0) return { numbers, pace };
  }
  return { numbers: [], pace: "some day" };
}

interface Worked {
  readonly done: number[];
  readonly failed: number[];
  readonly pace: Pace;
}

/**
 * Chooses one slice and works it out, in one transaction: as writers stand in line, whoever else works on this database
 * chooses after it, from what is stale then. So several servers share the work and none does a bead that another did; of a
 * server that ends in between nothing is left, and the next one chooses its beads. Says which numbers it did, and which it
 * could not do. Throws where the store does not answer.
 */
async function workSlice(db: Db, wanted: Wanted, most = SLICE): Promise<Worked> {
  let chosen: Slice = { numbers: [], pace: "soon" };
  try {
    return await writeTogether(db, async (tx) => {
      const { weighedBy } = await assessContext(tx, []);
      chosen = await nextOnes(tx, wanted, weighedBy, most);
      const [done, failed]: [number[], number[]] = [[], []];
      for (const number of chosen.numbers) ((await keepNumbered(tx, number)) ? done : failed).push(number);
      return { done, failed, pace: chosen.pace };
    });
  } catch (error) {
    const { numbers, pace } = chosen;
    if (numbers.length === 0) throw error;
    // One that cannot be worked out takes back those beside it: then each goes by itself.
    return numbers.length > 1 ? workSlice(db, wanted, 1) : { done: [], failed: [...numbers], pace };
  }
}

async function keepNumbered(tx: Tx, number: number): Promise<boolean> {
  const bead = await tx.bead.findUnique({ where: { number }, select: { id: true } });
  if (!bead) return false;
  if ((await readBead(tx, bead.id)) === "unreadable") {
    await change(tx, sql`UPDATE "BeadFacts" SET "stamp" = ${unreadableStamp()} WHERE "number" = ${number}`);
    return false;
  }
  await keepFacts(tx, bead.id);
  return true;
}

/** Works out everything that is stale. Says of how many beads it did, and of which it could not. */
export async function workAgain(
  db: Db,
  first: Iterable<number> = [],
  rest: (rest: Rest) => Promise<unknown> = () => Promise.resolve(),
): Promise<{ readonly done: number; readonly failed: readonly number[] }> {
  const without = new Set<number>();
  for (let count = 0; ;) {
    const began = performance.now();
    const { done, failed, pace } = await workSlice(db, { first: [...first], without });
    if (done.length + failed.length === 0) return { done: count, failed: [...without] };
    for (const number of failed) without.add(number);
    count += done.length;
    await rest(restAfter(pace, performance.now() - began));
  }
}

/** Works out these beads now, for whoever cannot do without: a page of one person's beads, some of a class. */
export async function workNow(db: Db, numbers: readonly number[]): Promise<void> {
  for (const number of numbers) await writeTogether(db, (tx) => keepNumbered(tx, number)).catch(() => false);
}

interface Worker {
  working: boolean;
  readonly first: Set<number>;
}
interface Workers {
  readonly of: WeakMap<Db, Worker>;
  /** The last rest that was asked for. */
  rest: Promise<unknown>;
}

/**
 * One worker for each database. What is on screen is added to it while it works. They rest one after the other, so that
 * those of a hundred sites together take no more of the process than one.
 */
const shared = globalThis as { toelineWorkers?: Workers };
const workers = (): Workers => (shared.toelineWorkers ??= { of: new WeakMap(), rest: Promise.resolve() });

function workerOf(db: Db): Worker {
  const there = workers().of.get(db) ?? { working: false, first: new Set() };
  workers().of.set(db, there);
  return there;
}

const breath = (ms: number): Promise<unknown> => pause(ms, null, { ref: false });

/** Whether this process did other things for half of the time in which `wait` waits. Nothing of ours is done then. */
async function isBusyWhile(wait: () => Promise<unknown>): Promise<boolean> {
  const before = performance.eventLoopUtilization();
  await wait();
  return performance.eventLoopUtilization(before).utilization > 0.5;
}

async function restBusy({ least, most }: Rest): Promise<void> {
  const until = performance.now() + most;
  let busy = await isBusyWhile(() => breath(least));
  while (busy && performance.now() < until) busy = await isBusyWhile(() => breath(REST_MS));
}

function restInLine(rest: Rest): Promise<unknown> {
  const all = workers();
  all.rest = all.rest.then(() => restBusy(rest));
  return all.rest;
}

/**
 * Works out what is stale without anybody waiting for it: in slices with rests, first the beads of these numbers. The
 * next request that meets a stale row starts it again where it was stopped by a store that did not answer.
 */
export function workInBackground(db: Db, first: readonly number[] = []): void {
  const state = workerOf(db);
  for (const number of first) state.first.add(number);
  if (state.working) return;
  state.working = true;
  void workAgain(db, state.first, restInLine)
    .catch(() => null)
    .finally(() => {
      state.working = false;
      state.first.clear();
    });
}
