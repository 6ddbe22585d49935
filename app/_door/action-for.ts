import { z } from "zod";
import { db } from "@/lib/db";
import type { Deed, Thing } from "@/lib/people";
import { handInThing } from "@/lib/classroom";
import { here, must, thingOfBead, type Here } from "./here";

/** The kinds of what is sent; what a room reads itself comes as `anything`. */
export const id = z.string();
export const words = z.string();
/** Revision or version that a save is based on; 0: there is none yet. */
export const basedOn = z.int().min(0);
export const yes = z.boolean();
export const form = z.instanceof(FormData);
export const anything = z.unknown();

type Kinds = readonly z.ZodType[];
type Sent<S extends Kinds> = { -readonly [K in keyof S]: z.output<S[K]> };
type Work<S extends Kinds, T> = (now: Here, ...sent: Sent<S>) => Promise<T>;
type Action<S extends Kinds, T> = (...sent: { -readonly [K in keyof S]: z.input<S[K]> }) => Promise<T>;

/**
 * Every server action is made here: who asks and whether they may, what was sent, then the work, which answers and says
 * what is to be shown. An action is an address of its own, so anybody can send it anything: each argument is read by
 * its kind, and more than was asked for (a form sends what it was told before) is left away.
 *
 * Throws where somebody does or sends what their screen never offers them.
 */
export function actionFor<const S extends Kinds, T>(deed: Deed, kinds: S, work: Work<S, T>): Action<S, T> {
  return async (...sent) => {
    const now = await here();
    must(now, deed);
    return work(now, ...read(kinds, sent));
  };
}

/** As `actionFor`, for a deed on one thing; which one follows from what was sent. */
export function actionOn<const S extends Kinds, T>(
  deed: Deed,
  kinds: S,
  thingOf: (...sent: Sent<S>) => Promise<Thing>,
  work: Work<S, T>,
): Action<S, T> {
  return async (...sent) => {
    const now = await here();
    const known = read(kinds, sent);
    must(now, deed, await thingOf(...known));
    return work(now, ...known);
  };
}

/** As `actionFor`, for what belongs to the bead, hand-in or person whose id is the first argument. */
const onFirst =
  (thingOf: (id: string) => Promise<Thing>) =>
  <const S extends readonly [typeof id, ...Kinds], T>(deed: Deed, kinds: S, work: Work<S, T>): Action<S, T> =>
    actionOn(deed, kinds, (...sent) => thingOf(sent[0] as string), work);

export const beadActionFor = onFirst(thingOfBead);
// One that is not there belongs to nobody.
export const handInActionFor = onFirst(async (one) => (await handInThing(db(), one)) ?? { personId: null });
export const personActionFor = onFirst(async (personId) => ({ personId }));

/** An action at which the work itself asks who is there: by a secret address, a passphrase, or for a choice of one's own. */
export function openAction<const S extends Kinds, T>(
  kinds: S,
  work: (...sent: Sent<S>) => Promise<T>,
): Action<S, T> {
  return async (...sent) => work(...read(kinds, sent));
}

function read<S extends Kinds>(kinds: S, sent: readonly unknown[]): Sent<S> {
  return kinds.map((kind, i) => kind.parse(sent[i])) as Sent<S>;
}
