"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { emptyBeadJudgement, TriedChangeSchema } from "@/lib/assess";
import type { Issue, Result } from "@/lib/base";
import { db } from "@/lib/db";
import {
  createBead,
  deleteBead,
  deleteSetup,
  getBead,
  recordSentence,
  removePhoto,
  resetShopCounts,
  saveSetup,
  writeSetting,
  type RecordIssue,
  type SavedSetupRecord,
} from "@/lib/record";
import { RunSetupSchema } from "@/lib/setup";
import { UNITS_SETTING, UnitChoiceSchema, type UnitChoice } from "../_door/units";

/** What a screen gets back: the value, or the codes with their sentences already found. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: string; readonly message: string };

function answer<T>(result: Result<T, RecordIssue>): Answer<T> {
  if (result.ok) return result;
  const [first] = result.issues;
  if (!first) throw new Error("a refusal without a reason");
  return { ok: false, code: (first as Issue).code, message: recordSentence(first) };
}

/** Starts an empty bead and opens it; the last set-up is offered there, never filled in unasked. */
export async function startBead(): Promise<void> {
  const made = await createBead(db());
  if (!made.ok) throw new Error(made.issues[0]?.code ?? "no bead");
  revalidatePath("/");
  redirect(`/beads/${made.value.id}`);
}

/** The next bead: the given set-up, the change that was proposed, and a pointer back to this one. */
export async function runAgain(beadId: string, tried: unknown, setup: unknown): Promise<void> {
  const change = TriedChangeSchema.safeParse(tried);
  const nextSetup = RunSetupSchema.safeParse(setup);
  const before = await getBead(db(), beadId);
  if (!change.success || !nextSetup.success || !before)
    throw new Error("the next bead was asked for with unreadable values");
  const { title, welder, judgement } = before.content;
  const made = await createBead(db(), {
    title: nextTitle(title),
    welder,
    setup: nextSetup.data,
    previousId: beadId,
    judgement: {
      ...emptyBeadJudgement,
      criteriaId: judgement.criteriaId,
      criteriaSettings: judgement.criteriaSettings,
      weld: judgement.weld,
      tried: change.data,
    },
  });
  if (!made.ok) throw new Error(made.issues[0]?.code ?? "no bead");
  revalidatePath("/");
  redirect(`/beads/${made.value.id}`);
}

/** "Lap on 2 mm" -> "Lap on 2 mm, try 2" -> "…, try 3". */
function nextTitle(title: string): string {
  const [, base = title, count] = /^(.*), try (\d+)$/.exec(title) ?? [];
  return `${base}, try ${count ? Number(count) + 1 : 2}`.slice(0, 120);
}

export async function resetShopCountsAction(): Promise<void> {
  await resetShopCounts(db(), new Date());
  revalidatePath("/", "layout");
}

export async function deleteBeadAction(id: string): Promise<Answer<null>> {
  const gone = await deleteBead(db(), id);
  revalidatePath("/");
  return answer(gone);
}

export async function removePhotoAction(beadId: string, photoId: string): Promise<Answer<null>> {
  return answer(await removePhoto(db(), beadId, photoId));
}

export async function saveSetupAction(name: string, setup: unknown): Promise<Answer<SavedSetupRecord>> {
  const parsed = RunSetupSchema.safeParse(setup);
  if (!parsed.success)
    return {
      ok: false,
      code: "setup-not-understood",
      message: "This set-up could not be read. Correct the marked fields first.",
    };
  return answer(await saveSetup(db(), name, parsed.data));
}

export async function deleteSetupAction(id: string): Promise<Answer<null>> {
  return answer(await deleteSetup(db(), id));
}

export async function chooseUnitsAction(choice: UnitChoice): Promise<void> {
  await writeSetting(db(), UNITS_SETTING, UnitChoiceSchema.parse(choice));
  revalidatePath("/", "layout");
}
