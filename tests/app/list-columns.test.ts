import { describe, expect, it } from "vitest";
import { tableColumns } from "@/app/list-columns";
import { readFilter, type BeadFilter } from "@/lib/find";

const sortOf = (filter: BeadFilter, key: string) => {
  const sort = tableColumns(filter).find((column) => column.key === key)?.sort;
  const asked = new URL(sort?.href ?? "/", "http://x").searchParams;
  return { now: sort?.now, asks: readFilter(asked).filter };
};

describe("heads of the list's table", () => {
  it("say by which the list is sorted, and which way; nothing said is newest first", () => {
    expect(sortOf({}, "day").now).toBe("descending");
    expect(sortOf({ sort: "title" }, "title").now).toBe("ascending");
    expect(sortOf({ sort: "title" }, "day").now).toBe("none");
  });

  it.each(["number", "title", "welder", "day"])(
    "a second press on %s turns it round, a third back",
    (key) => {
      const first = sortOf(
        { q: "ropey", joint: "tee", sort: key === "number" ? "title" : "number" },
        key,
      ).asks;
      const second = sortOf(first, key).asks;
      expect(second.sort).not.toBe(first.sort);
      expect(sortOf(second, key).asks).toEqual(first);
      // What was asked for stays asked for.
      expect(first).toMatchObject({ q: "ropey", joint: "tee" });
    },
  );

  it("lead to the start of the list, not behind the bead of another order", () => {
    for (const { sort } of tableColumns({ sort: "title" }))
      expect(sort?.href ?? "").not.toMatch(/after|before|page/);
  });
});
