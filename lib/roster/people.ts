import { randomBytes } from "node:crypto";
import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import { change, dialect, forgetFreed, type Db, type Tx } from "@/lib/db";
import { readRoles, roleColumns, roles, rolesWith, type HeldRoles, type Role } from "@/lib/people";
import { endPersonKey } from "@/lib/keys";
import { newId, writing, type Log, type Pen, type RecordIssue } from "@/lib/store";

export interface PersonRecord extends HeldRoles {
  readonly id: string;
  /** null once the person's data were removed. */
  readonly name: string | null;
  readonly mark: string | null;
  readonly userId: string | null;
  readonly removedAt: string | null;
}

export const PersonSchema = z.object({
  name: z.string().trim().min(1).max(120),
  /** Identification that stays on records: letters, digits and dashes, and no name. */
  mark: z
    .string()
    .trim()
    .max(20)
    .regex(/^[\p{L}\p{N} .\-/]*$/u)
    .transform((text) => text || null)
    .nullable(),
  /** The leading one. */
  role: z.enum(roles),
  /** Those held besides; in whatever order. */
  also: z.array(z.enum(roles)).default([]),
});

/** What a person is called and may do, as the columns hold it. */
export const personColumns = ({ name, mark, role, also }: z.infer<typeof PersonSchema>) => ({
  name,
  mark,
  ...roleColumns(rolesWith(role, also)),
});

/** What the log says of the roles somebody was given: further ones only where there are any. */
export const roleWords = ({ role, also }: ReturnType<typeof roleColumns>) =>
  also === null ? { role } : { role, also };

/** Which rows hold a role. No role's name stands in another's, so a part of the text is enough. */
const whereHolds = (role: Role) => ({ OR: [{ role }, { also: { contains: role } }] });

type Row = {
  id: string;
  name: string | null;
  mark: string | null;
  role: string;
  also: string | null;
  userId: string | null;
  removedAt: Date | null;
};

export function toPerson({ id, name, mark, userId, removedAt, ...columns }: Row): PersonRecord {
  // A role this version does not know gives the fewest rights.
  const held = readRoles(columns) ?? rolesWith("welder", []);
  return { id, name, mark, ...held, userId, removedAt: removedAt?.toISOString() ?? null };
}

/** Everybody who was not removed, by name; `holds`: only who has that role, leading or not. */
export async function listPeople(
  db: Db | Tx,
  only: { readonly holds?: Role } = {},
): Promise<readonly PersonRecord[]> {
  const held = only.holds === undefined ? {} : whereHolds(only.holds);
  const rows = await db.person.findMany({ where: { ...held, removedAt: null }, orderBy: { name: "asc" } });
  return rows.map(toPerson);
}

export async function getPerson(db: Db, id: string): Promise<PersonRecord | null> {
  const row = await db.person.findUnique({ where: { id } });
  return row ? toPerson(row) : null;
}

/** The names of people by id, for screens that show who did something. Removed people are not in it. */
export async function personNames(db: Db): Promise<ReadonlyMap<string, string>> {
  const rows = await db.person.findMany({ select: { id: true, name: true } });
  return new Map(rows.flatMap(({ id, name }) => (name === null ? [] : [[id, name] as const])));
}

const spelled = (mark: string): string => mark.replace(/\s+/g, "").toLowerCase();

/**
 * Says no where somebody else has the mark: records rest on it. Spelling does not count ("W-07", "w-07"). People who were
 * removed keep theirs, because their records do.
 */
export async function refuseTakenMark(
  tx: Tx,
  mark: string | null,
  of: string | null,
): Promise<Result<null, RecordIssue>> {
  if (mark === null) return ok(null);
  const others = await tx.person.findMany({
    where: { mark: { not: null } },
    select: { id: true, mark: true },
  });
  const taken = others.some(({ id, mark: other }) => id !== of && spelled(other ?? "") === spelled(mark));
  return taken ? fail(issue("mark-taken", ["mark"], { mark })) : ok(null);
}

