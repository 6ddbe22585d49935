"use server";

import path from "node:path";
import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import { backupSentence, backUpAside, chosenIssues, nightlyName, writeNightlyPlan } from "@/lib/backup";
import { answerOf, fail, ok, refused, type Answer } from "@/lib/base";
import { dataDir, isAllInFolder } from "@/lib/db";
import { actionFor, anything, form } from "../_door/action-for";
import { textOf } from "../_door/form-text";

const elsewhere =
  "Database or photos lie elsewhere: back up the PostgreSQL and the bucket by their own means, and the two keys in the data folder.";

/** Makes a backup now, in a process of its own: a folder of its own inside the one named. */
export const backUpNowAction = actionFor(
  "data.keep",
  [anything, form],
  async (_now, _before, sent): Promise<Answer<Said>> => {
    const folder = textOf(sent, "folder").trim();
    if (!isAllInFolder()) return refused("no-backup", elsewhere);
    const wrong = chosenIssues(dataDir(), folder);
    if (wrong.length > 0) return answerOf(fail(...wrong), backupSentence);
    const { ok: good, said } = await backUpAside(dataDir(), [path.join(folder, nightlyName(new Date()))]);
    revalidatePath("/backups");
    return good ? ok({ text: said }) : refused("no-backup", said || "The backup could not be made.");
  },
);

/** Switches the nightly backup on, or changes it. */
export const nightlyOnAction = actionFor(
  "data.keep",
  [anything, form],
  async ({ pen }, _before, sent): Promise<Answer<Said>> => {
    if (!isAllInFolder()) return refused("no-backup", elsewhere);
    const plan = {
      folder: textOf(sent, "folder").trim(),
      keep: Number(textOf(sent, "keep")),
      hour: Number(textOf(sent, "hour")),
    };
    const written = await writeNightlyPlan(pen, plan, new Date());
    revalidatePath("/backups");
    return written.ok
      ? ok({ text: "Switched on. It is made while Toeline runs; a night slept through is made up for." })
      : answerOf(written, backupSentence);
  },
);

export const nightlyOffAction = actionFor(
  "data.keep",
  [anything, form],
  async ({ pen }): Promise<Answer<Said>> => {
    await writeNightlyPlan(pen, null, new Date());
    revalidatePath("/backups");
    return ok({ text: "Switched off. Copies made until now stay." });
  },
);
