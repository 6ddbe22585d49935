import type { HeldRoles } from "./held-roles";
import type { Scope } from "./scopes";

/** Who stands at the door. */
export type Actor =
  /** One machine, loopback, no accounts: whoever sits there is the owner. */
  | { readonly kind: "owner-here" }
  /** Signed in, or behind a token; `scopes` is null for a session, which reaches as far as the roles. */
  | (HeldRoles & {
      readonly kind: "person";
      readonly personId: string;
      readonly scopes: readonly Scope[] | null;
    })
  /** A student without an account, holding the secret address of one hand-in. */
  | { readonly kind: "hand-in"; readonly handInId: string; readonly beadId: string }
  | { readonly kind: "nobody" };

export const ownerHere: Actor = { kind: "owner-here" };
export const nobody: Actor = { kind: "nobody" };

/** How the log names an actor: never by a personal name. */
export function actorRef(actor: Actor): string {
  switch (actor.kind) {
    case "owner-here":
      return "owner";
    case "person":
      return `person:${actor.personId}`;
    case "hand-in":
      return `hand-in:${actor.handInId}`;
    case "nobody":
      return "nobody";
  }
}

/** The person behind an actor; null for the owner at their own machine and for anybody without an account. */
export function personIdOf(actor: Actor): string | null {
  return actor.kind === "person" ? actor.personId : null;
}
