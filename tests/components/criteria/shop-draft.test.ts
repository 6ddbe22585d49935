import { describe, expect, it } from "vitest";
import { newerVersion } from "@/components/criteria/newer-version";
import {
  draftErrors,
  emptyDraft,
  hasWindow,
  mayFollowThickness,
  measuredBy,
  movedRow,
  newRow,
  withoutRow,
} from "@/components/criteria/shop-draft";
import { listCriteria, shopQuantities, ShopCriteriaSchema, type ShopRow } from "@/lib/accept";

const full: ShopRow = {
  id: "row-1",
  title: "Undercut",
  imperfections: ["undercut"],
  quantity: "total-length",
  limit: 50,
  ofThickness: 0.1,
  windowMm: 300,
  note: "",
};

describe("limits being written", () => {
  it("give each new row an id no other row has, also after one was taken off", () => {
    const rows = [newRow([]), newRow([newRow([])])];
    expect(rows.map(({ id }) => id)).toEqual(["row-1", "row-2"]);
    expect(newRow(rows.slice(1)).id).toBe("row-3");
    expect(newRow([...rows.slice(1), { ...full, id: "row-3" }]).id).not.toBe("row-3");
  });

  it("lose, when measured another way, only what that way has no use for", () => {
    for (const quantity of shopQuantities) {
      const row = measuredBy(full, quantity);
      expect(row.windowMm, quantity).toBe(hasWindow(quantity) ? 300 : null);
      expect(row.ofThickness, quantity).toBe(mayFollowThickness(quantity) ? 0.1 : null);
      const keeps = quantity !== "none-allowed" && quantity !== "count";
      expect(row.limit, quantity).toBe(keeps ? 50 : null);
      // Whatever was chosen, only a limit may still be missing.
      const errors = [...draftErrors({ ...emptyDraft, title: "T", rows: [row] }).keys()];
      expect(errors, quantity).toEqual(quantity === "count" ? ["rows.0.limit"] : []);
    }
  });

  it("name the clause of a copied row that is taken out, once its last row is gone", () => {
    const carries = { clause: "1.7", title: "Undercut" };
    const rows = ["a", "b"].map((id) => ({ ...full, id, carries }));
    const notCarried = { from: "a code", clauses: [] };
    const one = withoutRow({ ...emptyDraft, rows, notCarried }, "a");
    expect(one.notCarried?.clauses).toEqual([]);
    const none = withoutRow({ ...emptyDraft, ...one }, "b");
    expect(none.rows).toEqual([]);
    expect(none.notCarried?.clauses).toMatchObject([carries]);
    // By hand, or from a set that kept nothing: nothing is claimed.
    expect(withoutRow({ ...emptyDraft, rows: [full], notCarried }, full.id).notCarried).toEqual(notCarried);
    expect(withoutRow({ ...emptyDraft, rows }, "a").notCarried).toBeUndefined();
  });

  it("move within the list and not out of it", () => {
    const rows = ["a", "b", "c"].map((id) => ({ ...full, id }));
    const ids = (list: readonly ShopRow[]) => list.map(({ id }) => id).join("");
    expect(ids(movedRow(rows, 0, 1))).toBe("bac");
    expect(ids(movedRow(rows, 2, -1))).toBe("acb");
    expect(movedRow(rows, 0, -1)).toBe(rows);
    expect(movedRow(rows, 2, 1)).toBe(rows);
  });

  it("say at which field they do not fit", () => {
    expect([...draftErrors({ ...emptyDraft, rows: [newRow([])] }).keys()]).toEqual([
      "title",
      "rows.0.title",
      "rows.0.imperfections",
    ]);
  });
});

describe("a newer version", () => {
  const version = (id: string, number: number) =>
    ShopCriteriaSchema.parse({ id, title: "T", version: number, author: "Owner", rows: [full] });
  const criteria = listCriteria([version("shop-a", 3), version("shop-a", 2), version("shop-b", 9)]);

  it("is the newest of the same key, and none for the newest or for a code", () => {
    expect(newerVersion("shop-a@1", criteria)?.id).toBe("shop-a@3");
    expect(newerVersion("shop-a@2", criteria)?.id).toBe("shop-a@3");
    expect(newerVersion("shop-a@3", criteria)).toBeNull();
    expect(newerVersion("iso-5817-c", criteria)).toBeNull();
    expect(newerVersion(null, criteria)).toBeNull();
  });
});
