"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { makeThrottle, repliesByHandInLimit, tooMany } from "@/lib/account";
import { refused, type Answer } from "@/lib/base";
import { actorRef, may } from "@/lib/people";
import { handInBead, handInBySecret, markSeen, replyToFeedback, withdrawHandIn } from "@/lib/classroom";
import { actionOn, form, id, openAction } from "../_door/action-for";
import { here, thingOfBead } from "../_door/here";
import { recordAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";

const repliesByHandIn = makeThrottle("replies", repliesByHandInLimit);

/** Hands in a bead somebody already has. */
export const handInBeadAction = actionOn(
  "exercise.hand-in",
  [id, form],
  async (_, sent) => thingOfBead(textOf(sent, "bead")),
  async ({ pen }, code, sent): Promise<Answer<unknown>> => {
    const made = await handInBead(pen, code, textOf(sent, "bead"), textOf(sent, "note"));
    if (!made.ok) return recordAnswer(made);
    revalidatePath("/");
    redirect(`/hand-in/${made.value.code}/${made.value.secret}`);
  },
);

const gone = refused("hand-in-gone", "This address leads to no hand-in.");

/** The secret address is the key: whoever holds it acts as that hand-in and reaches nothing else. */
async function studentDoor(code: string, secret: string) {
  const { db } = await here();
  const handIn = await handInBySecret(db, code, secret);
  if (!handIn) return null;
  const actor = { kind: "hand-in", handInId: handIn.id, beadId: handIn.beadId } as const;
  return { handIn, actor, pen: { db, by: actorRef(actor) } };
}

export const replyBySecretAction = openAction(
  [id, id, form],
  async (code, secret, form): Promise<Answer<unknown>> => {
    const found = await studentDoor(code, secret);
    if (!found || !may(found.actor, "feedback.reply", { personId: null, beadId: found.handIn.beadId }))
      return gone;
    const now = new Date();
    const seconds = await repliesByHandIn.take(found.pen.db, found.handIn.id, now.getTime());
    if (seconds > 0) return { ok: false, issues: [tooMany("too-many-replies", seconds)] };
    const replied = await replyToFeedback(found.pen, found.handIn.id, String(form.get("reply") ?? ""), now);
    revalidatePath(`/hand-in/${code}/${secret}`);
    return recordAnswer(replied);
  },
);

/** The answer is on the screen of whoever holds the address. */
export const seenBySecretAction = openAction([id, id], async (code, secret): Promise<Answer<unknown>> => {
  const found = await studentDoor(code, secret);
  return found ? recordAnswer(await markSeen(found.pen, found.handIn.id, new Date())) : gone;
});

export const withdrawBySecretAction = openAction([id, id], async (code, secret): Promise<Answer<unknown>> => {
  const found = await studentDoor(code, secret);
  if (!found) return gone;
  const withdrawn = await withdrawHandIn(found.pen, found.handIn.id);
  if (!withdrawn.ok) return recordAnswer(withdrawn);
  redirect(`/hand-in/${code}?withdrawn=1`);
});
