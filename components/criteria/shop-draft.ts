import { ShopCriteriaSchema, type ShopQuantity, type ShopRow } from "@/lib/accept";

/** What a person writes of a set. */
export interface ShopDraft {
  readonly title: string;
  readonly note: string;
  readonly rows: readonly ShopRow[];
}

export const emptyDraft: ShopDraft = { title: "", note: "", rows: [] };

const totals: readonly ShopQuantity[] = ["total-length", "total-diameter", "count"];

export const hasWindow = (quantity: ShopQuantity): boolean => totals.includes(quantity);
export const hasLimit = (quantity: ShopQuantity): boolean => quantity !== "none-allowed";
export const mayFollowThickness = (quantity: ShopQuantity): boolean =>
  hasLimit(quantity) && quantity !== "count";

/** A new row that says nothing yet, under an id no other row has. */
export function newRow(rows: readonly ShopRow[]): ShopRow {
  let next = rows.length + 1;
  while (rows.some(({ id }) => id === `row-${next}`)) next += 1;
  return {
    id: `row-${next}`,
    title: "",
    imperfections: [],
    quantity: "none-allowed",
    limit: null,
    ofThickness: null,
    windowMm: null,
    note: "",
  };
}

/** Another way to measure: what it has no use for is taken off, the rest stays. */
export function measuredBy(row: ShopRow, quantity: ShopQuantity): ShopRow {
  const wasNumber = row.quantity === "count";
  // A number of pores is no length in millimetres, and the other way round.
  const keepsLimit = hasLimit(quantity) && wasNumber === (quantity === "count");
  return {
    ...row,
    quantity,
    limit: keepsLimit ? row.limit : null,
    ofThickness: mayFollowThickness(quantity) ? row.ofThickness : null,
    windowMm: hasWindow(quantity) ? row.windowMm : null,
  };
}

/** A row moved one place up (-1) or down (1); the same list where there is no such place. */
export function movedRow(rows: readonly ShopRow[], at: number, by: -1 | 1): readonly ShopRow[] {
  const [row, other] = [rows[at], rows[at + by]];
  if (!row || !other) return rows;
  return rows.map((one, i) => (i === at ? other : i === at + by ? row : one));
}

/** What does not fit, by its path ("rows.0.limit"): the message of the schema that will save it. */
export function draftErrors(draft: ShopDraft): ReadonlyMap<string, string> {
  const parsed = ShopCriteriaSchema.safeParse({ ...draft, id: "shop-draft", version: 1, author: "x" });
  if (parsed.success) return new Map();
  return new Map(parsed.error.issues.map(({ path, message }) => [path.join("."), message]));
}
