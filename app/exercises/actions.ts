"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Answer } from "@/lib/base";
import {
  copyExercise,
  createExercise,
  getExercise,
  renewCode,
  saveExercise,
  setExerciseOpen,
} from "@/lib/classroom";
import { actionFor, anything, basedOn, id, yes } from "../_door/action-for";
import { recordAnswer } from "../_door/answer";

export const createExerciseAction = actionFor(
  "course.write",
  [id, anything],
  async ({ pen }, groupId, input): Promise<Answer<unknown>> => {
    const made = await createExercise(pen, groupId, input);
    if (!made.ok) return recordAnswer(made);
    revalidatePath(`/groups/${groupId}`);
    redirect(`/exercises/${made.value.id}`);
  },
);

export const saveExerciseAction = actionFor(
  "course.write",
  [id, basedOn, anything],
  async ({ pen }, id, basedOn, input): Promise<Answer<unknown>> => {
    const saved = await saveExercise(pen, id, basedOn, input);
    if (!saved.ok) return recordAnswer(saved);
    revalidatePath(`/exercises/${id}`);
    redirect(`/exercises/${id}`);
  },
);

/** A copy for the same group, opened to be changed. */
export const copyExerciseAction = actionFor(
  "course.write",
  [id],
  async ({ pen, db }, id): Promise<Answer<unknown>> => {
    const found = await getExercise(db, id);
    const made = await copyExercise(pen, id, found?.group.id ?? "");
    if (!made.ok) return recordAnswer(made);
    redirect(`/exercises/${made.value.id}/edit`);
  },
);

export const openExerciseAction = actionFor(
  "course.write",
  [id, yes],
  async ({ pen }, id, open): Promise<Answer<unknown>> => {
    const set = await setExerciseOpen(pen, id, open);
    revalidatePath(`/exercises/${id}`);
    return recordAnswer(set);
  },
);

export const renewCodeAction = actionFor(
  "course.write",
  [id],
  async ({ pen }, id): Promise<Answer<unknown>> => {
    const renewed = await renewCode(pen, id, new Date());
    revalidatePath(`/exercises/${id}`);
    return recordAnswer(renewed);
  },
);
