import { z } from "zod";

/** How many of a list, and after which of its rows. */
export const ListPageSchema = z.object({
  limit: z.coerce.number().int().min(1).max(500).default(100),
  /** What the page before called `next`. */
  after: z.string().min(1).max(300).optional(),
});

interface ListPage<T> {
  readonly rows: readonly T[];
  /** What `after` is to be for the page after this one; null: this was the last. */
  readonly next: string | null;
}

const refused = (issues: readonly object[]): Response => Response.json({ issues }, { status: 400 });

/** What `limit` and `after` of an address ask for; or the answer that refuses them with 400. */
export function pageAsked(request: Request): z.output<typeof ListPageSchema> | Response {
  const asked = ListPageSchema.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  if (asked.success) return asked.data;
  return refused(asked.error.issues.map(({ path, message }) => ({ code: "not-understood", path, message })));
}

export function pageGone(): Response {
  const message =
    "The row that this page was to begin after is no longer in the list. Begin again without it.";
  return refused([{ code: "page-gone", path: ["after"], message }]);
}

/**
 * The part of a list that `limit` and `after` of the address ask for; or the answer that refuses them with 400. Rows that
 * came meanwhile move no page: it begins after a row, not after a count. Where that row is gone it says so, since an empty
 * page would look like the end.
 */
export function listPage<T extends { readonly id: string }>(
  all: readonly T[],
  request: Request,
): ListPage<T> | Response {
  const asked = pageAsked(request);
  if (asked instanceof Response) return asked;
  const { limit, after } = asked;
  const from = after === undefined ? 0 : all.findIndex(({ id }) => id === after) + 1;
  if (after !== undefined && from === 0) return pageGone();
  const rows = all.slice(from, from + limit);
  return { rows, next: from + limit < all.length ? (rows.at(-1)?.id ?? null) : null };
}
