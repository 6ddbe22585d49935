"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Answer } from "@/lib/base";
import { addStudent, closeGroup, createGroup, joinGroup, leaveGroup } from "@/lib/record";
import { actionFor } from "../_door/here";
import { recordAnswer } from "../_door/answer";

export async function createGroupAction(form: FormData): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const made = await createGroup(pen, form.get("name"));
  if (!made.ok) return recordAnswer(made);
  revalidatePath("/groups");
  redirect(`/groups/${made.value.id}`);
}

export async function addStudentAction(groupId: string, form: FormData): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const added = await addStudent(pen, groupId, { name: form.get("name"), mark: form.get("mark") });
  revalidatePath(`/groups/${groupId}`);
  return recordAnswer(added);
}

export async function joinGroupAction(groupId: string, form: FormData): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const joined = await joinGroup(pen, groupId, String(form.get("person") ?? ""));
  revalidatePath(`/groups/${groupId}`);
  return recordAnswer(joined);
}

export async function leaveGroupAction(groupId: string, personId: string): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const left = await leaveGroup(pen, groupId, personId);
  revalidatePath(`/groups/${groupId}`);
  return recordAnswer(left);
}

export async function closeGroupAction(groupId: string, close: boolean): Promise<Answer<unknown>> {
  const { pen } = await actionFor("course.write");
  const closed = await closeGroup(pen, groupId, close ? new Date() : null);
  revalidatePath(`/groups/${groupId}`);
  return recordAnswer(closed);
}
