"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Answer } from "@/lib/base";
import { beginByCard, createCard, retireCard } from "@/lib/series";
import { actionFor, anything, id, yes } from "../_door/action-for";
import { recordAnswer } from "../_door/answer";
import { welderOf } from "../_door/here";

export const makeCardAction = actionFor(
  "bead.create",
  [anything],
  async ({ pen, actor }, card): Promise<Answer<null>> => {
    const made = await createCard(pen, card, welderOf(actor));
    if (!made.ok) return recordAnswer(made);
    revalidatePath("/cards");
    redirect(`/cards/${made.value.id}`);
  },
);

/** A bead by a card: its set-up, watched against its ranges. */
export const beginByCardAction = actionFor(
  "bead.create",
  [id],
  async ({ pen, actor }, cardId): Promise<void> => {
    const begun = await beginByCard(pen, cardId, welderOf(actor));
    if (!begun.ok) redirect("/cards");
    revalidatePath("/");
    redirect(`/beads/${begun.value.beadId}`);
  },
);

/** Out of use, or back into it. */
export const retireCardAction = actionFor(
  "settings.write",
  [id, yes],
  async ({ pen }, cardId, out): Promise<void> => {
    await retireCard(pen, cardId, out ? new Date() : null);
    revalidatePath("/cards");
    revalidatePath(`/cards/${cardId}`);
  },
);
