"use server";

import { revalidatePath } from "next/cache";
import type { FormAnswer } from "@/components/ui";
import { deleteFilter, readFilter, recordSentence, saveFilter } from "@/lib/record";
import { textOf } from "../_door/form-text";
import { actionFor } from "../_door/here";

/** Keeps a search under a name, for everybody here. `query` is the address part the page was shown with. */
export async function saveFilterAction(query: string, _: FormAnswer, form: FormData): Promise<FormAnswer> {
  const { pen } = await actionFor("settings.write");
  const { filter } = readFilter(new URLSearchParams(query));
  const saved = await saveFilter(pen, textOf(form, "name"), filter);
  if (!saved.ok) return { done: false, text: saved.issues.map(recordSentence).join(" ") };
  revalidatePath("/");
  return { done: true, text: `Kept as “${saved.value.name}”.` };
}

export async function deleteFilterAction(id: string): Promise<void> {
  const { pen } = await actionFor("settings.write");
  await deleteFilter(pen, id);
  revalidatePath("/");
}
