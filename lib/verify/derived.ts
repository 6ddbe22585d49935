import { issue } from "@/lib/base";
import { factsDiffering } from "@/lib/beads";
import { writeTogether, type Db } from "@/lib/db";
import type { ContentIssue } from "@/lib/ledger";
import { counter, type Walk } from "./walk";

/** Beads worked out between two steps. */
const SLICE = 50;

interface Numbered {
  readonly id: string;
  readonly number: number;
}

/**
 * Works out again what lists and figures say of each bead, and compares. These rows are derived: the log does not seal them,
 * and one that does not agree takes nothing from the bead; it is only what is shown of it that was wrong. A bead that
 * cannot be read is found by its state. Answers with how many beads it looked at.
 */
export async function* checkDerived(db: Db, only: ReadonlySet<string> | null = null): Walk<number> {
  const ids =
    only && [...only].flatMap((one) => (one.startsWith("bead:") ? [one.slice("bead:".length)] : []));
  const count = counter("lists and figures", ids?.length ?? (await db.bead.count()));
  for await (const beads of ids === null ? everyBead(db) : theseBeads(db, ids))
    yield count.step(beads.length, await differing(db, beads));
  yield count.end();
  return count.looked();
}

const wanted = { orderBy: { number: "asc" }, take: SLICE, select: { id: true, number: true } } as const;

async function* everyBead(db: Db): AsyncGenerator<readonly Numbered[]> {
  for (let after = -1; ;) {
    const beads = await db.bead.findMany({ where: { number: { gt: after } }, ...wanted });
    const last = beads.at(-1);
    if (!last) return;
    yield beads;
    after = last.number;
  }
}

async function* theseBeads(db: Db, ids: readonly string[]): AsyncGenerator<readonly Numbered[]> {
  for (let from = 0; from < ids.length; from += SLICE)
    yield await db.bead.findMany({ where: { id: { in: ids.slice(from, from + SLICE) } }, ...wanted });
}

/** Rows and beads are read one after the other, and others write in between: what differs is looked at while nobody does. */
async function differing(db: Db, beads: readonly Numbered[]): Promise<readonly ContentIssue[]> {
  const first = await factsDiffering(
    db,
    beads.map(({ id }) => id),
  );
  if (first.size === 0) return [];
  const still = await writeTogether(db, (tx) => factsDiffering(tx, [...first]));
  return beads
    .filter(({ id }) => still.has(id))
    .map(({ number }) => issue("facts-differ" as const, [number], { number }));
}
