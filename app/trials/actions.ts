"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { fail, issue, refused, type Answer } from "@/lib/base";
import { trialSheet } from "@/lib/report";
import { showReading } from "@/lib/setup";
import { beginRun, createTrial, getTrial } from "@/lib/series";
import { makeTrial, trialSentence, type TrialAsk } from "@/lib/trials";
import { z } from "zod";
import { actionFor, actionOn, anything, id } from "../_door/action-for";
import { recordAnswer } from "../_door/answer";
import { currentUnits } from "../_door/current-units";
import { welderOf } from "../_door/here";
import { runsOf, thingOfTrial } from "../_door/series";
import { db } from "@/lib/db";

/** A trial laid out inside the wire's rows; what cannot be laid out says why. */
export const makeTrialAction = actionFor(
  "bead.create",
  [anything],
  async ({ pen, actor }, ask): Promise<Answer<null>> => {
    const { preferences } = await currentUnits();
    // Read whole by makeTrial: whatever was sent.
    const made = makeTrial(ask as TrialAsk);
    if (!made.ok) {
      const why = made.issues[0]!;
      return refused(why.code, trialSentence(why, showReading(preferences)));
    }
    const stored = await createTrial(pen, made.value, welderOf(actor));
    if (!stored.ok) return recordAnswer(stored);
    revalidatePath("/trials");
    redirect(`/trials/${stored.value.id}`);
  },
);

const place = z.int().min(0).max(100);

/** Begins the bead that is due. Which settings it has is worked out here, whatever a page was showing. */
export const beginRunAction = actionOn(
  "bead.write",
  [id, place],
  (trialId) => thingOfTrial(db(), trialId),
  async ({ pen, actor, db: store }, trialId, asked): Promise<Answer<null>> => {
    const trial = await getTrial(store, trialId);
    if (trial === null) return recordAnswer(fail(issue("trial-gone")));
    const { preferences } = await currentUnits();
    const { advice } = trialSheet(trial, await runsOf(store, trial), preferences);
    if (advice.code !== "run" || advice.place !== asked)
      return recordAnswer(fail(issue("trial-changed-elsewhere")));
    const begun = await beginRun(pen, trialId, advice, trial.personId ?? welderOf(actor));
    if (!begun.ok) return recordAnswer(begun);
    revalidatePath("/");
    revalidatePath(`/trials/${trialId}`);
    redirect(`/beads/${begun.value.beadId}`);
  },
);
