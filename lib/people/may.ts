import type { Actor } from "./actor";
import { rights, type Deed, type Reach } from "./deeds";
import { heldRoles, type HeldRoles } from "./held-roles";
import type { Role } from "./roles";
import { scopeOfDeed } from "./scopes";

/** To whom a thing belongs: the person's id, or null when it is nobody's. */
export interface Thing {
  readonly personId: string | null;
  readonly beadId?: string;
}

const handInDeeds: ReadonlySet<Deed> = new Set(["bead.read", "feedback.read", "feedback.reply"]);

/** How far somebody with these roles reaches with a deed: as far as the one of them that reaches furthest. */
export function reachOfRoles(held: HeldRoles, deed: Deed): Reach | null {
  const reaches = heldRoles(held).map((role) => rights[role][deed]);
  return reaches.includes("all") ? "all" : reaches.includes("own") ? "own" : null;
}

/** Whether somebody with these roles signs records, and so has a key to sign by. */
export const signs = (held: HeldRoles): boolean => reachOfRoles(held, "record.sign") !== null;

/** The role in which somebody does a deed: the first of theirs that may, as far as any of theirs may; null: none. */
export function roleFor(held: HeldRoles, deed: Deed): Role | null {
  const far = reachOfRoles(held, deed);
  return heldRoles(held).find((role) => far !== null && rights[role][deed] === far) ?? null;
}

/** How far an actor reaches with a deed; null: not at all. Lists use it to know what to leave out. */
export function reach(actor: Actor, deed: Deed): Reach | null {
  switch (actor.kind) {
    case "owner-here":
      return rights.owner[deed] ?? null;
    case "person": {
      const scope = scopeOfDeed[deed];
      if (actor.scopes !== null && (scope === undefined || !actor.scopes.includes(scope))) return null;
      return reachOfRoles(actor, deed);
    }
    case "hand-in":
      return handInDeeds.has(deed) ? "own" : null;
    case "nobody":
      return null;
  }
}

/**
 * Whether an actor may do a deed to a thing. Without a thing the question is about making one or about the whole
 * area, and "own" is enough only for deeds that make or list one's own.
 */
export function may(actor: Actor, deed: Deed, thing?: Thing): boolean {
  const far = reach(actor, deed);
  if (far === null) return false;
  if (far === "all" || thing === undefined) return true;
  if (actor.kind === "hand-in") return thing.beadId === actor.beadId;
  // Nobody's thing is not everybody's: it belongs to those who see all.
  return actor.kind === "person" && thing.personId !== null && thing.personId === actor.personId;
}

/** Whether an actor may make somebody a holder of a role: the owner of any, whoever keeps groups of students alone. */
export const mayGive = (actor: Actor, role: Role): boolean =>
  may(actor, "people.manage") || (role === "welder" && may(actor, "course.write"));
