import { ShopCriteriaSchema, type NotCarried, type ShopQuantity, type ShopRow } from "@/lib/accept";

/** What a person writes of a set. */
export interface ShopDraft {
  readonly title: string;
  readonly note: string;
  readonly rows: readonly ShopRow[];
  /** Absent: written from nothing, or saved before this was kept. */
  readonly notCarried?: NotCarried | undefined;
}

/** What a person changes of a saved set. */
export const draftOf = ({ title, note, rows, notCarried }: ShopDraft): ShopDraft => ({
  title,
  note,
  rows,
  notCarried,
});

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

/** The draft without a row; the clause it alone carried is then named as not carried. */
export function withoutRow(
  { rows, notCarried }: ShopDraft,
  id: string,
): Pick<ShopDraft, "rows" | "notCarried"> {
  const left = rows.filter((row) => row.id !== id);
  const carried = rows.find((row) => row.id === id)?.carries;
  const same = (one: { readonly clause: string; readonly title: string } | undefined) =>
    one?.clause === carried?.clause && one?.title === carried?.title;
  const isNamed =
    !carried || left.some(({ carries }) => same(carries)) || notCarried?.clauses.some((one) => same(one));
  if (!notCarried || isNamed) return { rows: left, notCarried };
  const clauses = [...notCarried.clauses, { ...carried, why: "its limit was taken out" }];
  return { rows: left, notCarried: { ...notCarried, clauses } };
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
