"use server";

import { revalidatePath } from "next/cache";
import { cookies } from "next/headers";
import { z } from "zod";
import { listViews, MOST_CHOSEN, type BulkDone, type WeldChoice } from "@/components/beads";
import { issue, ok, type Result } from "@/lib/base";
import { beadThing, deleteBead, deletedBeadThing, restoreBead } from "@/lib/beads";
import { attachBead, listJobs } from "@/lib/jobs";
import type { Deed, Thing } from "@/lib/people";
import { recordSentence, type RecordIssue } from "@/lib/store";
import { actionFor, id, openAction } from "../_door/action-for";
import type { Here } from "../_door/here";
import { LIST_VIEW } from "../_door/list-view";

const ids = z.array(z.string().max(60)).max(MOST_CHOSEN).readonly();

/**
 * One after the other, so that what can be done is done: each on its own permission, and a thing of somebody else's is "not
 * there" as it is on every page.
 */
async function onEach(
  now: Here,
  deed: Deed,
  {
    asked,
    thingOf,
    work,
  }: {
    asked: readonly string[];
    thingOf: (id: string) => Promise<Thing | null>;
    work: (id: string) => Promise<Result<{ readonly deletedId?: string } | null, RecordIssue>>;
  },
): Promise<BulkDone> {
  const [done, refused]: [BulkDone["done"][number][], BulkDone["refused"][number][]] = [[], []];
  for (const id of new Set(asked)) {
    const thing = await thingOf(id);
    const isTheirs = thing !== null && now.may(deed, thing);
    const result = isTheirs ? await work(id) : null;
    if (result?.ok) done.push({ id, ...result.value });
    else refused.push({ id, why: recordSentence(result?.issues[0] ?? issue("bead-gone")) });
  }
  revalidatePath("/", "layout");
  return { done, refused };
}

export const deleteBeadsAction = actionFor("bead.delete", [ids], async (now, asked): Promise<BulkDone> =>
  onEach(now, "bead.delete", {
    asked,
    thingOf: (id) => beadThing(now.db, id),
    work: (id) => deleteBead(now.pen, id, new Date()),
  }),
);

export const restoreBeadsAction = actionFor("bead.delete", [ids], async (now, asked): Promise<BulkDone> =>
  onEach(now, "bead.delete", {
    asked,
    thingOf: (id) => deletedBeadThing(now.db, id),
    work: async (id) => {
      const back = await restoreBead(now.pen, id, new Date());
      return back.ok ? ok(null) : back;
    },
  }),
);

export const attachBeadsAction = actionFor(
  "job.write",
  [ids, id, id],
  async (now, asked, jobId, weldId): Promise<BulkDone> =>
    onEach(now, "bead.write", {
      asked,
      thingOf: (id) => beadThing(now.db, id),
      work: (id) => attachBead(now.pen, id, { jobId, weldId }),
    }),
);

export const weldChoicesAction = actionFor("job.write", [], async ({ db }): Promise<readonly WeldChoice[]> =>
  (await listJobs(db)).flatMap(({ id: jobId, number, content }) =>
    content.welds.map(({ id: weldId, ...weld }) => ({
      jobId,
      weldId,
      label: `Job ${number}, ${content.title}: weld ${weld.number}`,
    })),
  ),
);

/** How the list lies belongs to whoever looks: a cookie. */
export const chooseListViewAction = openAction([z.enum(listViews)], async (view): Promise<void> => {
  (await cookies()).set(LIST_VIEW, view, { maxAge: 60 * 60 * 24 * 365, sameSite: "lax", path: "/" });
  revalidatePath("/");
});
