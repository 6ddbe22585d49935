import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { RunSetupSchema, type RunSetup } from "@/lib/setup";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface SavedSetupRecord {
  readonly id: string;
  readonly name: string;
  readonly setup: RunSetup;
  /** Whether it is this person's own; false: the shop's. */
  readonly own: boolean;
}

/** The shop's set-ups and a person's own, by name. `personId` null: the shop's alone. */
export async function listSavedSetups(db: Db, personId: string | null): Promise<readonly SavedSetupRecord[]> {
  const where = { OR: [{ ownerId: null }, ...(personId === null ? [] : [{ ownerId: personId }])] };
  const rows = await db.savedSetup.findMany({ where, orderBy: [{ name: "asc" }, { id: "asc" }] });
  return rows.map(({ id, name, setup, ownerId }) => ({
    ...{ id, name, setup: RunSetupSchema.parse(setup) },
    own: ownerId !== null,
  }));
}

const NameSchema = z.string().trim().min(1).max(80);

/**
 * Saves a set-up under a name; the same name again replaces it, which is what saving under a name means, but never one of
 * another owner. `ownerId`: the person whose own it is; null: the shop's.
 */
export async function saveSetup(
  pen: Pen,
  name: string,
  setup: RunSetup,
  ownerId: string | null = null,
): Promise<Result<SavedSetupRecord, RecordIssue>> {
  const parsed = NameSchema.safeParse(name);
  if (!parsed.success) return fail(issue("setup-name-missing", ["name"]));
  return writing(pen, async (tx, log) => {
    const before = await tx.savedSetup.findFirst({ where: { name: parsed.data, ownerId } });
    const row = before
      ? await tx.savedSetup.update({ where: { id: before.id }, data: { setup } })
      : await tx.savedSetup.create({ data: { id: newId(), name: parsed.data, setup, ownerId } });
    await log(`setup:${row.id}`, "setup.saved");
    return ok({ id: row.id, name: row.name, setup, own: ownerId !== null });
  });
}

/** Removes a saved set-up. `ownerId`: of this person's own only; null: of the shop's only. */
export async function deleteSetup(
  pen: Pen,
  id: string,
  ownerId: string | null,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.savedSetup.deleteMany({ where: { id, ownerId } });
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
