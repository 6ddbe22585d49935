"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Said } from "@/components/ui";
import {
  beginSecondFactor,
  confirmSecondFactor,
  endSecondFactor,
  endSession,
  makeThrottle,
  passphraseFits,
  passphraseLimit,
  showsSecondFactor,
} from "@/lib/account";
import { fail, issue, ok, refused, type Answer } from "@/lib/base";
import { chooseOwnPassphrase, getPerson } from "@/lib/roster";
import { anything, form, id, openAction } from "../_door/action-for";
import { accountAnswer, passphraseAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";
import { here, type Here } from "../_door/here";

/** Wrong passphrases on the own page, by person: whoever found a screen left open must not guess on it. */
const tries = makeThrottle("own-passphrase", passphraseLimit);

/** A token is for programs; whoever does these sits there themselves. */
async function self({ actor, db, pen }: Here) {
  const person =
    actor.kind === "person" && actor.scopes === null ? await getPerson(db, actor.personId) : null;
  return person?.userId ? { db, pen, personId: person.id, userId: person.userId } : null;
}

const signInFirst = refused("sign-in-first", "Sign in first.");

export const endSessionAction = openAction([id], async (sessionId): Promise<Answer<Said>> => {
  const own = await self(await here());
  if (!own) return signInFirst;
  const ended = await endSession(own.db, own.userId, sessionId);
  revalidatePath("/me");
  return ended.ok ? ok({ text: "Ended." }) : accountAnswer(ended);
});

export const changeOwnPassphraseAction = openAction(
  [anything, form],
  async (_, form): Promise<Answer<Said>> => {
    const own = await self(await here());
    if (!own) return signInFirst;
    const { pen, personId } = own;
    const now = new Date();
    const seconds = await tries.take(pen.db, personId, now.getTime());
    if (seconds > 0) return accountAnswer(fail(issue("too-many-tries", [], { seconds })));
    const choice = { before: textOf(form, "before"), passphrase: textOf(form, "passphrase") };
    const set = await chooseOwnPassphrase(pen, personId, choice, now);
    // Whoever knew the passphrase until now did not guess.
    if (set.ok || !set.issues.some(({ code }) => code === "passphrase-before-wrong"))
      await tries.forget(pen.db, personId);
    if (!set.ok) return passphraseAnswer(set);
    redirect("/sign-in");
  },
);

type Own = NonNullable<Awaited<ReturnType<typeof self>>>;

/** What is done here about the second factor asks for the passphrase again; wrong ones are counted as above. */
async function withPassphrase(
  own: Own | null,
  sent: FormData,
  work: (own: Own) => Promise<Answer<Said>>,
): Promise<Answer<Said>> {
  if (!own) return signInFirst;
  const seconds = await tries.take(own.db, own.personId, Date.now());
  if (seconds > 0) return accountAnswer(fail(issue("too-many-tries", [], { seconds })));
  if (!(await passphraseFits(own.db, own.userId, textOf(sent, "passphrase"))))
    return accountAnswer(fail(issue("passphrase-before-wrong")));
  const answer = await work(own);
  if (answer.ok) await tries.forget(own.db, own.personId);
  revalidatePath("/me");
  return answer;
}

export const beginSecondFactorAction = openAction([anything, form], async (_, sent): Promise<Answer<Said>> =>
  withPassphrase(await self(await here()), sent, async ({ db, userId }) => {
    const begun = await beginSecondFactor(db, userId);
    return begun.ok ? ok({ text: "Begun. Read the code below with your phone." }) : accountAnswer(begun);
  }),
);

export const confirmSecondFactorAction = openAction(
  [anything, form],
  async (_, sent): Promise<Answer<Said>> =>
    withPassphrase(await self(await here()), sent, async ({ db, userId }) => {
      const codes = await confirmSecondFactor(db, userId, textOf(sent, "number"), new Date());
      if (!codes.ok) return accountAnswer(codes);
      return ok({
        text: "On. Write these recovery codes down now, they are not shown again; each opens your account once without the phone:",
        once: codes.value.join("  "),
      });
    }),
);

export const endSecondFactorAction = openAction([anything, form], async (_, sent): Promise<Answer<Said>> =>
  withPassphrase(await self(await here()), sent, async ({ db, userId }) => {
    if (!(await showsSecondFactor(db, userId, textOf(sent, "number"), new Date())))
      return accountAnswer(fail(issue("second-factor-wrong")));
    await endSecondFactor(db, userId);
    return ok({ text: "Off. From now on your passphrase alone opens your account." });
  }),
);
