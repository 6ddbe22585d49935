"use server";

import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import { ok, type Answer } from "@/lib/base";
import { deleteFilter, readFilter, saveFilter } from "@/lib/find";
import { actionFor, anything, form, id, words } from "../_door/action-for";
import { recordAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";

/** Keeps a search under a name, for everybody here. `query` is the address part the page was shown with. */
export const saveFilterAction = actionFor(
  "settings.write",
  [words, anything, form],
  async ({ pen }, query, _, form): Promise<Answer<Said>> => {
    const { filter } = readFilter(new URLSearchParams(query));
    const saved = await saveFilter(pen, textOf(form, "name"), filter);
    if (!saved.ok) return recordAnswer(saved);
    revalidatePath("/");
    return ok({ text: `Kept as “${saved.value.name}”.` });
  },
);

export const deleteFilterAction = actionFor("settings.write", [id], async ({ pen }, id): Promise<void> => {
  await deleteFilter(pen, id);
  revalidatePath("/");
});
