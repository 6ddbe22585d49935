import { setImmediate as turn } from "node:timers/promises";
import { issue } from "@/lib/base";
import { factsDiffer } from "@/lib/beads";
import type { Db } from "@/lib/db";
import type { ContentIssue } from "@/lib/ledger";

const SLICE = 100;

/**
 * Works out again what lists and figures say of each bead, and compares. These rows are derived: the log does not seal them,
 * and one that does not agree takes nothing from the bead; it is only what is shown of it that was wrong. A bead that
 * cannot be read is found by its state.
 */
export async function checkDerived(
  db: Db,
): Promise<{ readonly looked: number; readonly findings: readonly ContentIssue[] }> {
  const findings: ContentIssue[] = [];
  let looked = 0;
  for (let after = -1; ;) {
    const beads = await db.bead.findMany({
      where: { number: { gt: after } },
      orderBy: { number: "asc" },
      take: SLICE,
      select: { id: true, number: true },
    });
    for (const { id, number } of beads) {
      looked += 1;
      if (await factsDiffer(db, id).catch(() => false))
        findings.push(issue("facts-differ", [number], { number }));
    }
    const last = beads.at(-1);
    if (!last) return { looked, findings };
    after = last.number;
    await turn();
  }
}
