import type { Db } from "@/lib/db";
import { readRevision } from "@/lib/inspect";
import type { FrozenRow } from "@/lib/keys";
import { sha256Text } from "@/lib/store";

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

/** How many frozen texts there are; of `only` at most so many. */
export async function countFrozen(db: Db, only: ReadonlySet<string> | null): Promise<number> {
  if (only !== null) return [...only].filter((one) => /^(signed|feedback):/.test(one)).length;
  return (
    (await db.signedRevision.count()) + (await db.feedback.count({ where: { returned: { not: null } } }))
  );
}

/** Those of these subjects under which a frozen text lies. */
export async function frozenAmong(db: Db, subjects: readonly string[]): Promise<ReadonlySet<string>> {
  const idsOf = (kind: string) =>
    subjects.flatMap((one) => (one.startsWith(`${kind}:`) ? [one.slice(kind.length + 1)] : []));
  const signed = await db.signedRevision.findMany({
    where: { id: { in: idsOf("signed") } },
    select: { id: true },
  });
  const returned = await db.feedback.findMany({
    where: { returned: { not: null }, handInId: { in: idsOf("feedback") } },
    select: { handInId: true },
  });
  return new Set([
    ...signed.map(({ id }) => `signed:${id}`),
    ...returned.map(({ handInId }) => `feedback:${handInId}`),
  ]);
}
