"use server";

import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import { ok, type Answer } from "@/lib/base";
import { deleteFilter, readFilter, saveFilter } from "@/lib/record";
import { recordAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";
import { actionFor } from "../_door/here";

/** Keeps a search under a name, for everybody here. `query` is the address part the page was shown with. */
export async function saveFilterAction(
  query: string,
  _: Answer<Said>,
  form: FormData,
): Promise<Answer<Said>> {
  const { pen } = await actionFor("settings.write");
  const { filter } = readFilter(new URLSearchParams(query));
  const saved = await saveFilter(pen, textOf(form, "name"), filter);
  if (!saved.ok) return recordAnswer(saved);
  revalidatePath("/");
  return ok({ text: `Kept as “${saved.value.name}”.` });
}

export async function deleteFilterAction(id: string): Promise<void> {
  const { pen } = await actionFor("settings.write");
  await deleteFilter(pen, id);
  revalidatePath("/");
}
