import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";
import { endPersonKey } from "@/lib/keys";
import { holds, rolesWith, signs } from "@/lib/people";
import { writing, type Pen, type RecordIssue } from "@/lib/store";
import { listPeople, personColumns, PersonSchema, refuseTakenMark, roleWords, toPerson } from "./people";

/** Whether nobody else could open an account any more if this person were no owner who signs in. */
export async function isLastOwner(db: Db | Tx, id: string): Promise<boolean> {
  const owners = (await listPeople(db, { holds: "owner" })).filter(({ userId }) => userId !== null);
  return owners.length === 1 && owners[0]?.id === id;
}

/** What follows from a change for whoever made it. */
export interface PersonChange {
  /** They sign from now on and have an account: their key begins when they next choose their passphrase. */
  readonly keyToBegin: boolean;
}

/**
 * Name, identification and roles of a person, all roles at once. Who signs by none of them any more loses their key; the last
 * owner stays one.
 */
export async function changePerson(
  pen: Pen,
  id: string,
  input: unknown,
): Promise<Result<PersonChange, RecordIssue>> {
  const parsed = PersonSchema.safeParse(input);
  if (!parsed.success)
    return fail(issue("person-not-understood", parsed.error.issues[0]?.path.map(String) ?? []));
  const data = personColumns(parsed.data);
  const held = rolesWith(parsed.data.role, parsed.data.also);
  return writing(pen, async (tx, log) => {
    const row = await tx.person.findUnique({ where: { id } });
    if (!row || row.removedAt) return fail(issue("person-gone"));
    // Two who have had the same since before may still be renamed.
    const free = await refuseTakenMark(tx, row.mark === data.mark ? null : data.mark, id);
    if (!free.ok) return free;
    if (!holds(held, "owner") && (await isLastOwner(tx, id))) return fail(issue("last-owner"));
    await tx.person.update({ where: { id }, data });
    await log(`person:${id}`, "person.changed", roleWords(data));
    const signed = signs(toPerson(row));
    if (signed && !signs(held))
      await endPersonKey(tx, pen.by, id, { at: new Date().toISOString(), reason: "role-ended" });
    return ok({ keyToBegin: !signed && signs(held) && row.userId !== null });
  });
}
