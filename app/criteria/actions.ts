"use server";

import { revalidatePath } from "next/cache";
import { draftOf, type SavedShopSet, type ShopDraft, type TriedVerdict } from "@/components/criteria";
import type { Stored } from "@/components/saving";
import type { Said } from "@/components/ui";
import { ShopCriteriaSchema, shopSetId } from "@/lib/accept";
import { assess, defaultAssessContext, marksAcrossPhotos } from "@/lib/assess";
import { fail, issue, ok, type Answer } from "@/lib/base";
import { getBead } from "@/lib/beads";
import { listShopSets, newestVersions, saveShopSet, withdrawShopSet } from "@/lib/shop";
import { codeUnitsOf, notCarriedSentence, resultWords, rowSentence, verdictSays } from "@/lib/report";
import { actionFor, anything, basedOn, id, yes } from "../_door/action-for";
import { recordAnswer, recordSaid } from "../_door/answer";
import { currentUnits } from "../_door/current-units";
import { mustOnBead } from "../_door/here";
import { authorOf } from "./author-of";

function everywhere(): void {
  revalidatePath("/criteria", "layout");
}

/** The first version of new limits; the editor opens their page by the key. */
export const createShopSetAction = actionFor(
  "criteria.write",
  [basedOn, anything],
  async ({ pen, db, actor }, _, draft): Promise<Answer<SavedShopSet>> => {
    const saved = await saveShopSet(pen, null, 0, draft, await authorOf(db, actor));
    if (!saved.ok) return recordAnswer(saved);
    everywhere();
    return ok({ text: "Saved as version 1.", revision: 1, key: saved.value.key });
  },
);

export const saveShopSetAction = actionFor(
  "criteria.write",
  [id, basedOn, anything],
  async ({ pen, db, actor }, key, basedOn, draft): Promise<Answer<SavedShopSet>> => {
    const saved = await saveShopSet(pen, key, basedOn, draft, await authorOf(db, actor));
    if (!saved.ok) return recordAnswer(saved);
    everywhere();
    const { version, isNew } = saved.value;
    const text = isNew
      ? `Saved as version ${version}. What was given an older version keeps it.`
      : `Nothing differs from version ${version}, so no new one was made.`;
    return ok({ text, revision: version, key });
  },
);

/** The newest version of a set. */
export const readShopSetAction = actionFor(
  "criteria.write",
  [id],
  async ({ db }, key): Promise<Answer<Stored<ShopDraft>>> => {
    const [newest] = newestVersions(await listShopSets(db, { key }));
    if (!newest) return recordAnswer(fail(issue("criteria-gone")));
    return ok({ revision: newest.version, content: draftOf(newest.content) });
  },
);

export const withdrawShopSetAction = actionFor(
  "criteria.write",
  [id, yes],
  async ({ pen }, key, withdraw): Promise<Answer<Said>> => {
    const done = await withdrawShopSet(pen, key, withdraw ? new Date() : null);
    everywhere();
    return recordSaid(done, withdraw ? "Withdrawn: no choice offers it any more." : "Offered again.");
  },
);

/** What a bead would be judged by limits that are not saved yet; null where either cannot be read. */
export const tryShopSetAction = actionFor(
  "criteria.write",
  [anything, id],
  async (now, draft, beadId): Promise<TriedVerdict | null> => {
    await mustOnBead(now, "bead.read", beadId);
    const { db } = now;
    const bead = await getBead(db, beadId);
    const set = ShopCriteriaSchema.safeParse({
      ...(draft as object),
      id: "shop-draft",
      version: 1,
      author: "draft",
    });
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
      lines: [
        ...[notCarriedSentence(verdict.value.notCarried)].filter(Boolean),
        ...verdict.value.rows.map((row) => {
          const words = {
            units: preferences,
            codeUnits: codeUnitsOf(verdict.value),
            markNumber: (id: string) => numbers.get(id) ?? null,
          };
          return `${row.title}: ${resultWords[row.result]}. ${rowSentence(row, words)}`;
        }),
      ],
    };
  },
);
