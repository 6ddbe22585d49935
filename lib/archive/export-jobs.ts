import type { Db, Tx } from "@/lib/db";
import {
  ExchangeInstrumentSchema,
  ExchangeJobSchema,
  type ExchangeInspection,
  type ExchangeJob,
  type JobsAlong,
} from "@/lib/exchange";
import { photosNamed, type JobContent } from "@/lib/inspect";
import { toJob } from "@/lib/jobs";
import { keysOfHolders, signaturesOver } from "@/lib/keys";
import { readStoredPhoto } from "@/lib/photo";
import { PublicKeySchema, type KeySignature, type PublicKey } from "@/lib/signature";

const whole = {
  beads: { select: { id: true, weldId: true }, orderBy: { id: "asc" } },
  inspections: { include: { signed: { orderBy: { revision: "asc" } } }, orderBy: { number: "asc" } },
} as const;

/** A job as it travels: welders by their marks, with every inspection and every signed revision. null: it is gone. */
async function exchangeJob(db: Db | Tx, dataDir: string, id: string): Promise<ExchangeJob | null> {
  const row = await db.job.findUnique({ where: { id }, include: whole });
  if (!row) return null;
  const { createdAt, updatedAt, beads, inspections } = row;
  const { number, revision, content } = toJob(row);
  const signatures = await signaturesOver(
    db,
    inspections.flatMap(({ signed }) => signed.map((revised) => `signed:${revised.id}`)),
  );
  return ExchangeJobSchema.parse({
    id,
    number,
    revision,
    createdAt: createdAt.toISOString(),
    updatedAt: updatedAt.toISOString(),
    content: await withoutPeople(db, content),
    beads: beads.flatMap((bead) => (bead.weldId === null ? [] : [{ beadId: bead.id, weldId: bead.weldId }])),
    inspections: inspections.map((one) => ({
      ...one,
      signed: one.signed.map((revised) => withSignature(revised, signatures)),
      createdAt: one.createdAt.toISOString(),
      updatedAt: one.updatedAt.toISOString(),
    })),
    evidence: await evidence(
      db,
      dataDir,
      id,
      inspections.flatMap(({ signed }) => signed),
    ),
  });
}

/** No field where there is no signature: what was signed before keys were kept travels as it always did. */
function withSignature<R extends { readonly id: string }>(
  revised: R,
  signatures: ReadonlyMap<string, KeySignature>,
): R & { readonly signature?: KeySignature } {
  const signature = signatures.get(`signed:${revised.id}`);
  return signature ? { ...revised, signature } : revised;
}

/** The keys of these signatures, and those that the same holders had before or since; by id. */
async function keysAlong(db: Db | Tx, jobs: readonly ExchangeJob[]): Promise<readonly PublicKey[]> {
  const signed = jobs.flatMap(({ inspections }) => inspections.flatMap((one) => one.signed));
  const ids = signed.flatMap(({ signature }) => (signature ? [signature.keyId] : []));
  const keys = await keysOfHolders(db, ids);
  return keys.map((key) => PublicKeySchema.parse(key)).toSorted((a, b) => (a.id < b.id ? -1 : 1));
}

async function withoutPeople(db: Db | Tx, content: JobContent): Promise<JobContent> {
  const people = await db.person.findMany({
    where: { mark: { not: null } },
    select: { id: true, mark: true },
  });
  const marks = new Map(people.map(({ id, mark }) => [id, mark ?? ""]));
  const welds = content.welds.map((weld) => ({
    ...weld,
    welderId: null,
    welderMark: weld.welderMark || (weld.welderId === null ? "" : (marks.get(weld.welderId) ?? "")),
  }));
  return { ...content, welds };
}

/** What the signed texts name and no bead of the job carries any more. A photo that is lost is not made up. */
async function evidence(
  db: Db | Tx,
  dataDir: string,
  jobId: string,
  signed: readonly { readonly content: string }[],
): Promise<ExchangeJob["evidence"]> {
  const rows = await db.photo.findMany({ where: { bead: { jobId } }, select: { sha256: true } });
  const carried = new Set(rows.map(({ sha256 }) => sha256));
  const named = new Set(signed.flatMap(({ content }) => photosNamed(content)));
  const missing = [...named].filter((sha256) => !carried.has(sha256)).sort();
  const stored = await Promise.all(missing.map((sha256) => readStoredPhoto(dataDir, sha256)));
  return stored.flatMap((photo) =>
    photo ? [{ sha256: photo.sha256, format: photo.format, bytes: photo.bytes }] : [],
  );
}

/** Jobs by their ids, lowest number first, with the instruments their inspections name. */
export async function jobsAlong(db: Db | Tx, dataDir: string, ids: readonly string[]): Promise<JobsAlong> {
  const found = await Promise.all(ids.map((id) => exchangeJob(db, dataDir, id)));
  const jobs = found.filter((job) => job !== null).sort((a, b) => a.number - b.number);
  const named = jobs.flatMap(({ inspections }) =>
    inspections.flatMap(({ draft }: ExchangeInspection) => draft.instrumentIds),
  );
  const rows = await db.instrument.findMany({ where: { id: { in: named } }, orderBy: { id: "asc" } });
  const instruments = rows.map(({ createdAt, retiredAt, ...row }) =>
    ExchangeInstrumentSchema.parse({
      ...row,
      createdAt: createdAt.toISOString(),
      retiredAt: retiredAt?.toISOString() ?? null,
    }),
  );
  return { jobs, instruments, keys: await keysAlong(db, jobs) };
}
