import type { Source } from "@/lib/base";
import type { CriteriaSet, Criterion, SizeName, Test } from "./rule";
import type { ShopCriteria, ShopRow } from "./shop-criteria";

/** A shop's own limits in the terms of the evaluator. Any weld, any thickness: the shop says what it means. */
export function shopSet(shop: ShopCriteria): CriteriaSet {
  const source = (row: ShopRow | null): Source => ({
    document: shop.title,
    edition: `version ${shop.version}`,
    clause: row === null ? "whole" : row.id,
    confidence: "seen",
    note: `set by ${shop.author}`,
  });
  return {
    id: shop.id,
    title: shop.title,
    document: shop.title,
    edition: `version ${shop.version}`,
    weldKinds: ["fillet", "butt", "surfacing"],
    scope: [],
    scopeSource: source(null),
    settings: [],
    criteria: shop.rows.map((row): Criterion => ({
      id: `${shop.id}-${row.id}`,
      clause: row.id,
      title: row.title,
      imperfections: row.imperfections,
      variants: [{ when: [], tests: [shopTest(row)], source: source(row) }],
    })),
    notCovered: [{ clause: "codes", note: "A shop's own set replaces no code and no contract." }],
  };
}

function shopTest(row: ShopRow): Test {
  const limit = row.limit ?? 0;
  const total = (of: readonly SizeName[] | "count"): Test => ({
    test: "total",
    of,
    window: row.windowMm,
    limit,
  });
  switch (row.quantity) {
    case "none-allowed":
      return { test: "none-allowed" };
    case "depth":
    case "height":
    case "diameter":
    case "length":
      return { test: "each", size: [row.quantity], limit };
    case "total-length":
      return total(["length"]);
    case "total-diameter":
      return total(["diameter", "length"]);
    case "count":
      return total("count");
    default:
      return { test: "bead", figure: row.quantity, comparison: "<=", limit };
  }
}
