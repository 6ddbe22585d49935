"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Answer } from "@/lib/base";
import { mayGive, type Role } from "@/lib/people";
import { addRoster, addStudent, closeGroup, createGroup, joinGroup, leaveGroup } from "@/lib/roster";
import { actionFor, form, id, yes } from "../_door/action-for";
import { recordAnswer } from "../_door/answer";

export const createGroupAction = actionFor(
  "course.write",
  [form],
  async ({ pen }, form): Promise<Answer<unknown>> => {
    const made = await createGroup(pen, form.get("name"));
    if (!made.ok) return recordAnswer(made);
    revalidatePath("/groups");
    redirect(`/groups/${made.value.id}`);
  },
);

export const addStudentAction = actionFor(
  "course.write",
  [id, form],
  async ({ pen }, groupId, form): Promise<Answer<unknown>> => {
    const added = await addStudent(pen, groupId, { name: form.get("name"), mark: form.get("mark") });
    revalidatePath(`/groups/${groupId}`);
    return recordAnswer(added);
  },
);

export const addRosterAction = actionFor(
  "course.write",
  [id, form],
  async ({ pen, actor }, groupId, form): Promise<Answer<unknown>> => {
    const given = (role: Role): boolean => mayGive(actor, role);
    const added = await addRoster(pen, groupId, String(form.get("roster") ?? ""), given);
    revalidatePath(`/groups/${groupId}`);
    return recordAnswer(added);
  },
);

export const joinGroupAction = actionFor(
  "course.write",
  [id, form],
  async ({ pen }, groupId, form): Promise<Answer<unknown>> => {
    const joined = await joinGroup(pen, groupId, String(form.get("person") ?? ""));
    revalidatePath(`/groups/${groupId}`);
    return recordAnswer(joined);
  },
);

export const leaveGroupAction = actionFor(
  "course.write",
  [id, id],
  async ({ pen }, groupId, personId): Promise<Answer<unknown>> => {
    const left = await leaveGroup(pen, groupId, personId);
    revalidatePath(`/groups/${groupId}`);
    return recordAnswer(left);
  },
);

export const closeGroupAction = actionFor(
  "course.write",
  [id, yes],
  async ({ pen }, groupId, close): Promise<Answer<unknown>> => {
    const closed = await closeGroup(pen, groupId, close ? new Date() : null);
    revalidatePath(`/groups/${groupId}`);
    return recordAnswer(closed);
  },
);
