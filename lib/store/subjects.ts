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

/** So many ids behind one of them, in order. */
interface Slice {
  readonly take: number;
  readonly after: string;
}

const byId = ({ take, after }: Slice) =>
  ({ select: { id: true }, where: { id: { gt: after } }, orderBy: { id: "asc" }, take }) as const;

/** Columns that came after rows were sealed: out of the state while nothing is in them, so that old seals hold. */
function unlessSet<R extends object>(row: R | null, later: readonly (keyof R)[]): object | null {
  if (row === null) return null;
  return Object.fromEntries(
    Object.entries(row).filter(([key, value]) => value !== null || !later.includes(key as keyof R)),
  );
}

/** Everything whose every change is logged, and how its state is read: all its columns but `updatedAt`. */
const readers = {
  bead: {
    one: (tx: Tx, id: string) =>
      tx.bead.findUnique({ where: { id }, include: { photos: { orderBy: { id: "asc" } } } }),
    ids: (tx: Tx, slice: Slice) => tx.bead.findMany(byId(slice)),
  },
  "deleted-bead": {
    one: (tx: Tx, id: string) => tx.deletedBead.findUnique({ where: { id } }),
    ids: (tx: Tx, slice: Slice) => tx.deletedBead.findMany(byId(slice)),
  },
  setup: {
    one: async (tx: Tx, id: string) =>
      unlessSet(await tx.savedSetup.findUnique({ where: { id } }), ["ownerId", "earlier"]),
    ids: (tx: Tx, slice: Slice) => tx.savedSetup.findMany(byId(slice)),
  },
  setting: {
    one: (tx: Tx, id: string) => tx.setting.findUnique({ where: { key: id } }),
    ids: async (tx: Tx, { take, after }: Slice) =>
      (
        await tx.setting.findMany({
          ...{ select: { key: true }, where: { key: { gt: after } } },
          ...{ orderBy: { key: "asc" }, take },
        })
      ).map(({ key }) => ({ id: key })),
  },
  person: {
    one: async (tx: Tx, id: string) => unlessSet(await tx.person.findUnique({ where: { id } }), ["also"]),
    ids: (tx: Tx, slice: Slice) => tx.person.findMany(byId(slice)),
  },
  group: {
    one: (tx: Tx, id: string) =>
      tx.group.findUnique({ where: { id }, include: { members: { orderBy: { personId: "asc" } } } }),
    ids: (tx: Tx, slice: Slice) => tx.group.findMany(byId(slice)),
  },
  exercise: {
    one: async (tx: Tx, id: string) =>
      unlessSet(await tx.exercise.findUnique({ where: { id } }), ["codeSince"]),
    ids: (tx: Tx, slice: Slice) => tx.exercise.findMany(byId(slice)),
  },
  "hand-in": {
    one: (tx: Tx, id: string) => tx.handIn.findUnique({ where: { id } }),
    ids: (tx: Tx, slice: Slice) => tx.handIn.findMany(byId(slice)),
  },
  feedback: {
    one: async (tx: Tx, id: string) =>
      withSignature(
        tx,
        `feedback:${id}`,
        unlessSet(await tx.feedback.findUnique({ where: { handInId: id } }), ["seenAt"]),
      ),
    ids: async (tx: Tx, { take, after }: Slice) =>
      (
        await tx.feedback.findMany({
          ...{ select: { handInId: true }, where: { handInId: { gt: after } } },
          ...{ orderBy: { handInId: "asc" }, take },
        })
      ).map(({ handInId }) => ({ id: handInId })),
  },
  phrase: {
    one: async (tx: Tx, id: string) => unlessSet(await tx.phrase.findUnique({ where: { id } }), ["ownerId"]),
    ids: (tx: Tx, slice: Slice) => tx.phrase.findMany(byId(slice)),
  },
  eye: {
    one: (tx: Tx, id: string) => tx.eyeRound.findUnique({ where: { id } }),
    ids: (tx: Tx, slice: Slice) => tx.eyeRound.findMany(byId(slice)),
  },
  criteria: {
    one: (tx: Tx, id: string) => tx.shopCriteria.findUnique({ where: { id } }),
    ids: (tx: Tx, slice: Slice) => tx.shopCriteria.findMany(byId(slice)),
  },
  instrument: {
    one: (tx: Tx, id: string) => tx.instrument.findUnique({ where: { id } }),
    ids: (tx: Tx, slice: Slice) => tx.instrument.findMany(byId(slice)),
  },
  study: {
    one: (tx: Tx, id: string) => tx.gaugeStudy.findUnique({ where: { id } }),
    ids: (tx: Tx, slice: Slice) => tx.gaugeStudy.findMany(byId(slice)),
  },
  job: {
    one: (tx: Tx, id: string) => tx.job.findUnique({ where: { id } }),
    ids: (tx: Tx, slice: Slice) => tx.job.findMany(byId(slice)),
  },
  inspection: {
    one: (tx: Tx, id: string) => tx.inspection.findUnique({ where: { id } }),
    ids: (tx: Tx, slice: Slice) => tx.inspection.findMany(byId(slice)),
  },
  signed: {
    one: async (tx: Tx, id: string) =>
      withSignature(tx, `signed:${id}`, await tx.signedRevision.findUnique({ where: { id } })),
    ids: (tx: Tx, slice: Slice) => tx.signedRevision.findMany(byId(slice)),
  },
  trial: {
    one: (tx: Tx, id: string) =>
      tx.trial.findUnique({ where: { id }, include: { runs: { orderBy: { place: "asc" } } } }),
    ids: (tx: Tx, slice: Slice) => tx.trial.findMany(byId(slice)),
  },
  card: {
    one: (tx: Tx, id: string) =>
      tx.procedureCard.findUnique({ where: { id }, include: { beads: { orderBy: { beadId: "asc" } } } }),
    ids: (tx: Tx, slice: Slice) => tx.procedureCard.findMany(byId(slice)),
  },
  key: {
    one: (tx: Tx, id: string) =>
      tx.signingKey.findUnique({
        where: { id },
        include: { events: { orderBy: { id: "asc" } }, sealed: true },
      }),
    ids: (tx: Tx, slice: Slice) => tx.signingKey.findMany(byId(slice)),
  },
  // The signature over an entry of the log, by the number of that entry.
  checkpoint: {
    one: (tx: Tx, id: string) => tx.keySignature.findUnique({ where: { subject: `log:${id}` } }),
    ids: async (tx: Tx, { take, after }: Slice) =>
      (
        await tx.keySignature.findMany({
          ...{ select: { subject: true }, where: { subject: { startsWith: "log:", gt: `log:${after}` } } },
          ...{ orderBy: { subject: "asc" }, take },
        })
      ).map(({ subject }) => ({ id: subject.slice("log:".length) })),
  },
  filter: {
    one: (tx: Tx, id: string) => tx.savedFilter.findUnique({ where: { id } }),
    ids: (tx: Tx, slice: Slice) => tx.savedFilter.findMany(byId(slice)),
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

/** Every subject there is now, kind by kind, at most `size` at a time: however many there are, those are in memory. */
export async function* subjectSlices(db: Db | Tx, size: number): AsyncGenerator<readonly string[]> {
  for (const kind of Object.keys(readers) as SubjectKind[]) {
    for (let after = ""; ;) {
      const rows = await readers[kind].ids(db, { take: size, after });
      const last = rows.at(-1);
      if (!last) break;
      yield rows.map(({ id }) => subjectOf(kind, id));
      after = last.id;
    }
  }
}

/** Every subject there is now, for whoever needs all of them at once. */
export async function allSubjects(db: Db | Tx): Promise<readonly string[]> {
  const found: string[] = [];
  for await (const slice of subjectSlices(db, 1000)) found.push(...slice);
  return found;
}

/** Whether a subject is of a kind whose changes are logged. */
export const isLoggedKind = (subject: string): boolean =>
  Object.hasOwn(readers, subject.slice(0, Math.max(0, subject.indexOf(":"))));
