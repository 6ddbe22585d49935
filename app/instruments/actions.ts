"use server";

import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import type { Answer, Result } from "@/lib/base";
import { addInstrument, addStudy, changeInstrument, retireInstrument, withdrawStudy } from "@/lib/jobs";
import type { RecordIssue } from "@/lib/store";
import { actionFor, anything, form, id, yes } from "../_door/action-for";
import { recordAnswer, recordSaid } from "../_door/answer";
import { textOf } from "../_door/form-text";

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

export const addInstrumentAction = actionFor(
  "job.write",
  [anything, form],
  async ({ pen }, _, form): Promise<Answer<Said>> => {
    return answer(await addInstrument(pen, instrumentOf(form)), `${textOf(form, "name")} was added.`);
  },
);

export const changeInstrumentAction = actionFor(
  "job.write",
  [id, anything, form],
  async ({ pen }, id, _, form): Promise<Answer<Said>> => {
    return answer(await changeInstrument(pen, id, instrumentOf(form)), "Saved.");
  },
);

export const retireInstrumentAction = actionFor(
  "job.write",
  [id, yes],
  async ({ pen }, id, retire): Promise<Answer<Said>> => {
    return answer(
      await retireInstrument(pen, id, retire ? new Date() : null),
      retire ? "Out of use." : "In use again.",
    );
  },
);

/** A study as its sheet sends it; read whole by the store, whatever was sent. */
export const addStudyAction = actionFor(
  "job.write",
  [id, anything],
  async ({ pen }, instrumentId, study): Promise<Answer<{ readonly id: string }>> => {
    const added = await addStudy(pen, instrumentId, study);
    revalidatePath("/instruments", "layout");
    return recordAnswer(added);
  },
);

export const withdrawStudyAction = actionFor(
  "job.write",
  [id, yes],
  async ({ pen }, studyId, withdraw): Promise<Answer<Said>> => {
    const done = await withdrawStudy(pen, studyId, withdraw ? new Date() : null);
    revalidatePath("/instruments", "layout");
    return recordSaid(
      done,
      withdraw ? "Withdrawn: readings from now on do not carry it." : "It counts again from now on.",
    );
  },
);
