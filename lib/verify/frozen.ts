import { issue } from "@/lib/base";
import type { Db } from "@/lib/db";
import { readRevision } from "@/lib/inspect";
import type { FrozenRow } from "@/lib/keys";
import { sha256Text } from "@/lib/store";
import type { Looked } from "./photos";
import { step, type Watch } from "./watch";

/** Frozen texts read at once: a signed record with many welds is long. */
const SLICE = 20;

/** Frozen texts as their rows say them, slice by slice; of `only` those alone. */
export async function* frozenSlices(
  db: Db,
  only: ReadonlySet<string> | null,
): AsyncGenerator<readonly FrozenRow[]> {
  const idsOf = (kind: string) =>
    only && [...only].flatMap((one) => (one.startsWith(`${kind}:`) ? [one.slice(kind.length + 1)] : []));
  for (let after = "", ids = idsOf("signed"); ;) {
    const where = { id: { gt: after, ...(ids && { in: ids }) } };
    const rows = await db.signedRevision.findMany({ where, orderBy: { id: "asc" }, take: SLICE });
    if (rows.length > 0) yield rows.map(signedRow);
    if (rows.length < SLICE) break;
    after = rows.at(-1)?.id ?? "";
  }
  for (let after = "", ids = idsOf("feedback"); ;) {
    const rows = await db.feedback.findMany({
      where: { returned: { not: null }, handInId: { gt: after, ...(ids && { in: ids }) } },
      orderBy: { handInId: "asc" },
      take: SLICE,
      select: { handInId: true, returned: true, digest: true },
    });
    if (rows.length > 0) yield rows.map(feedbackRow);
    if (rows.length < SLICE) return;
    after = rows.at(-1)?.handInId ?? "";
  }
}

function signedRow(row: Parameters<typeof readRevision>[0]): FrozenRow {
  const { claimed, signerId, sound } = readRevision(row, sha256Text(row.content));
  return { ...claimed, signerId, sound };
}

function feedbackRow(row: {
  readonly handInId: string;
  readonly returned: string | null;
  readonly digest: string | null;
}): FrozenRow {
  return {
    subject: `feedback:${row.handInId}`,
    digest: row.digest ?? "",
    keyId: null,
    signerId: null,
    sound: sha256Text(row.returned ?? "") === row.digest ? "sound" : "text-changed",
  };
}

/** Whether each text that was frozen still has its digest. */
export async function checkFrozen(
  db: Db,
  only: ReadonlySet<string> | null = null,
  watch: Watch = {},
): Promise<Looked> {
  let looked = 0;
  const changed: string[] = [];
  for await (const rows of frozenSlices(db, only)) {
    looked += rows.length;
    changed.push(...rows.filter(({ sound }) => sound === "text-changed").map(({ subject }) => subject));
    await step(watch, "frozen texts", looked);
  }
  return {
    looked,
    findings: changed.map((subject) => issue("text-changed" as const, [subject], { subject })),
  };
}
