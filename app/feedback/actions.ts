"use server";

import { revalidatePath } from "next/cache";
import type { Saved, Stored } from "@/components/saving";
import { ok, type Answer } from "@/lib/base";
import type { FeedbackContent } from "@/lib/course";
import { personIdOf } from "@/lib/people";
import {
  addPhrase,
  changePhrase,
  deletePhrase,
  getFeedback,
  linkHandIns,
  markSeen,
  movePhrase,
  reissueAddress,
  replyToFeedback,
  returnFeedback,
  saveFeedback,
  withdrawHandIn,
} from "@/lib/classroom";
import { actionFor, anything, basedOn, form, handInActionFor, id, words } from "../_door/action-for";
import { recordAnswer } from "../_door/answer";

export const saveFeedbackAction = handInActionFor(
  "feedback.write",
  [id, basedOn, anything],
  async ({ pen, actor }, handInId, basedOn, content): Promise<Answer<Saved>> => {
    return recordAnswer(await saveFeedback(pen, handInId, basedOn, content, personIdOf(actor)));
  },
);

export const readFeedbackAction = handInActionFor(
  "feedback.write",
  [id],
  async ({ db }, handInId): Promise<Answer<Stored<FeedbackContent>>> => {
    const { revision, draft } = await getFeedback(db, handInId);
    return ok({ revision, content: draft });
  },
);

export const returnFeedbackAction = handInActionFor(
  "feedback.write",
  [id, basedOn],
  async ({ pen, actor }, handInId, basedOn): Promise<Answer<unknown>> => {
    const returned = await returnFeedback(pen, handInId, basedOn, personIdOf(actor), new Date());
    if (returned.ok) revalidatePath(`/feedback/${handInId}`);
    return recordAnswer(returned);
  },
);

export const replyAction = handInActionFor(
  "feedback.reply",
  [id, form],
  async ({ pen }, handInId, form): Promise<Answer<unknown>> => {
    const replied = await replyToFeedback(pen, handInId, String(form.get("reply") ?? ""), new Date());
    revalidatePath(`/feedback/${handInId}`);
    return recordAnswer(replied);
  },
);

/** The student has the answer on their screen. */
export const seenAction = handInActionFor(
  "feedback.reply",
  [id],
  async ({ pen }, handInId): Promise<Answer<unknown>> =>
    recordAnswer(await markSeen(pen, handInId, new Date())),
);

export const linkHandInsAction = handInActionFor(
  "feedback.write",
  [id, form],
  async ({ pen }, handInId, form): Promise<Answer<unknown>> => {
    const linked = await linkHandIns(pen, handInId, String(form.get("person") ?? ""));
    revalidatePath(`/feedback/${handInId}`);
    return recordAnswer(linked);
  },
);

export const newAddressAction = handInActionFor(
  "feedback.write",
  [id],
  async ({ pen }, handInId): Promise<Answer<{ readonly path: string }>> => {
    const made = await reissueAddress(pen, handInId);
    return made.ok ? ok({ path: `/hand-in/${made.value.code}/${made.value.secret}` }) : recordAnswer(made);
  },
);

/** Keeps a remark among the instructor's own; where nobody has an account, among everybody's. */
export const keepPhraseAction = actionFor(
  "course.write",
  [words],
  async ({ pen, actor }, text): Promise<Answer<unknown>> => {
    return recordAnswer(await addPhrase(pen, text, personIdOf(actor)));
  },
);

export const withdrawAction = handInActionFor(
  "exercise.hand-in",
  [id],
  async ({ pen }, handInId): Promise<Answer<unknown>> => {
    const withdrawn = await withdrawHandIn(pen, handInId);
    revalidatePath("/feedback");
    return recordAnswer(withdrawn);
  },
);

export const addPhraseAction = actionFor(
  "course.write",
  [form],
  async ({ pen, actor }, form): Promise<Answer<unknown>> => {
    const own = form.get("own") === "yes" ? personIdOf(actor) : null;
    const added = await addPhrase(pen, form.get("text"), own);
    revalidatePath("/feedback/phrases");
    return recordAnswer(added);
  },
);

export const changePhraseAction = actionFor(
  "course.write",
  [id, form],
  async ({ pen, actor }, id, form): Promise<Answer<unknown>> => {
    const changed = await changePhrase(pen, id, form.get("text"), personIdOf(actor));
    revalidatePath("/feedback/phrases");
    return recordAnswer(changed);
  },
);

export const movePhraseAction = actionFor(
  "course.write",
  [id, anything],
  async ({ pen, actor }, id, by): Promise<Answer<unknown>> => {
    const moved = await movePhrase(pen, id, by === -1 ? -1 : 1, personIdOf(actor));
    revalidatePath("/feedback/phrases");
    return recordAnswer(moved);
  },
);

export const deletePhraseAction = actionFor(
  "course.write",
  [id],
  async ({ pen, actor }, id): Promise<Answer<unknown>> => {
    const gone = await deletePhrase(pen, id, personIdOf(actor));
    revalidatePath("/feedback/phrases");
    return recordAnswer(gone);
  },
);
