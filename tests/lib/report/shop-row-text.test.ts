import { describe, expect, it } from "vitest";
import { shopQuantities, ShopCriteriaSchema, type ShopQuantity } from "@/lib/accept";
import { shopFieldText, shopQuantityWords, shopRowText } from "@/lib/report";
import { type ShopRowWords } from "@/lib/report/shop-row-text";
import { inch, metric } from "@/lib/units";

const row = (quantity: ShopQuantity, over: Partial<ShopRowWords> = {}): ShopRowWords => ({
  imperfections: ["undercut"],
  quantity,
  limit: 0.5,
  ofThickness: null,
  windowMm: null,
  ...over,
});

describe("a row of the shop's own limits in words", () => {
  it.each<[string, ShopRowWords]>([
    ["Undercut: not deeper than 0.5 mm.", row("depth")],
    ["Undercut: together at most 50 mm in any 300 mm.", row("total-length", { limit: 50, windowMm: 300 })],
    ["Undercut: at most 2 on the whole weld.", row("count", { limit: 2 })],
    ["Undercut: none allowed.", row("none-allowed", { limit: null })],
    ["Undercut: not deeper than 10 % of the thickness.", row("depth", { limit: null, ofThickness: 0.1 })],
    [
      "Undercut: not deeper than 10 % of the thickness, and never more than 0.5 mm.",
      row("depth", { ofThickness: 0.1 }),
    ],
    ["Width of the face: at most 9 mm.", row("width", { imperfections: [], limit: 9 })],
    [
      "Nothing chosen yet: not deeper than … (no limit yet).",
      row("depth", { imperfections: [], limit: null }),
    ],
  ])("%s", (text, given) => {
    expect(shopRowText(given, metric)).toBe(text);
  });

  it("is in the person's units", () => {
    expect(shopRowText(row("depth"), inch)).toMatch(/^Undercut: not deeper than 0\.020? in\.$/);
  });

  it("has words for every way to measure", () => {
    for (const quantity of shopQuantities) {
      expect(shopQuantityWords[quantity]).not.toBe("");
      expect(shopRowText(row(quantity), metric)).toMatch(/^[A-Z].+\.$/);
    }
  });

  it("has a sentence for whatever the schema refuses of its own", () => {
    const rows = [
      { id: "a", title: "A", imperfections: ["undercut"], quantity: "depth", limit: null },
      { id: "a", title: "A", imperfections: [], quantity: "depth", limit: 1, windowMm: 5 },
      { id: "b", title: "B", imperfections: ["undercut"], quantity: "count", limit: 1, ofThickness: 0.1 },
    ];
    const parsed = ShopCriteriaSchema.safeParse({ id: "shop-x", title: "X", version: 1, author: "Y", rows });
    const messages = [...new Set(parsed.error?.issues.map(({ message }) => message))];
    expect(messages.toSorted()).toEqual([
      "id-twice",
      "imperfection-needed",
      "limit-needed",
      "thickness-only-for-lengths",
      "window-only-for-totals",
    ]);
    const sentences = messages.map(shopFieldText);
    expect(new Set(sentences).size).toBe(sentences.length);
    expect(sentences).not.toContain(shopFieldText("something else"));
  });
});
