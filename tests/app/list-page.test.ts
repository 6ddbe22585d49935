import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { listPage } from "@/app/_door/list-page";

const rowsOf = (count: number) => Array.from({ length: count }, (_, i) => ({ id: `row-${i}` }));
const asked = (query: string) => new Request(`http://shop:3000/api/x?${query}`);
const page = (count: number, query: string) => listPage(rowsOf(count), asked(query));

async function refusal(answer: ReturnType<typeof listPage>): Promise<unknown> {
  if (!(answer instanceof Response)) return null;
  const { issues } = (await answer.json()) as { issues: { code: string; path: string[] }[] };
  return [answer.status, issues.map(({ code, path }) => [code, ...path])];
}

describe("a page of a list", () => {
  it("follows the page before: all of them are the whole list, none longer than asked for", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 25 }), (count, limit) => {
        const seen: { id: string }[] = [];
        for (let after = ""; ;) {
          const found = page(count, `limit=${limit}${after && `&after=${after}`}`);
          if (found instanceof Response) throw new Error("refused");
          expect(found.rows.length).toBeLessThanOrEqual(limit);
          // An empty page comes of an empty list alone: `next` is never said where nothing is left.
          expect(found.rows.length > 0 || count === 0).toBe(true);
          seen.push(...found.rows);
          if (found.next === null) break;
          after = found.next;
        }
        expect(seen).toEqual(rowsOf(count));
      }),
      { seed: 20_261_126, numRuns: 60 },
    );
  });

  it("holds a hundred where nobody says how many", () => {
    expect(page(101, "")).toMatchObject({ rows: rowsOf(100), next: "row-99" });
    expect(page(100, "")).toMatchObject({ next: null });
  });

  it("moves with no row that came meanwhile, and says so where its row is gone", async () => {
    const later = [{ id: "new" }, ...rowsOf(4)];
    expect(listPage(later, asked("limit=2&after=row-1"))).toMatchObject({ rows: rowsOf(4).slice(2) });
    expect(await refusal(page(4, "after=row-9"))).toEqual([400, [["page-gone", "after"]]]);
  });

  it.each(["limit=0", "limit=501", "limit=many", "limit=1.5", "after="])(
    "is refused with %s",
    async (query) => {
      expect(await refusal(page(4, query))).toEqual([400, [["not-understood", query.split("=")[0]]]]);
    },
  );
});
