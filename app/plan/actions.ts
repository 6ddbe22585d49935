"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { plannedBead } from "@/lib/assess";
import { createBead } from "@/lib/beads";
import { planRun } from "@/lib/plan";
import { actionFor, words } from "../_door/action-for";
import { welderOf } from "../_door/here";
import { planAsked } from "./plan-asked";

/** A new bead that is to be run by the plan, which is no word yet of how it was run; the plan is worked out anew here, for an address may say anything. */
export const startFromPlan = actionFor(
  "bead.create",
  [words],
  async ({ pen, actor }, query): Promise<void> => {
    const { ask } = await planAsked(new URLSearchParams(query));
    const planned = planRun(ask);
    if (!planned.ok) redirect(`/plan?${query}`);
    const made = await createBead(pen, { ...plannedBead(planned.value.setup), welderId: welderOf(actor) });
    if (!made.ok) throw new Error(made.issues[0]?.code ?? "no bead");
    revalidatePath("/");
    redirect(`/beads/${made.value.id}`);
  },
);
