import type { Db } from "@/lib/db";
import { roleFor, roleNames, type Actor } from "@/lib/people";
import { getPerson } from "@/lib/roster";

/** The role in which they write limits, and identification: a version of limits is never changed, so no name may stand in it. */
export async function authorOf(db: Db, actor: Actor): Promise<string> {
  if (actor.kind !== "person") return roleNames.owner;
  const person = await getPerson(db, actor.personId);
  return [roleNames[roleFor(actor, "criteria.write") ?? actor.role], person?.mark].filter(Boolean).join(" ");
}
