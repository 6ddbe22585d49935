"use server";

import { revalidatePath } from "next/cache";
import type { ShopDraft } from "@/components/criteria/shop-draft";
import type { TriedVerdict } from "@/components/criteria/try-out";
import type { FormAnswer } from "@/components/ui";
import { ShopCriteriaSchema, shopSetId } from "@/lib/accept";
import { assess, defaultAssessContext, marksAcrossPhotos } from "@/lib/assess";
import { roleNames, type Actor } from "@/lib/people";
import type { Db } from "@/lib/db";
import {
  getBead,
  getPerson,
  recordSentence,
  saveShopSet,
  withdrawShopSet,
  type RecordIssue,
} from "@/lib/record";
import { codeUnitsOf, resultWords, rowSentence, verdictSays } from "@/lib/report";
import { currentUnits } from "../_door/current-units";
import { actionFor, beadActionFor } from "../_door/here";

const refused = (issues: readonly RecordIssue[]): FormAnswer => ({
  done: false,
  text: [...new Set(issues.map(recordSentence))].join(" "),
});

/** Role and identification: a version is never changed, so no name may stand in it. */
async function authorOf(db: Db, actor: Actor): Promise<string> {
  if (actor.kind !== "person") return roleNames.owner;
  const person = await getPerson(db, actor.personId);
  return [roleNames[actor.role], person?.mark].filter(Boolean).join(" ");
}

function everywhere(): void {
  revalidatePath("/criteria", "layout");
}

/** The first version of new limits. Answers with their key as `once`: the editor opens their page. */
export async function createShopSetAction(_: number, draft: unknown): Promise<FormAnswer> {
  const { pen, db, actor } = await actionFor("criteria.write");
  const saved = await saveShopSet(pen, null, 0, draft, await authorOf(db, actor));
  if (!saved.ok) return refused(saved.issues);
  everywhere();
  return { done: true, text: "Saved as version 1.", once: saved.value.key };
}

/** Answers with the new version as `once`, so that the next save from the same window is based on it. */
export async function saveShopSetAction(key: string, basedOn: number, draft: unknown): Promise<FormAnswer> {
  const { pen, db, actor } = await actionFor("criteria.write");
  const saved = await saveShopSet(pen, key, basedOn, draft, await authorOf(db, actor));
  if (!saved.ok) return refused(saved.issues);
  everywhere();
  const { version, isNew } = saved.value;
  const text = isNew
    ? `Saved as version ${version}. What was given an older version keeps it.`
    : `Nothing differs from version ${version}, so no new one was made.`;
  return { done: true, text, once: String(version) };
}

export async function withdrawShopSetAction(key: string, withdraw: boolean): Promise<FormAnswer> {
  const { pen } = await actionFor("criteria.write");
  const done = await withdrawShopSet(pen, key, withdraw ? new Date() : null);
  everywhere();
  if (!done.ok) return refused(done.issues);
  return { done: true, text: withdraw ? "Withdrawn: no choice offers it any more." : "Offered again." };
}

/** What a bead would be judged by limits that are not saved yet; null where either cannot be read. */
export async function tryShopSetAction(draft: ShopDraft, beadId: string): Promise<TriedVerdict | null> {
  await actionFor("criteria.write");
  const { db } = await beadActionFor("bead.read", beadId);
  const bead = await getBead(db, beadId);
  const set = ShopCriteriaSchema.safeParse({ ...draft, id: "shop-draft", version: 1, author: "draft" });
  if (!bead || !set.success) return null;
  const judgement = {
    ...bead.content.judgement,
    criteriaId: shopSetId(set.data),
    criteriaSettings: {},
  };
  const context = { ...defaultAssessContext, shopSets: [set.data] };
  const { verdict, photos } = assess({ ...bead.content, judgement }, bead.photos, context);
  if (!verdict?.ok) return null;
  const numbers = new Map(marksAcrossPhotos(bead.content, photos).map(({ key, number }) => [key, number]));
  const { preferences } = await currentUnits();
  return {
    word: `${verdictSays(verdict.value).short}.`,
    lines: verdict.value.rows.map((row) => {
      const words = {
        units: preferences,
        codeUnits: codeUnitsOf(verdict.value),
        markNumber: (id: string) => numbers.get(id) ?? null,
      };
      return `${row.title}: ${resultWords[row.result]}. ${rowSentence(row, words)}`;
    }),
  };
}
