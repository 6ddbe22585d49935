"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Said } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { deleteBead, deletedBeadThing, restoreBead } from "@/lib/beads";
import { db } from "@/lib/db";
import { actionOn, anything, beadActionFor, form, id } from "../../_door/action-for";
import { recordAnswer } from "../../_door/answer";

export const deleteBeadAction = beadActionFor(
  "bead.delete",
  [id, anything, form],
  async ({ pen }, beadId): Promise<Answer<Said>> => {
    const done = await deleteBead(pen, beadId, new Date());
    if (!done.ok) return recordAnswer(done);
    revalidatePath("/", "layout");
    redirect("/beads/deleted");
  },
);

export const restoreBeadAction = actionOn(
  "bead.delete",
  [id, anything, form],
  // One that is not there belongs to nobody.
  async (deletedId) => (await deletedBeadThing(db(), deletedId)) ?? { personId: null },
  async ({ pen }, deletedId): Promise<Answer<Said>> => {
    const done = await restoreBead(pen, deletedId, new Date());
    if (!done.ok) return recordAnswer(done);
    revalidatePath("/", "layout");
    redirect(`/beads/${done.value.beadId}`);
  },
);
