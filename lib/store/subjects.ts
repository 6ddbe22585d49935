import { invariant } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";

/** A frozen row with the signature over it. Where there is none nothing is added: what was sealed before keys stays so. */
async function withSignature<R extends object>(
  tx: Tx,
  subject: string,
  row: R | null,
): Promise<object | null> {
  const signature = row && (await tx.keySignature.findUnique({ where: { subject } }));
  return signature ? { ...row, signature } : row;
}

/** A row without a column that came later, where nothing stands in it: what was sealed before that column stays as it was. */
function withoutEmpty<R extends object>(row: R | null, column: keyof R): object | null {
  if (row === null || row[column] !== null) return row;
  const { [column]: _empty, ...rest } = row;
  return rest;
}

/** Everything whose every change is logged, and how its state is read: all its columns but `updatedAt`. */
const readers = {
  bead: {
    one: (tx: Tx, id: string) =>
      tx.bead.findUnique({ where: { id }, include: { photos: { orderBy: { id: "asc" } } } }),
    ids: (tx: Tx) => tx.bead.findMany({ select: { id: true } }),
  },
  "deleted-bead": {
    one: (tx: Tx, id: string) => tx.deletedBead.findUnique({ where: { id } }),
    ids: (tx: Tx) => tx.deletedBead.findMany({ select: { id: true } }),
  },
  setup: {
    one: async (tx: Tx, id: string) =>
      withoutEmpty(await tx.savedSetup.findUnique({ where: { id } }), "ownerId"),
    ids: (tx: Tx) => tx.savedSetup.findMany({ select: { id: true } }),
  },
  setting: {
    one: (tx: Tx, id: string) => tx.setting.findUnique({ where: { key: id } }),
    ids: async (tx: Tx) =>
      (await tx.setting.findMany({ select: { key: true } })).map(({ key }) => ({ id: key })),
  },
  person: {
    one: (tx: Tx, id: string) => tx.person.findUnique({ where: { id } }),
    ids: (tx: Tx) => tx.person.findMany({ select: { id: true } }),
  },
  group: {
    one: (tx: Tx, id: string) =>
      tx.group.findUnique({ where: { id }, include: { members: { orderBy: { personId: "asc" } } } }),
    ids: (tx: Tx) => tx.group.findMany({ select: { id: true } }),
  },
  exercise: {
    one: async (tx: Tx, id: string) =>
      withoutEmpty(await tx.exercise.findUnique({ where: { id } }), "codeSince"),
    ids: (tx: Tx) => tx.exercise.findMany({ select: { id: true } }),
  },
  "hand-in": {
    one: (tx: Tx, id: string) => tx.handIn.findUnique({ where: { id } }),
    ids: (tx: Tx) => tx.handIn.findMany({ select: { id: true } }),
  },
  feedback: {
    one: async (tx: Tx, id: string) =>
      withSignature(tx, `feedback:${id}`, await tx.feedback.findUnique({ where: { handInId: id } })),
    ids: async (tx: Tx) =>
      (await tx.feedback.findMany({ select: { handInId: true } })).map(({ handInId }) => ({ id: handInId })),
  },
  phrase: {
    one: (tx: Tx, id: string) => tx.phrase.findUnique({ where: { id } }),
    ids: (tx: Tx) => tx.phrase.findMany({ select: { id: true } }),
  },
  criteria: {
    one: (tx: Tx, id: string) => tx.shopCriteria.findUnique({ where: { id } }),
    ids: (tx: Tx) => tx.shopCriteria.findMany({ select: { id: true } }),
  },
  instrument: {
    one: (tx: Tx, id: string) => tx.instrument.findUnique({ where: { id } }),
    ids: (tx: Tx) => tx.instrument.findMany({ select: { id: true } }),
  },
  job: {
    one: (tx: Tx, id: string) => tx.job.findUnique({ where: { id } }),
    ids: (tx: Tx) => tx.job.findMany({ select: { id: true } }),
  },
  inspection: {
    one: (tx: Tx, id: string) => tx.inspection.findUnique({ where: { id } }),
    ids: (tx: Tx) => tx.inspection.findMany({ select: { id: true } }),
  },
  signed: {
    one: async (tx: Tx, id: string) =>
      withSignature(tx, `signed:${id}`, await tx.signedRevision.findUnique({ where: { id } })),
    ids: (tx: Tx) => tx.signedRevision.findMany({ select: { id: true } }),
  },
  key: {
    one: (tx: Tx, id: string) =>
      tx.signingKey.findUnique({
        where: { id },
        include: { events: { orderBy: { id: "asc" } }, sealed: true },
      }),
    ids: (tx: Tx) => tx.signingKey.findMany({ select: { id: true } }),
  },
  // The signature over an entry of the log, by the number of that entry.
  checkpoint: {
    one: (tx: Tx, id: string) => tx.keySignature.findUnique({ where: { subject: `log:${id}` } }),
    ids: async (tx: Tx) =>
      (
        await tx.keySignature.findMany({
          where: { subject: { startsWith: "log:" } },
          select: { subject: true },
        })
      ).map(({ subject }) => ({ id: subject.slice("log:".length) })),
  },
  filter: {
    one: (tx: Tx, id: string) => tx.savedFilter.findUnique({ where: { id } }),
    ids: (tx: Tx) => tx.savedFilter.findMany({ select: { id: true } }),
  },
} as const;

export type SubjectKind = keyof typeof readers;

/** "bead:ID" */
export const subjectOf = (kind: SubjectKind, id: string): string => `${kind}:${id}`;

/** A subject's present state as plain JSON; null when it is not there. Throws on a kind that is none. */
export async function subjectState(tx: Tx, subject: string): Promise<unknown> {
  const [kind = "", ...rest] = subject.split(":");
  invariant(Object.hasOwn(readers, kind), `${subject} is of no logged kind`);
  const row: unknown = await readers[kind as SubjectKind].one(tx, rest.join(":"));
  if (row === null) return null;
  return JSON.parse(JSON.stringify(row, plain));
}

/**
 * Through JSON, so that dates are texts. `updatedAt` moves with every write and says nothing of its own. A date that is
 * none would become null without a word, as if nothing had been there.
 */
function plain(this: Record<string, unknown>, key: string, value: unknown): unknown {
  const raw = this[key];
  invariant(!(raw instanceof Date) || !Number.isNaN(raw.getTime()), `${key} is no date`);
  return key === "updatedAt" ? undefined : value;
}

/** Every subject there is now. */
export async function allSubjects(db: Db | Tx): Promise<readonly string[]> {
  const kinds = Object.entries(readers) as [SubjectKind, { ids: (tx: Tx) => Promise<{ id: string }[]> }][];
  const found: string[] = [];
  for (const [kind, { ids }] of kinds) for (const { id } of await ids(db)) found.push(subjectOf(kind, id));
  return found;
}
