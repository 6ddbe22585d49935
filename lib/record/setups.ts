import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { RunSetupSchema, type RunSetup } from "@/lib/setup";
import { guardStore } from "./guard-store";
import { newId } from "./new-id";
import type { RecordIssue } from "./types";

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
  db: Db,
  name: string,
  setup: RunSetup,
): Promise<Result<SavedSetupRecord, RecordIssue>> {
  const parsed = NameSchema.safeParse(name);
  if (!parsed.success) return fail(issue("setup-name-missing", ["name"]));
  return guardStore(async () => {
    const row = await db.savedSetup.upsert({
      where: { name: parsed.data },
      create: { id: newId(), name: parsed.data, setup },
      update: { setup },
    });
    return ok({ id: row.id, name: row.name, setup });
  });
}

export async function deleteSetup(db: Db, id: string): Promise<Result<null, RecordIssue>> {
  return guardStore(async () => {
    const { count } = await db.savedSetup.deleteMany({ where: { id } });
    return count === 0 ? fail(issue("setup-gone")) : ok(null);
  });
}

/** The set-up of the bead started last, this one aside: what a welder running a row of coupons wants to start from. */
export async function lastSetup(db: Db, notOf: string): Promise<RunSetup | null> {
  const row = await db.bead.findFirst({
    where: { id: { not: notOf } },
    orderBy: { number: "desc" },
    select: { setup: true },
  });
  return row ? RunSetupSchema.parse(row.setup) : null;
}
