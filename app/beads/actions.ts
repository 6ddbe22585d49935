"use server";

import { revalidatePath } from "next/cache";
import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { nextBead, TriedChangeSchema } from "@/lib/assess";
import { fail, issue, refused, type Answer } from "@/lib/base";
import { personIdOf } from "@/lib/people";
import { createBead, getBead } from "@/lib/beads";
import { photoPlace } from "@/lib/db";
import { guidedBead } from "@/lib/demo";
import { deleteSetup, resetShopCounts, saveSetup, type SavedSetupRecord } from "@/lib/shop";
import { writeSetting } from "@/lib/store";
import { RunSetupSchema } from "@/lib/setup";
import { actionFor, anything, beadActionFor, id, openAction, words } from "../_door/action-for";
import { recordAnswer } from "../_door/answer";
import { here, welderOf } from "../_door/here";
import { UNITS_SETTING, UnitChoiceSchema } from "../_door/units";

/** The next bead: the given set-up, the change that was proposed, and a pointer back to this one. */
export const runAgain = beadActionFor(
  "bead.write",
  [id, anything, anything],
  async ({ pen, db }, beadId, tried, setup): Promise<void> => {
    const change = TriedChangeSchema.safeParse(tried);
    const nextSetup = RunSetupSchema.safeParse(setup);
    const before = await getBead(db, beadId);
    if (!change.success || !nextSetup.success || !before)
      throw new Error("the next bead was asked for with unreadable values");
    const made = await createBead(pen, {
      ...nextBead(before.content, change.data, nextSetup.data),
      welderId: before.welderId,
      previousId: beadId,
    });
    if (!made.ok) throw new Error(made.issues[0]?.code ?? "no bead");
    revalidatePath("/");
    redirect(`/beads/${made.value.id}`);
  },
);

/** Somebody's first bead, on a photo of the demo's, with what comes next said on top. */
export const beginFirstBeadAction = actionFor("bead.create", [], async ({ pen, actor }): Promise<void> => {
  const id = await guidedBead(pen, photoPlace(), welderOf(actor));
  revalidatePath("/");
  redirect(`/beads/${id}?guide`);
});

export const resetShopCountsAction = actionFor("settings.write", [], async ({ pen }): Promise<void> => {
  await resetShopCounts(pen, new Date());
  revalidatePath("/", "layout");
});

export const saveSetupAction = actionFor(
  "bead.create",
  [words, anything],
  async ({ pen, actor, may }, name, setup): Promise<Answer<SavedSetupRecord>> => {
    const parsed = RunSetupSchema.safeParse(setup);
    if (!parsed.success)
      return refused(
        "setup-not-understood",
        "This set-up could not be read. Correct the marked fields first.",
      );
    // Whoever keeps no settings keeps their own: the shop's set-ups are what others start from.
    const ownerId = may("settings.write") ? null : personIdOf(actor);
    if (ownerId === null && !may("settings.write")) throw new Error("refused: settings.write");
    return recordAnswer(await saveSetup(pen, name, parsed.data, ownerId));
  },
);

export const deleteSetupAction = actionFor(
  "bead.create",
  [id],
  async ({ pen, actor, may }, id): Promise<Answer<null>> => {
    const personId = personIdOf(actor);
    const own = personId === null ? null : await deleteSetup(pen, id, personId);
    if (own?.ok || !may("settings.write")) return recordAnswer(own ?? fail(issue("setup-gone")));
    return recordAnswer(await deleteSetup(pen, id, null));
  },
);

/** The units belong to whoever looks: a cookie. Whoever may also makes them what others start with. */
export const chooseUnitsAction = openAction([UnitChoiceSchema], async (units): Promise<void> => {
  (await cookies()).set(UNITS_SETTING, units, { maxAge: 60 * 60 * 24 * 365, sameSite: "lax", path: "/" });
  const now = await here();
  if (now.may("settings.write")) await writeSetting(now.pen, UNITS_SETTING, units);
  revalidatePath("/", "layout");
});
