import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";
import { BeadFilterSchema, type BeadFilter } from "./bead-filter";

export interface SavedFilterRecord {
  readonly id: string;
  readonly name: string;
  readonly filter: BeadFilter;
}

/** Searches kept under a name, by name. One that is no longer understood is left out: it would find something else. */
export async function listSavedFilters(db: Db): Promise<readonly SavedFilterRecord[]> {
  const rows = await db.savedFilter.findMany({ orderBy: { name: "asc" } });
  return rows.flatMap(({ id, name, query }) => {
    const parsed = BeadFilterSchema.safeParse(query);
    return parsed.success ? [{ id, name, filter: parsed.data }] : [];
  });
}

const NameSchema = z.string().trim().min(1).max(80);

/** Keeps a search under a name; the same name again replaces it. */
export async function saveFilter(
  pen: Pen,
  name: string,
  filter: BeadFilter,
): Promise<Result<SavedFilterRecord, RecordIssue>> {
  const parsed = NameSchema.safeParse(name);
  if (!parsed.success) return fail(issue("filter-name-missing", ["name"]));
  return writing(pen, async (tx, log) => {
    const row = await tx.savedFilter.upsert({
      where: { name: parsed.data },
      create: { id: newId(), name: parsed.data, query: filter },
      update: { query: filter },
    });
    await log(`filter:${row.id}`, "filter.saved");
    return ok({ id: row.id, name: row.name, filter });
  });
}

export async function deleteFilter(pen: Pen, id: string): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.savedFilter.deleteMany({ where: { id } });
    if (count === 0) return fail(issue("filter-gone"));
    await log(`filter:${id}`, "filter.deleted");
    return ok(null);
  });
}
