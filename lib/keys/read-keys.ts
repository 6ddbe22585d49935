import { column, dialect, noSql, rowsOf, sql, type Db, type Sql, type Tx } from "@/lib/db";
import { KEY_ALGORITHM, KeySignatureSchema, type KeySignature, type KnownKey } from "@/lib/signature";

type Row = Awaited<ReturnType<typeof find>>[number];
const find = (db: Db | Tx, where: object) =>
  db.signingKey.findMany({
    where,
    include: { events: { orderBy: [{ at: "asc" }, { id: "asc" }] } },
    orderBy: [{ from: "asc" }, { id: "asc" }],
  });

function toKey({ events, ...row }: Row): KnownKey {
  const end = events.find(({ what }) => what === "ended");
  const confirmed = events.findLast(({ what }) => what === "confirmed");
  return {
    id: row.id,
    algorithm: KEY_ALGORITHM,
    publicKey: row.publicKey,
    holder: row.holder === "installation" ? "installation" : "person",
    personId: row.personId,
    from: row.from,
    reason: row.reason,
    until: end?.at ?? null,
    untilReason: end?.reason ?? null,
    origin: row.origin === "here" ? "here" : "archive",
    confirmed: confirmed ? { at: confirmed.at, whose: confirmed.whose ?? "not said any more" } : null,
  };
}

/** Every key this installation knows, those that came with archives too, oldest first. */
export async function listKeys(db: Db | Tx): Promise<readonly KnownKey[]> {
  return (await find(db, {})).map(toKey);
}

/** Keys by their ids; what is not known is not in it. */
export async function keysById(db: Db | Tx, ids: readonly string[]): Promise<ReadonlyMap<string, KnownKey>> {
  return new Map((await find(db, { id: { in: [...ids] } })).map((row) => [row.id, toKey(row)]));
}

/** Keys by their ids, and all that the same holders had before or since, as far as they are known here. */
export async function keysOfHolders(db: Db | Tx, ids: readonly string[]): Promise<readonly KnownKey[]> {
  const named = [...(await keysById(db, ids)).values()];
  const same = named.map(({ origin, holder, personId }) => ({ origin, holder, personId }));
  return (await find(db, { OR: same })).map(toKey);
}

/** A row as texts: a number that somebody made a word of must be found, and not stop whoever looks. */
type SignatureRow = Readonly<Record<"subject" | "headSeq", string | null>>;

async function signatureRows(db: Db | Tx, only: Sql, most: Sql = noSql): Promise<readonly StoredSignature[]> {
  const rows = await rowsOf<SignatureRow>(
    db,
    sql`SELECT "subject", "digest", "keyId", "algorithm", "at", CAST("headSeq" AS TEXT) AS "headSeq", "headHash", "signature" FROM "KeySignature" ${only} ORDER BY "subject" ${most}`,
  );
  return rows.map((row) => ({ subject: row.subject ?? "", read: toSignature(row) }));
}

function toSignature({
  headSeq,
  ...row
}: SignatureRow & { readonly headHash?: unknown }): KeySignature | null {
  const { headHash = null } = row;
  const head = headSeq === null && headHash === null ? null : { seq: Number(headSeq), hash: headHash };
  const parsed = KeySignatureSchema.safeParse({ ...row, head });
  return parsed.success ? parsed.data : null;
}

/** A signature by its subject; `read` null: somebody changed the row into something else. */
export interface StoredSignature {
  readonly subject: string;
  readonly read: KeySignature | null;
}

/** Every signature there is, in order of what they are over, at most `size` at a time. */
export async function* signatureSlices(db: Db, size: number): AsyncGenerator<readonly StoredSignature[]> {
  for (let after: string | null = null; ;) {
    const behind: Sql = after === null ? noSql : sql`WHERE "subject" > ${after}`;
    const rows = await signatureRows(db, behind, sql`LIMIT ${size}`);
    const last = rows.at(-1);
    if (!last) return;
    yield rows;
    after = last.subject;
  }
}

/** How many signatures there are. */
export const countSignatures = (db: Db): Promise<number> => db.keySignature.count();

/** The signatures over these subjects, by subject. */
export async function signaturesOver(
  db: Db | Tx,
  subjects: readonly string[],
): Promise<ReadonlyMap<string, KeySignature>> {
  const rows = await signatureRows(db, sql`WHERE ${dialect.isOneOf(column("subject"), subjects)}`);
  return new Map(rows.flatMap(({ subject, read }) => (read ? [[subject, read] as const] : [])));
}
