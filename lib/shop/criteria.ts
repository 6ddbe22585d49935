import { readShopSetId, ShopCriteriaSchema, shopSetId, type ShopCriteria } from "@/lib/accept";
import { canonicalJson, fail, issue, ok, type Result } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";
import { writing, type Pen, type RecordIssue } from "@/lib/store";

/** One version of the shop's own limits; its row is never changed, only withdrawn. */
export interface ShopSetRecord {
  /** "KEY@VERSION" */
  readonly id: string;
  readonly key: string;
  readonly version: number;
  readonly content: ShopCriteria;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  /** Since when it is not offered any more; what was judged by it still is. */
  readonly withdrawnAt: string | null;
}

type Row = {
  id: string;
  key: string;
  version: number;
  content: unknown;
  createdAt: Date;
  retiredAt: Date | null;
};
const toSet = ({ id, key, version, content, createdAt, retiredAt }: Row): ShopSetRecord => ({
  id,
  key,
  version,
  content: ShopCriteriaSchema.parse(content),
  createdAt: createdAt.toISOString(),
  withdrawnAt: retiredAt?.toISOString() ?? null,
});

/** Every version of every set (or of one key), newest first. */
export async function listShopSets(
  db: Db | Tx,
  only: { readonly key?: string } = {},
): Promise<readonly ShopSetRecord[]> {
  const rows = await db.shopCriteria.findMany({
    where: only,
    orderBy: [{ createdAt: "desc" }, { version: "desc" }],
  });
  return rows.map(toSet);
}

/** One version by "KEY@VERSION"; null when there is none, and for the id of a built-in set. */
export async function getShopSet(db: Db | Tx, id: string): Promise<ShopSetRecord | null> {
  if (readShopSetId(id) === null) return null;
  const row = await db.shopCriteria.findUnique({ where: { id } });
  return row && toSet(row);
}

/** The newest version of each key, in the order of the list. */
export function newestVersions(sets: readonly ShopSetRecord[]): readonly ShopSetRecord[] {
  const newest = new Map<string, ShopSetRecord>();
  for (const set of sets) if ((newest.get(set.key)?.version ?? 0) < set.version) newest.set(set.key, set);
  return sets.filter((set) => newest.get(set.key) === set);
}

/** What a choice offers: the newest version of each key in use, and `chosen` whatever became of it since. */
export async function shopSetsToChoose(
  db: Db,
  chosen: readonly (string | null)[] = [],
): Promise<readonly ShopCriteria[]> {
  const sets = await listShopSets(db);
  const offered = new Set(newestVersions(sets).filter(({ withdrawnAt }) => withdrawnAt === null));
  return sets.filter((set) => offered.has(set) || chosen.includes(set.id)).map(({ content }) => content);
}

/** What a person writes of a set; key, version and author are given by the shop's record. */
export type ShopDraft = Pick<ShopCriteria, "title" | "rows" | "note" | "notCarried">;

function misread(error: { issues: readonly { path: readonly PropertyKey[]; message: string }[] }) {
  return fail<RecordIssue>(
    ...error.issues.map(({ path, message }) =>
      issue(
        "criteria-not-understood" as const,
        path.map((step) => (typeof step === "number" ? step : String(step))),
        { reason: message },
      ),
    ),
  );
}

/** "First week: stringers" becomes "shop-first-week-stringers"; the letters a key may have, and no more. */
function keyFrom(title: string): string {
  const letters = title
    .normalize("NFKD")
    .replace(/[^A-Za-z0-9]+/g, "-")
    .toLowerCase()
    .slice(0, 34)
    .replace(/^-+|-+$/g, "");
  return `shop-${letters || "limits"}`;
}

async function freeKey(tx: Tx, title: string): Promise<string> {
  const wanted = keyFrom(title);
  const taken = new Set(
    (await tx.shopCriteria.findMany({ select: { key: true }, distinct: ["key"] })).map(({ key }) => key),
  );
  for (let next = 1; ; next += 1) {
    const key = next === 1 ? wanted : `${wanted}-${next}`;
    if (!taken.has(key)) return key;
  }
}

/** Writes one version; whoever calls enters it in the log. */
export async function writeShopSet(tx: Tx, content: ShopCriteria): Promise<string> {
  const id = shopSetId(content);
  await tx.shopCriteria.create({ data: { id, key: content.id, version: content.version, content } });
  return id;
}

export interface SavedSet {
  readonly key: string;
  readonly version: number;
  /** False where nothing differed from the newest version, so that none was made. */
  readonly isNew: boolean;
}

/**
 * A set of its own (`key` null), or the next version of one. `basedOn`: the version the person had before them.
 * Errors: criteria-not-understood at each field, criteria-gone, criteria-changed-elsewhere.
 */
export async function saveShopSet(
  pen: Pen,
  key: string | null,
  basedOn: number,
  draft: unknown,
  author: string,
): Promise<Result<SavedSet, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const given = typeof draft === "object" && draft !== null ? draft : {};
    const parse = (id: string, version: number) =>
      ShopCriteriaSchema.safeParse({ ...given, id, version, author, schemaVersion: undefined });
    const first = parse(key ?? "shop-limits", 1);
    if (!first.success) return misread(first.error);
    const last =
      key === null ? null : await tx.shopCriteria.findFirst({ where: { key }, orderBy: { version: "desc" } });
    if (key !== null && !last) return fail(issue("criteria-gone"));
    if (last && last.version !== basedOn)
      return fail(issue("criteria-changed-elsewhere", [], { version: last.version }));
    if (last && sameDraft(toSet(last).content, first.data))
      return ok<SavedSet>({ key: last.key, version: last.version, isNew: false });
    const named = last?.key ?? (await freeKey(tx, first.data.title));
    const version = (last?.version ?? 0) + 1;
    const parsed = parse(named, version);
    if (!parsed.success) return misread(parsed.error);
    const id = await writeShopSet(tx, parsed.data);
    await log(`criteria:${id}`, "criteria.saved", { version, rows: parsed.data.rows.length });
    return ok<SavedSet>({ key: named, version, isNew: true });
  });
}

function sameDraft(a: ShopDraft, b: ShopDraft): boolean {
  const part = ({ title, rows, note, notCarried }: ShopDraft) =>
    canonicalJson({ title, rows, note, notCarried: notCarried ?? null });
  return part(a) === part(b);
}

/** Takes a set out of every choice, or back into it (`null`). Nothing is deleted: records refer to it. */
export async function withdrawShopSet(
  pen: Pen,
  key: string,
  at: Date | null,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const last = await tx.shopCriteria.findFirst({ where: { key }, orderBy: { version: "desc" } });
    if (!last) return fail(issue("criteria-gone"));
    await tx.shopCriteria.update({ where: { id: last.id }, data: { retiredAt: at } });
    await log(`criteria:${last.id}`, at ? "criteria.withdrawn" : "criteria.back", { version: last.version });
    return ok(null);
  });
}