export async function addPerson(pen: Pen, input: unknown): Promise<Result<PersonRecord, RecordIssue>> {
  const parsed = PersonSchema.safeParse(input);
  if (!parsed.success)
    return fail(issue("person-not-understood", parsed.error.issues[0]?.path.map(String) ?? []));
  return writing(pen, async (tx, log) => {
    const free = await refuseTakenMark(tx, parsed.data.mark, null);
    if (!free.ok) return free;
    const row = await tx.person.create({
      data: { id: newId(), salt: randomBytes(16).toString("hex"), ...personColumns(parsed.data) },
    });
    await log(`person:${row.id}`, "person.added", roleWords(roleColumns(toPerson(row))));
    return ok(toPerson(row));
  });
}

/** Ties an account to a person, or unties it (null). */
export async function setAccount(
  pen: Pen,
  id: string,
  userId: string | null,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.person.updateMany({ where: { id, removedAt: null }, data: { userId } });
    if (count === 0) return fail(issue("person-gone"));
    await log(`person:${id}`, userId ? "account.opened" : "account.closed");
    const at = new Date().toISOString();
    if (userId === null) await endPersonKey(tx, pen.by, id, { at, reason: "account-closed" });
    return ok(null);
  });
}

/**
 * Removes everything personal: name, the salt that hides it in digests, account, memberships, the name on sheets,
 * the words they wrote with hand-ins and the set-ups they saved as their own. Identification marks, beads, measurements and signed records stay, and stay
 * verifiable: no digest was made over a name alone.
 */
export async function removePerson(pen: Pen, id: string, now: Date): Promise<Result<null, RecordIssue>> {
  const removed = await emptyPerson(pen, id, now);
  // A database leaves the old bytes in freed pages until it is written anew.
  if (removed.ok) {
    await change(pen.db, dialect.tidyWords());
    await forgetFreed(pen.db);
  }
  return removed;
}

function emptyPerson(pen: Pen, id: string, now: Date): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const person = await tx.person.findUnique({
      where: { id },
      select: {
        removedAt: true,
        userId: true,
        beads: { select: { id: true } },
        groups: true,
        handIns: { select: { id: true } },
      },
    });
    if (!person || person.removedAt) return fail(issue("person-gone"));
    if (person.userId) {
      await tx.apikey.deleteMany({ where: { referenceId: person.userId } });
      await tx.user.deleteMany({ where: { id: person.userId } });
    }
    await tx.person.update({ where: { id }, data: { name: null, salt: null, userId: null, removedAt: now } });
    await tx.groupMember.deleteMany({ where: { personId: id } });
    await tx.bead.updateMany({ where: { welderId: id }, data: { welder: null } });
    await tx.deletedBead.updateMany({ where: { welderId: id }, data: { welder: null } });
    await tx.handIn.updateMany({ where: { personId: id }, data: { givenName: null, note: null } });
    await tx.feedback.updateMany({ where: { handIn: { personId: id } }, data: { reply: null } });
    const ownSetups = await tx.savedSetup.findMany({ where: { ownerId: id }, select: { id: true } });
    await tx.savedSetup.deleteMany({ where: { ownerId: id } });
    await log(`person:${id}`, "person.removed");
    for (const setup of ownSetups) await log(`setup:${setup.id}`, "setup.deleted");
    await endPersonKey(tx, pen.by, id, { at: now.toISOString(), reason: "person-removed" });
    await logWords(tx, log, id, person);
    return ok(null);
  });
}

/** Says of each thing that the person's words were taken out of it. */
async function logWords(
  tx: Tx,
  log: Log,
  id: string,
  {
    groups,
    beads,
    handIns,
  }: Readonly<Record<"beads" | "handIns", { id: string }[]>> & {
    readonly groups: readonly { readonly groupId: string }[];
  },
): Promise<void> {
  for (const { groupId } of groups) await log(`group:${groupId}`, "group.member-removed");
  for (const bead of beads) await log(`bead:${bead.id}`, "bead.name-removed");
  const deleted = await tx.deletedBead.findMany({ where: { welderId: id }, select: { id: true } });
  for (const bead of deleted) await log(`deleted-bead:${bead.id}`, "bead.name-removed");
  for (const handIn of handIns) {
    await log(`hand-in:${handIn.id}`, "hand-in.words-removed");
    const feedback = await tx.feedback.findUnique({
      where: { handInId: handIn.id },
      select: { handInId: true },
    });
    if (feedback) await log(`feedback:${handIn.id}`, "feedback.reply-removed");
  }
}
