"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Answer } from "@/lib/base";
import { dataDir } from "@/lib/db";
import { answerBead, drawnBeads, getRound, readDrawn, startRound, startSameRound } from "@/lib/drill";
import { eyeLevels, eyeLooks } from "@/lib/eye";
import { personIdOf } from "@/lib/people";
import { actionFor, anything, form, id } from "../_door/action-for";
import { recordAnswer } from "../_door/answer";
import { textOf } from "../_door/form-text";

export const startRoundAction = actionFor(
  "bead.create",
  [form],
  async ({ pen, actor }, sent): Promise<Answer<unknown>> => {
    const look = eyeLooks.find((one) => one === textOf(sent, "look")) ?? "plain";
    const level = eyeLevels.find((one) => one === textOf(sent, "level")) ?? "iso-5817-c";
    const drawn = await drawnBeads(dataDir(), look);
    const made = await startRound(pen, personIdOf(actor), { look, level, drawn }, new Date());
    if (!made.ok) return recordAnswer(made);
    redirect(`/eye/${made.value.id}`);
  },
);

/** The same beads as somebody else, so that the two can be compared. */
export const startSameAction = actionFor(
  "bead.create",
  [id],
  async ({ pen, actor }, setKey): Promise<Answer<unknown>> => {
    const made = await startSameRound(pen, personIdOf(actor), setKey, new Date());
    if (!made.ok) return recordAnswer(made);
    redirect(`/eye/${made.value.id}`);
  },
);

export const answerBeadAction = actionFor(
  "bead.create",
  [id, anything],
  async ({ pen, db, actor }, roundId, input): Promise<Answer<unknown>> => {
    const round = await getRound(db, roundId);
    if (!round || round.personId !== personIdOf(actor)) throw new Error("refused: another's round");
    const beads = await readDrawn(dataDir(), round.round.beadIds);
    const answered = await answerBead(pen, roundId, input, beads, new Date());
    revalidatePath(`/eye/${roundId}`);
    return recordAnswer(answered);
  },
);
