import { actorRef, personIdOf, reach } from "@/lib/people";
import type { Here } from "../_door/here";

/**
 * In whose name somebody hands in. `by` null: they have no account. `signedInAs`: a student's own person, which no
 * form can change; null for those who hand in for others (owner, instructor), whatever else they are.
 */
export function signedInStudent({ actor, may }: Here): { by: string | null; signedInAs: string | null } {
  if (!may("exercise.hand-in")) return { by: null, signedInAs: null };
  // A student who teaches as well hands in for others too, and finds their own name among them.
  const own = reach(actor, "exercise.hand-in") === "own";
  return { by: actorRef(actor), signedInAs: own ? personIdOf(actor) : null };
}
