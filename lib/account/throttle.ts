import { createHash } from "node:crypto";
import type { Db } from "@/lib/db";
import type { Limit } from "./limits";

export interface Throttle {
  /** Seconds this one has to wait before the next try; 0: none. `now`: ms. Counts nothing. */
  waitSeconds(db: Db, who: string, now: number): Promise<number>;
  /** One more try of this one if it may: 0. Else nothing is counted: the seconds it has to wait. */
  take(db: Db, who: string, now: number): Promise<number>;
  /** One more try of this one, whether it may or not. */
  count(db: Db, who: string, now: number): Promise<void>;
  /** Takes back the try counted at this time: it was none after all. */
  giveBack(db: Db, who: string, at: number): Promise<void>;
  /** Its tries no longer count. */
  forget(db: Db, who: string): Promise<void>;
  /** Of how many it keeps something. */
  kept(db: Db): Promise<number>;
}

/** Rows that are cleared away at once at most. */
const SWEPT = 500;

interface Row {
  readonly id: string;
  readonly kind: string;
  readonly times: string;
  readonly until: Date;
}

interface Spec extends Limit {
  readonly kind: string;
  readonly most: number;
}

/**
 * At most `allowed` tries in any `windowMs`, for each who, counted by all servers of one database together. `kind`: its name,
 * of no other throttle. Bounded in every way: by the times kept of one, by `most` who, of which the one that tried longest ago
 * goes first, and by time.
 */
export function makeThrottle(kind: string, limit: Limit, most = 5000): Throttle {
  const spec = { ...limit, kind, most };
  const { allowed } = limit;
  return {
    async waitSeconds(db, who, now) {
      const row = await db.tries.findUnique({ where: { id: idOf(kind, who) } });
      return waitOf(spec, recentOf(spec, row?.times ?? "", now), now);
    },
    async take(db, who, now) {
      let seconds = 0;
      await change(spec, db, who, now, (recent) => {
        seconds = waitOf(spec, recent, now);
        return seconds > 0 ? null : [...recent, now].slice(-allowed);
      });
      return seconds;
    },
    count: (db, who, now) => change(spec, db, who, now, (recent) => [...recent, now].slice(-allowed)),
    giveBack: (db, who, at) =>
      change(spec, db, who, at, (recent) => {
        const index = recent.indexOf(at);
        return index < 0 ? null : recent.toSpliced(index, 1);
      }),
    async forget(db, who) {
      await db.tries.deleteMany({ where: { id: idOf(kind, who) } });
    },
    kept: (db) => db.tries.count({ where: { kind } }),
  };
}

const idOf = (kind: string, who: string): string =>
  createHash("sha256").update(`${kind}\0${who}`).digest("base64url");

const recentOf = ({ windowMs }: Spec, times: string, now: number): readonly number[] =>
  (times === "" ? [] : times.split(",").map(Number)).filter((at) => now - at < windowMs);

/** Enough of them must have left the window that one more is within what is allowed. */
function waitOf({ allowed, windowMs }: Spec, recent: readonly number[], now: number): number {
  const blocking = recent[recent.length - allowed];
  return blocking === undefined ? 0 : Math.ceil((windowMs - (now - blocking)) / 1000);
}

/**
 * What is kept of one becomes what `next` says; null: it stays. Neither transaction nor lock: a row is changed only if it is
 * still what was read of it, else it is read again. Of those who meet, one gets through each time.
 */
async function change(
  spec: Spec,
  db: Db,
  who: string,
  now: number,
  next: (recent: readonly number[]) => readonly number[] | null,
): Promise<void> {
  const id = idOf(spec.kind, who);
  for (;;) {
    const row = await db.tries.findUnique({ where: { id } });
    const times = next(recentOf(spec, row?.times ?? "", now));
    if (times === null) return;
    const data = { times: times.join(","), until: new Date(Math.max(0, ...times) + spec.windowMs) };
    const done =
      row === null ? await make(spec, db, { id, ...data }, now) : await swap(db, id, row.times, data);
    if (done) return;
  }
}

/** Whether there was none before, and now is this one. */
async function make({ kind, most }: Spec, db: Db, row: Omit<Row, "kind">, now: number): Promise<boolean> {
  try {
    await db.tries.create({ data: { ...row, kind } });
  } catch (error) {
    if ((error as { code?: unknown } | null)?.code === "P2002") return false;
    throw error;
  }
  await sweep(db, kind, most, now);
  return true;
}

/** Whether the row was still what was read of it, and is now the other. */
async function swap(db: Db, id: string, times: string, data: Pick<Row, "times" | "until">): Promise<boolean> {
  const { count } = await db.tries.updateMany({ where: { id, times }, data });
  return count === 1;
}

/** What no longer counts goes, of any throttle; and of this one whoever is beyond `most`. */
async function sweep(db: Db, kind: string, most: number, now: number): Promise<void> {
  await db.tries.deleteMany({ where: { until: { lte: new Date(now) } } });
  const beyond = await db.tries.findMany({
    where: { kind },
    orderBy: [{ until: "desc" }, { id: "desc" }],
    ...{ skip: most, take: SWEPT, select: { id: true } },
  });
  if (beyond.length > 0) await db.tries.deleteMany({ where: { id: { in: beyond.map(({ id }) => id) } } });
}

export type Counter = readonly [throttle: Throttle, who: string];

/**
 * One more try by every counter, or by none: 0, or the longest wait that one of them names. Whoever has to wait costs a look
 * and no writing.
 */
export async function takeAll(db: Db, counters: readonly Counter[], now: number): Promise<number> {
  const waits = await Promise.all(counters.map(([throttle, who]) => throttle.waitSeconds(db, who, now)));
  const longest = Math.max(0, ...waits);
  if (longest > 0) return longest;
  for (const [i, [throttle, who]] of counters.entries()) {
    const seconds = await throttle.take(db, who, now);
    if (seconds === 0) continue;
    await giveBackAll(db, counters.slice(0, i), now);
    return seconds;
  }
  return 0;
}

/** Takes back what `takeAll` counted at this time. */
export async function giveBackAll(db: Db, counters: readonly Counter[], at: number): Promise<void> {
  for (const [throttle, who] of counters) await throttle.giveBack(db, who, at);
}
