import { headers } from "next/headers";
import { notFound, redirect } from "next/navigation";
import { readActor } from "@/lib/account";
import { db, type Db } from "@/lib/db";
import { actorRef, may, personIdOf, reach, type Actor, type Deed, type Thing } from "@/lib/people";
import { beadThing } from "@/lib/beads";
import type { Pen } from "@/lib/store";

/** Who asks, and what they may do: one for each request. Every page, action and route goes through here. */
export interface Here {
  readonly db: Db;
  readonly actor: Actor;
  /** Writes in the actor's name. */
  readonly pen: Pen;
  may(deed: Deed, thing?: Thing): boolean;
}

export function hereOf(actor: Actor): Here {
  const store = db();
  return {
    db: store,
    actor,
    pen: { db: store, by: actorRef(actor) },
    may: (deed, thing) => may(actor, deed, thing),
  };
}

/** What a list leaves out for this actor: everything but their own, for those who see only that. */
export function ownOnly(actor: Actor): { welderId?: string } {
  if (reach(actor, "bead.read") === "all") return {};
  // No bead belongs to nobody's id, so whoever has none sees none.
  return { welderId: personIdOf(actor) ?? "nobody" };
}

/**
 * The person a bead started by this actor belongs to: their own where welding is what they mainly do; others start beads for
 * whoever welds, even if they weld themselves at times: a bead under a wrong name is worse than one under none.
 */
export function welderOf(actor: Actor): string | null {
  return actor.kind === "person" && actor.role === "welder" ? actor.personId : null;
}

/** Of the running page or server action. */
export async function here(): Promise<Here> {
  return hereOf(await readActor(db(), await headers()));
}

/**
 * For a page: whoever is nobody is asked to sign in; a thing that is not theirs is "not here" for them, so that a
 * refusal does not say that it exists.
 */
export async function pageFor(deed: Deed, thing?: Thing): Promise<Here> {
  const now = await here();
  if (now.actor.kind === "nobody") redirect("/sign-in");
  if (!now.may(deed, thing)) notFound();
  return now;
}

/** To whom a bead belongs; one that is not there belongs to nobody. */
export async function thingOfBead(beadId: string): Promise<Thing> {
  return (await beadThing(db(), beadId)) ?? { personId: null, beadId };
}

/** As `pageFor`, for what belongs to one bead. */
export async function beadPageFor(deed: Deed, beadId: string): Promise<Here> {
  return pageFor(deed, await thingOfBead(beadId));
}

/** For a server action (`actionFor`): throws where somebody does what their screen never offers them. */
export function must(now: Here, deed: Deed, thing?: Thing): void {
  if (!now.may(deed, thing)) throw new Error(`refused: ${deed}`);
}

/** As `must`, for what belongs to one bead. */
export async function mustOnBead(now: Here, deed: Deed, beadId: string): Promise<void> {
  must(now, deed, await thingOfBead(beadId));
}
