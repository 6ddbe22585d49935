import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { RunSetupSchema, type RunSetup } from "@/lib/setup";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface SavedSetupRecord {
  readonly id: string;
  readonly name: string;
  readonly setup: RunSetup;
}

export async function listSavedSetups(db: Db): Promise<readonly SavedSetupRecord[]> {
  const rows = await db.savedSetup.findMany({ orderBy: { name: "asc" } });
  return rows.map(({ id, name, setup }) => ({ id, name, setup: RunSetupSchema.parse(setup) }));
}

const NameSchema = z.string().trim().min(1).max(80);

/** Saves a set-up under a name; the same name again replaces it, which is what saving under a name means. */
export async function saveSetup(
  pen: Pen,
  name: string,
  setup: RunSetup,
): Promise<Result<SavedSetupRecord, RecordIssue>> {
  const parsed = NameSchema.safeParse(name);
  if (!parsed.success) return fail(issue("setup-name-missing", ["name"]));
  return writing(pen, async (tx, log) => {
    const row = await tx.savedSetup.upsert({
      where: { name: parsed.data },
      create: { id: newId(), name: parsed.data, setup },
      update: { setup },
    });
    await log(`setup:${row.id}`, "setup.saved");
    return ok({ id: row.id, name: row.name, setup });
  });
}

export async function deleteSetup(pen: Pen, id: string): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.savedSetup.deleteMany({ where: { id } });
    if (count === 0) return fail(issue("setup-gone"));
    await log(`setup:${id}`, "setup.deleted");
    return ok(null);
  });
}

/** The set-up of the bead started last, this one aside: what a welder running a row of coupons wants to start from. */
export async function lastSetup(
  db: Db,
  notOf: string,
  only: { readonly welderId?: string } = {},
): Promise<RunSetup | null> {
  const row = await db.bead.findFirst({
    where: { id: { not: notOf }, ...only },
    orderBy: { number: "desc" },
    select: { setup: true },
  });
  return row ? RunSetupSchema.parse(row.setup) : null;
}
