import { actorRef } from "@/lib/people";
import type { Here } from "../_door/here";

/**
 * In whose name somebody hands in. `by` null: they have no account. `signedInAs`: a student's own person, which no
 * form can change; null for those who hand in for others (owner, instructor).
 */
export function signedInStudent({ actor, may }: Here): { by: string | null; signedInAs: string | null } {
  if (!may("exercise.hand-in")) return { by: null, signedInAs: null };
  const own = actor.kind === "person" && actor.role === "welder";
  return { by: actorRef(actor), signedInAs: own ? actor.personId : null };
}
