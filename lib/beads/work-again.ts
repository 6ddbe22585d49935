import { setTimeout as pause } from "node:timers/promises";
import { change, dialect, rowsOf, sql, writeTogether, type Db, type Sql } from "@/lib/db";
import { assessContext } from "@/lib/shop";
import { keepFacts } from "./keep-facts";
import { readBead } from "./read-bead";
import { staleFacts, unreadableStamp } from "./stale";

/** Beads in one slice: some 30 ms of work, so that a request in between waits no longer than that. */
const SLICE = 5;
const REST_MS = 20;
const WALK_MS = 400;

interface Wanted {
  /** Numbers of beads that are on somebody's screen. */
  readonly first: readonly number[];
  /** Numbers that could not be worked out: a row that nobody can read stays stale, and must not hold up the others. */
  readonly without: ReadonlySet<number>;
}

async function numbersWhere(db: Db, where: Sql, most: number): Promise<readonly number[]> {
  const rows = await rowsOf<{ number: unknown }>(
    db,
    sql`SELECT "number" FROM "BeadFacts" WHERE ${where} LIMIT ${most}`,
  );
  return rows.map(({ number }) => dialect.numberOut(number));
}

interface Slice {
  readonly numbers: readonly number[];
  /** Their advice alone is stale, and on nobody's screen: there is no hurry. */
  readonly adviceAlone: boolean;
}

/**
 * The beads to work out next: those on screen, then any that are stale, last those whose advice alone is. The last are all
 * beads whenever a cause is confirmed, so they are taken at a walk.
 */
async function nextOnes(db: Db, { first, without }: Wanted, weighedBy: string): Promise<Slice> {
  const weighedElse = sql`("weighedBy" < ${weighedBy} OR "weighedBy" > ${weighedBy})`;
  const onScreen = dialect.isOneOf(sql`"number"`, first);
  const left = without.size === 0 ? sql`1 = 1` : sql`NOT (${dialect.isOneOf(sql`"number"`, [...without])})`;
  const asked = [
    ...(first.length > 0 ? [sql`${onScreen} AND (${staleFacts()} OR ${weighedElse}) AND ${left}`] : []),
    sql`${staleFacts()} AND ${left}`,
  ];
  for (const where of asked) {
    const numbers = await numbersWhere(db, where, SLICE);
    if (numbers.length > 0) return { numbers, adviceAlone: false };
  }
  return { numbers: await numbersWhere(db, sql`${weighedElse} AND ${left}`, SLICE), adviceAlone: true };
}

interface Worked {
  readonly done: number[];
  readonly failed: number[];
  readonly adviceAlone: boolean;
}

/** Works out one slice, a transaction for each bead. Says which numbers it did, and which it could not do. */
async function workSlice(db: Db, wanted: Wanted): Promise<Worked> {
  const { weighedBy } = await assessContext(db, []);
  const [done, failed]: [number[], number[]] = [[], []];
  const { numbers, adviceAlone } = await nextOnes(db, wanted, weighedBy);
  for (const number of numbers) {
    const kept = await keepNumbered(db, number).catch(() => false);
    (kept ? done : failed).push(number);
  }
  return { done, failed, adviceAlone };
}

async function keepNumbered(db: Db, number: number): Promise<boolean> {
  return writeTogether(db, async (tx) => {
    const bead = await tx.bead.findUnique({ where: { number }, select: { id: true } });
    if (!bead) return false;
    if ((await readBead(tx, bead.id)) === "unreadable") {
      await change(tx, sql`UPDATE "BeadFacts" SET "stamp" = ${unreadableStamp()} WHERE "number" = ${number}`);
      return false;
    }
    await keepFacts(tx, bead.id);
    return true;
  });
}

/** Works out everything that is stale. Says of how many beads it did, and of which it could not. */
export async function workAgain(
  db: Db,
  first: Iterable<number> = [],
  rest: (hurry: boolean) => Promise<unknown> = () => Promise.resolve(),
): Promise<{ readonly done: number; readonly failed: readonly number[] }> {
  const without = new Set<number>();
  for (let count = 0; ;) {
    const { done, failed, adviceAlone } = await workSlice(db, { first: [...first], without });
    if (done.length + failed.length === 0) return { done: count, failed: [...without] };
    for (const number of failed) without.add(number);
    count += done.length;
    await rest(!adviceAlone);
  }
}

/** Works out these beads now, for whoever cannot do without: a page of one person's beads, some of a class. */
export async function workNow(db: Db, numbers: readonly number[]): Promise<void> {
  for (const number of numbers) await keepNumbered(db, number).catch(() => false);
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

function restInLine(hurry: boolean): Promise<unknown> {
  const all = workers();
  all.rest = all.rest.then(() => pause(hurry ? REST_MS : WALK_MS, null, { ref: false }));
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
