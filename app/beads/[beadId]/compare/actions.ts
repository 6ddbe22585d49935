"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { anything, beadActionFor, form, id } from "@/app/_door/action-for";
import { recordAnswer } from "@/app/_door/answer";
import type { Said } from "@/components/ui";
import { outcomes } from "@/lib/assess";
import { fail, issue, ok, refused, type Answer } from "@/lib/base";
import { getBead, saveBead } from "@/lib/beads";
import { outcomeWords } from "@/lib/report";

const OutcomeSchema = z.enum(outcomes).nullable();

/** Records what the change tried on this bead did; nothing else about the bead changes. */
export const recordOutcomeAction = beadActionFor(
  "bead.write",
  [id, anything, form],
  async ({ pen, db }, beadId, _before, form): Promise<Answer<Said>> => {
    const said = OutcomeSchema.safeParse(form.get("outcome") || null);
    const bead = await getBead(db, beadId);
    if (!bead) return recordAnswer(fail(issue("bead-gone")));
    if (!said.success || bead.content.judgement.tried === null)
      return refused("outcome-not-understood", "This could not be recorded: load the page again.");
    const saved = await saveBead(pen, beadId, bead.revision, {
      ...bead.content,
      judgement: { ...bead.content.judgement, outcome: said.data },
    });
    if (!saved.ok) return recordAnswer(saved);
    revalidatePath("/", "layout");
    const word = said.data && outcomeWords[said.data];
    return ok({ text: word ? `Recorded: ${word.toLowerCase()}.` : "Taken back: not said yet." });
  },
);
