import { issue } from "@/lib/base";
import { factsDiffer } from "@/lib/beads";
import type { Db } from "@/lib/db";
import type { ContentIssue } from "@/lib/ledger";
import type { Looked } from "./photos";
import { step, type Watch } from "./watch";

const SLICE = 100;

/**
 * Works out again what lists and figures say of each bead, and compares. These rows are derived: the log does not seal them,
 * and one that does not agree takes nothing from the bead; it is only what is shown of it that was wrong. A bead that
 * cannot be read is found by its state.
 */
export async function checkDerived(
  db: Db,
  only: ReadonlySet<string> | null = null,
  watch: Watch = {},
): Promise<Looked> {
  const findings: ContentIssue[] = [];
  let looked = 0;
  const ids =
    only && [...only].flatMap((one) => (one.startsWith("bead:") ? [one.slice("bead:".length)] : []));
  for (let after = -1; ;) {
    const beads = await db.bead.findMany({
      where: { number: { gt: after }, ...(ids && { id: { in: ids.slice(0, SLICE) } }) },
      orderBy: { number: "asc" },
      take: SLICE,
      select: { id: true, number: true },
    });
    for (const { id, number } of beads) {
      looked += 1;
      if (await factsDiffer(db, id).catch(() => false))
        findings.push(issue("facts-differ", [number], { number }));
    }
    await step(watch, "lists and figures", looked);
    const last = beads.at(-1);
    if (ids) ids.splice(0, SLICE);
    if (ids ? ids.length === 0 : !last) return { looked, findings };
    if (!ids) after = last?.number ?? after;
  }
}
