"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Answer } from "@/lib/base";
import { createExercise, saveExercise, setExerciseOpen } from "@/lib/record";
import { actionFor } from "../_door/here";
import { recordAnswer } from "../_door/answer";

export async function createExerciseAction(groupId: string, input: unknown): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const made = await createExercise(pen, groupId, input);
  if (!made.ok) return recordAnswer(made);
  revalidatePath(`/groups/${groupId}`);
  redirect(`/exercises/${made.value.id}`);
}

export async function saveExerciseAction(
  id: string,
  basedOn: number,
  input: unknown,
): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const saved = await saveExercise(pen, id, basedOn, input);
  if (!saved.ok) return recordAnswer(saved);
  revalidatePath(`/exercises/${id}`);
  redirect(`/exercises/${id}`);
}

export async function openExerciseAction(id: string, open: boolean): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const set = await setExerciseOpen(pen, id, open);
  revalidatePath(`/exercises/${id}`);
  return recordAnswer(set);
}
