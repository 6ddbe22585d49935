"use server";

import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import type { Answer, Result } from "@/lib/base";
import { addInstrument, changeInstrument, retireInstrument, type RecordIssue } from "@/lib/record";
import { recordSaid } from "../_door/answer";
import { textOf } from "../_door/form-text";
import { actionFor } from "../_door/here";

function instrumentOf(form: FormData) {
  const resolution = textOf(form, "resolution");
  return {
    kind: textOf(form, "kind"),
    name: textOf(form, "name"),
    serial: textOf(form, "serial"),
    resolution: resolution === "" ? null : Number(resolution),
    calibratedOn: textOf(form, "calibratedOn") || null,
    dueOn: textOf(form, "dueOn") || null,
  };
}

function answer(result: Result<unknown, RecordIssue>, text: string): Answer<Said> {
  revalidatePath("/instruments");
  return recordSaid(result, text);
}

export async function addInstrumentAction(_: Answer<Said>, form: FormData): Promise<Answer<Said>> {
  const { pen } = await actionFor("job.write");
  return answer(await addInstrument(pen, instrumentOf(form)), `${textOf(form, "name")} was added.`);
}

export async function changeInstrumentAction(
  id: string,
  _: Answer<Said>,
  form: FormData,
): Promise<Answer<Said>> {
  const { pen } = await actionFor("job.write");
  return answer(await changeInstrument(pen, id, instrumentOf(form)), "Saved.");
}

export async function retireInstrumentAction(id: string, retire: boolean): Promise<Answer<Said>> {
  const { pen } = await actionFor("job.write");
  return answer(
    await retireInstrument(pen, id, retire ? new Date() : null),
    retire ? "Out of use." : "In use again.",
  );
}
