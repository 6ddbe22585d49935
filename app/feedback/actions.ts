"use server";

import { revalidatePath } from "next/cache";
import type { Saved, Stored } from "@/components/saving/saver";
import { ok, type Answer } from "@/lib/base";
import type { FeedbackContent } from "@/lib/course";
import { personIdOf, type Thing } from "@/lib/people";
import {
  addPhrase,
  changePhrase,
  deletePhrase,
  getFeedback,
  handInThing,
  movePhrase,
  replyToFeedback,
  returnFeedback,
  saveFeedback,
  withdrawHandIn,
} from "@/lib/record";
import { db } from "@/lib/db";
import { actionFor } from "../_door/here";
import { recordAnswer } from "../_door/answer";

/** To whom a hand-in belongs; one that is not there belongs to nobody. */
const thingOf = async (handInId: string): Promise<Thing> =>
  (await handInThing(db(), handInId)) ?? { personId: null };

export async function saveFeedbackAction(
  handInId: string,
  basedOn: number,
  content: unknown,
): Promise<Answer<Saved>> {
  const { pen, actor } = await actionFor("feedback.write", await thingOf(handInId));
  return recordAnswer(await saveFeedback(pen, handInId, basedOn, content, personIdOf(actor)));
}

export async function readFeedbackAction(handInId: string): Promise<Answer<Stored<FeedbackContent>>> {
  const { db } = await actionFor("feedback.write", await thingOf(handInId));
  const { revision, draft } = await getFeedback(db, handInId);
  return ok({ revision, content: draft });
}

export async function returnFeedbackAction(handInId: string, basedOn: number): Promise<Answer<unknown>> {
  const { pen, actor } = await actionFor("feedback.write", await thingOf(handInId));
  const returned = await returnFeedback(pen, handInId, basedOn, personIdOf(actor), new Date());
  if (returned.ok) revalidatePath(`/feedback/${handInId}`);
  return recordAnswer(returned);
}

export async function replyAction(handInId: string, form: FormData): Promise<Answer<unknown>> {
  const { pen } = await actionFor("feedback.reply", await thingOf(handInId));
  const replied = await replyToFeedback(pen, handInId, String(form.get("reply") ?? ""), new Date());
  revalidatePath(`/feedback/${handInId}`);
  return recordAnswer(replied);
}

export async function withdrawAction(handInId: string): Promise<Answer<unknown>> {
  const { pen } = await actionFor("exercise.hand-in", await thingOf(handInId));
  const withdrawn = await withdrawHandIn(pen, handInId);
  revalidatePath("/feedback");
  return recordAnswer(withdrawn);
}

export async function addPhraseAction(form: FormData): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const added = await addPhrase(pen, form.get("text"));
  revalidatePath("/feedback/phrases");
  return recordAnswer(added);
}

export async function changePhraseAction(id: string, form: FormData): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const changed = await changePhrase(pen, id, form.get("text"));
  revalidatePath("/feedback/phrases");
  return recordAnswer(changed);
}

export async function movePhraseAction(id: string, by: -1 | 1): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const moved = await movePhrase(pen, id, by === -1 ? -1 : 1);
  revalidatePath("/feedback/phrases");
  return recordAnswer(moved);
}

export async function deletePhraseAction(id: string): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const gone = await deletePhrase(pen, id);
  revalidatePath("/feedback/phrases");
  return recordAnswer(gone);
}
