import { z } from "zod";
import { canonicalJson, fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { saysHowRun } from "@/lib/assess";
import { RunSetupSchema, type RunSetup } from "@/lib/setup";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface SavedSetupRecord {
  readonly id: string;
  readonly name: string;
  readonly setup: RunSetup;
  /** Whether it is this person's own; false: the shop's. */
  readonly own: boolean;
  /** What it was before it was saved over, the newest first. */
  readonly earlier: readonly EarlierSetup[];
}

/** How often a set-up may be saved over before the oldest goes. Own estimate. */
const MOST_EARLIER = 10;

const EarlierSchema = z.array(z.object({ setup: RunSetupSchema, until: z.string().max(40) })).readonly();
/** `until`: when it was saved over, ISO 8601. */
export type EarlierSetup = z.infer<typeof EarlierSchema>[number];

/** The shop's set-ups and a person's own, by name. `personId` null: the shop's alone. */
export async function listSavedSetups(db: Db, personId: string | null): Promise<readonly SavedSetupRecord[]> {
  const where = { OR: [{ ownerId: null }, ...(personId === null ? [] : [{ ownerId: personId }])] };
  const rows = await db.savedSetup.findMany({ where, orderBy: [{ name: "asc" }, { id: "asc" }] });
  return rows.map(toSaved);
}

interface Row {
  readonly id: string;
  readonly name: string;
  readonly setup: unknown;
  readonly ownerId: string | null;
  readonly earlier: unknown;
}

const toSaved = ({ id, name, setup, ownerId, earlier }: Row): SavedSetupRecord => ({
  ...{ id, name, setup: RunSetupSchema.parse(setup), own: ownerId !== null },
  earlier: EarlierSchema.parse(earlier ?? []),
});

const NameSchema = z.string().trim().min(1).max(80);

/**
 * Saves a set-up under a name; the same name again replaces it, which is what saving under a name means, but never one of
 * another owner. What it was before stays with it. `ownerId`: the person whose own it is; null: the shop's.
 */
export async function saveSetup(
  pen: Pen,
  name: string,
  setup: RunSetup,
  ownerId: string | null = null,
  now = new Date(),
): Promise<Result<SavedSetupRecord, RecordIssue>> {
  const parsed = NameSchema.safeParse(name);
  if (!parsed.success) return fail(issue("setup-name-missing", ["name"]));
  return writing(pen, async (tx, log) => {
    const before = await tx.savedSetup.findFirst({ where: { name: parsed.data, ownerId } });
    const was = before && toSaved(before);
    // Saved again as it is: there is nothing to keep, and nothing to say.
    if (was && canonicalJson(was.setup) === canonicalJson(setup)) return ok(was);
    const earlier =
      was && [{ setup: was.setup, until: now.toISOString() }, ...was.earlier].slice(0, MOST_EARLIER);
    const row = earlier
      ? await tx.savedSetup.update({ where: { id: was.id }, data: { setup, earlier } })
      : await tx.savedSetup.create({ data: { id: newId(), name: parsed.data, setup, ownerId } });
    await log(`setup:${row.id}`, "setup.saved");
    return ok(toSaved(row));
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

/** How many beads back a set-up is looked for that says how it was run. Own estimate. */
const LOOKED_AT = 20;

/**
 * The set-up of the bead started last, this one aside: what a welder running a row of coupons wants to start from. A bead
 * that was only planned, or of which nothing was noted, says nothing to start from and is passed over.
 */
export async function lastSetup(
  db: Db,
  notOf: string,
  only: { readonly welderId?: string } = {},
): Promise<RunSetup | null> {
  const rows = await db.bead.findMany({
    where: { id: { not: notOf }, ...only },
    orderBy: { number: "desc" },
    select: { setup: true },
    take: LOOKED_AT,
  });
  const setups = rows.map(({ setup }) => RunSetupSchema.parse(setup));
  return setups.find(saysHowRun) ?? null;
}
