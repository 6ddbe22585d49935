import { needsCheck } from "@/lib/base";
import type { ImperfectionId } from "@/lib/trade";
import { decisionFigures } from "./decision-figures";
import { d11Books } from "./d1-1";
import { bookOf, setsOf } from "./edition";
import { iso5817Books } from "./iso5817";
import { iso9606Book } from "./iso9606";
import { formulaText } from "./formula";
import { gaugeFor, type CriteriaBook, type CriteriaSet, type Criterion } from "./rule";
import { commonSettings } from "./settings";
import { furtherSets } from "./tables/further";
import { shopSet } from "./shop-set";
import { shopSetId, type ShopCriteria } from "./shop-criteria";
import type { CriteriaSummary as SummaryOfSet } from "./verdict";
import { weldFactsAsked } from "./weld-facts-asked";

/** Every book the project carries, with all its editions, in the order a picker offers them. */
export const criteriaBooks: readonly CriteriaBook[] = [
  ...iso5817Books,
  iso9606Book,
  ...d11Books,
  ...furtherSets.map(bookOf),
];

/** Every set: each book in each of its editions. */
export const criteriaSets: readonly CriteriaSet[] = criteriaBooks.flatMap(setsOf);

/** Every number a verdict can rest on, as plain data: what a seal over the tables has to hold. */
export const acceptTables = { books: criteriaBooks, commonSettings, gaugeFor, decisionFigures } as const;

/** What `listCriteria` tells a picker about one set. */
export interface CriteriaSummary extends SummaryOfSet {
  /** Shared by the editions of one book, and by the versions of the shop's own limits. */
  readonly family: string;
  /** Every edition or version listed of the same family, oldest first, this one among them. */
  readonly editions: readonly { readonly id: string; readonly edition: string }[];
  /** The newest of them, where it is not this one: what was judged by this one stays, but somebody may want the other. */
  readonly newest: string | null;
}

export function findCriteria(id: string, shop: ShopCriteria | null): CriteriaSet | null {
  if (shop !== null && shopSetId(shop) === id) return shopSet(shop);
  return criteriaSets.find((set) => set.id === id) ?? null;
}

/** What a picker needs of every set, the shop's own last. */
export function listCriteria(shop: readonly ShopCriteria[] = []): readonly CriteriaSummary[] {
  const own = new Map(shop.map((one) => [shopSetId(one), { key: one.id, version: one.version }]));
  const byVersion = shop.toSorted((a, b) => a.version - b.version).map(shopSet);
  const inOrder = [...criteriaSets, ...byVersion];
  return [...criteriaSets, ...shop.map(shopSet)].map((set) => {
    const editions = inOrder
      .filter(({ family }) => family === set.family)
      .map(({ id, edition }) => ({ id, edition }));
    const newest = editions.at(-1)?.id ?? set.id;
    return {
      id: set.id,
      family: set.family,
      editions,
      newest: newest === set.id ? null : newest,
      shop: own.get(set.id) ?? null,
      title: set.title,
      document: set.document,
      edition: set.edition,
      weldKinds: set.weldKinds,
      settings: [...set.settings, ...commonSettings],
      imperfections: toLookFor(set),
      rules: set.criteria.map(ruleSummary),
      weldFacts: weldFactsAsked(set),
    };
  });
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
