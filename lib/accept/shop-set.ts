import type { Source } from "@/lib/base";
import { withoutDocument } from "@/lib/trade";
import type { CriteriaSet, Criterion, Formula, SizeName, Test } from "./rule";
import { shopSetId, type ShopCriteria, type ShopRow } from "./shop-criteria";

/** Wherever an edition stands, this says that it is none of a code's. */
const editionOf = ({ version }: ShopCriteria): string => `version ${version} (the shop's own)`;

/** A shop's own limits in the terms of the evaluator. Any weld, any thickness: the shop says what it means. */
export function shopSet(shop: ShopCriteria): CriteriaSet {
  const source = (row: ShopRow | null): Source =>
    withoutDocument(shop.title, "seen", {
      edition: editionOf(shop),
      clause: row === null ? "whole" : clauseOf(row),
      note: `set by ${shop.author}`,
    });
  return {
    id: shopSetId(shop),
    family: shop.id,
    title: shop.title,
    document: shop.title,
    edition: editionOf(shop),
    weldKinds: ["fillet", "butt", "surfacing"],
    scope: [],
    scopeSource: source(null),
    settings: [],
    criteria: shop.rows.map((row): Criterion => ({
      id: `${shop.id}-${row.id}`,
      clause: clauseOf(row),
      title: row.title,
      imperfections: row.imperfections,
      variants: [{ when: [], tests: [shopTest(row)], source: source(row) }],
    })),
    notCarried: shop.notCarried ?? null,
    notCovered: [{ clause: "codes", note: "A shop's own set replaces no code and no contract." }],
  };
}

/** What the shop wrote beside the row: the clause of its contract, or why. */
const clauseOf = ({ id, note }: ShopRow): string => note.trim() || id;

function limitOf({ limit, ofThickness }: ShopRow): Formula {
  if (ofThickness === null) return limit ?? 0;
  const part: Formula = { times: ofThickness, of: "t" };
  return limit === null ? part : { min: [part, limit] };
}

function shopTest(row: ShopRow): Test {
  const limit = limitOf(row);
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
