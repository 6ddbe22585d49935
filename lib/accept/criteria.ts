import { needsCheck } from "@/lib/base";
import type { ImperfectionId } from "@/lib/trade";
import { d11Sets } from "./d1-1";
import { iso5817Sets } from "./iso5817";
import { formulaText } from "./formula";
import type { CriteriaSet, Criterion } from "./rule";
import { commonSettings } from "./settings";
import { furtherSets } from "./tables/further";
import { shopSet } from "./shop-set";
import { shopSetId, type ShopCriteria } from "./shop-criteria";
import type { CriteriaSummary } from "./verdict";
import { weldFactsAsked } from "./weld-facts-asked";

/** Every set the project carries, in the order a picker offers them. */
export const criteriaSets: readonly CriteriaSet[] = [...iso5817Sets, ...d11Sets, ...furtherSets];

export function findCriteria(id: string, shop: ShopCriteria | null): CriteriaSet | null {
  if (shop !== null && shopSetId(shop) === id) return shopSet(shop);
  return criteriaSets.find((set) => set.id === id) ?? null;
}

/** What a picker needs of every set, the shop's own last. */
export function listCriteria(shop: readonly ShopCriteria[] = []): readonly CriteriaSummary[] {
  const own = new Map(shop.map((one) => [shopSetId(one), { key: one.id, version: one.version }]));
  return [...criteriaSets, ...shop.map(shopSet)].map((set) => ({
    id: set.id,
    shop: own.get(set.id) ?? null,
    title: set.title,
    document: set.document,
    edition: set.edition,
    weldKinds: set.weldKinds,
    settings: [...set.settings, ...commonSettings],
    imperfections: toLookFor(set),
    rules: set.criteria.map(ruleSummary),
    weldFacts: weldFactsAsked(set),
  }));
}

function ruleSummary({ id, clause, title, variants }: Criterion): CriteriaSummary["rules"][number] {
  const limits = variants.flatMap(({ tests }) =>
    tests.map((test) => {
      if (test.test === "none-allowed") return "none";
      return "limit" in test ? formulaText(test.limit, "si") : test.test;
    }),
  );
  const checkYourCopy = variants.some(({ source }) => needsCheck(source));
  return { id, clause, title, limits: [...new Set(limits)], checkYourCopy };
}

/** What a set wants looked for, once each. */
function toLookFor(set: CriteriaSet): readonly ImperfectionId[] {
  const bySize = set.criteria.some(({ variants }) =>
    variants.some(({ tests }) =>
      tests.some((test) => test.test === "bead" && test.figure === "leg-shortfall"),
    ),
  );
  const named = set.criteria.flatMap((one) => (one.onlyWhenSeen === true ? [] : one.imperfections));
  // The size of a fillet is its leg only while its face is not hollow.
  return [...new Set<ImperfectionId>([...named, ...(bySize ? (["concave-face"] as const) : [])])];
}
