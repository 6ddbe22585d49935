"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { beadActionFor } from "@/app/_door/here";
import type { FormAnswer } from "@/components/ui";
import { outcomes } from "@/lib/assess";
import { issue } from "@/lib/base";
import { getBead, recordSentence, saveBead } from "@/lib/record";
import { outcomeWords } from "@/lib/report";

const OutcomeSchema = z.enum(outcomes).nullable();

/** Records what the change tried on this bead did; nothing else about the bead changes. */
export async function recordOutcomeAction(
  beadId: string,
  _before: FormAnswer,
  form: FormData,
): Promise<FormAnswer> {
  const { pen, db } = await beadActionFor("bead.write", beadId);
  const said = OutcomeSchema.safeParse(form.get("outcome") || null);
  const bead = await getBead(db, beadId);
  if (!bead) return { done: false, text: recordSentence(issue("bead-gone")) };
  if (!said.success || bead.content.judgement.tried === null)
    return { done: false, text: "This could not be recorded: load the page again." };
  const saved = await saveBead(pen, beadId, bead.revision, {
    ...bead.content,
    judgement: { ...bead.content.judgement, outcome: said.data },
  });
  const [refused] = saved.ok ? [] : saved.issues;
  if (refused) return { done: false, text: recordSentence(refused) };
  revalidatePath("/", "layout");
  const word = said.data && outcomeWords[said.data];
  return { done: true, text: word ? `Recorded: ${word.toLowerCase()}.` : "Taken back: not said yet." };
}
