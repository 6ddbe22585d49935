import { describe, expect, it } from "vitest";
import { acceptTables, limitsOn } from "@/lib/accept";
import { imperfectionIds } from "@/lib/trade";

describe("what the carried codes say of an imperfection", () => {
  it("has every book once, in its newest edition", () => {
    const sets = limitsOn("undercut");
    expect(sets.map(({ title }) => title)).toEqual(acceptTables.books.map(({ title }) => title));
    expect(sets.map(({ edition }) => edition)).toEqual(
      acceptTables.books.map(({ editions }) => editions.at(-1)!.name),
    );
  });

  it("loses no clause of any book that still stands in its newest edition, and adds none", () => {
    const told = new Set(
      imperfectionIds.flatMap((id) =>
        limitsOn(id).flatMap((set) => set.clauses.map((clause) => `${set.id} ${clause.id} ${id}`)),
      ),
    );
    const newest = new Map(limitsOn("undercut").map(({ title, id }) => [title, id]));
    const standing = acceptTables.books.flatMap((book) =>
      book.criteria
        .filter(({ editions }) => editions.at(-1)!.variants !== null)
        .flatMap(({ id, imperfections }) =>
          imperfections.map((one) => `${newest.get(book.title)!} ${id} ${one}`),
        ),
    );
    expect([...told].toSorted()).toEqual([...new Set(standing)].toSorted());
  });
});
