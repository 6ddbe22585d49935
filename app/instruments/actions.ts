"use server";

import { revalidatePath } from "next/cache";
import type { FormAnswer } from "@/components/ui";
import { addInstrument, changeInstrument, recordSentence, retireInstrument } from "@/lib/record";
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

function answer(
  result: Awaited<ReturnType<typeof addInstrument | typeof changeInstrument>>,
  text: string,
): FormAnswer {
  revalidatePath("/instruments");
  return result.ok
    ? { done: true, text }
    : { done: false, text: result.issues.map(recordSentence).join(" ") };
}

export async function addInstrumentAction(_: FormAnswer, form: FormData): Promise<FormAnswer> {
  const { pen } = await actionFor("job.write");
  return answer(await addInstrument(pen, instrumentOf(form)), `${textOf(form, "name")} was added.`);
}

export async function changeInstrumentAction(id: string, _: FormAnswer, form: FormData): Promise<FormAnswer> {
  const { pen } = await actionFor("job.write");
  return answer(await changeInstrument(pen, id, instrumentOf(form)), "Saved.");
}

export async function retireInstrumentAction(id: string, retire: boolean): Promise<FormAnswer> {
  const { pen } = await actionFor("job.write");
  return answer(
    await retireInstrument(pen, id, retire ? new Date() : null),
    retire ? "Out of use." : "In use again.",
  );
}
