import type { Source } from "@/lib/base";
import type { ImperfectionId } from "@/lib/trade";
import { criteriaBooks } from "./criteria";
import { setsOf } from "./edition";
import type { Condition, CriteriaSet, Criterion, Test } from "./rule";

/** What one clause says of an imperfection: each variant with what must hold for it, the first that applies counting. */
export interface LimitClause {
  readonly id: string;
  readonly clause: string;
  readonly title: string;
  /** Nobody has to look for it, or to read it; where it is seen or read, it is judged. */
  readonly onlyWhen: "seen" | "read" | null;
  readonly places: Criterion["places"];
  readonly variants: readonly {
    readonly when: readonly Condition[];
    readonly tests: readonly Test[];
    readonly source: Source;
  }[];
}

/** The clauses of one set, in its newest edition, that limit an imperfection. */
export interface LimitsOfSet {
  readonly id: string;
  readonly title: string;
  readonly document: string;
  readonly edition: string;
  readonly weldKinds: CriteriaSet["weldKinds"];
  readonly settings: CriteriaSet["settings"];
  /** Empty: the set says nothing of it by name, and a qualified person decides. */
  readonly clauses: readonly LimitClause[];
}

/** What every carried code, in its newest edition, says of an imperfection; in the order a picker offers the codes. */
export function limitsOn(id: ImperfectionId): readonly LimitsOfSet[] {
  return criteriaBooks
    .map((book) => setsOf(book).at(-1)!)
    .map(({ id: setId, title, document, edition, weldKinds, settings, criteria }) => ({
      id: setId,
      title,
      document,
      edition,
      weldKinds,
      settings,
      clauses: criteria.filter(({ imperfections }) => imperfections.includes(id)).map(clauseOf),
    }));
}

function clauseOf({ onlyWhenSeen, onlyWhenRead, ...rest }: Criterion): LimitClause {
  const onlyWhen = onlyWhenRead === true ? "read" : onlyWhenSeen === true ? "seen" : null;
  const { id, clause, title, places, variants } = rest;
  return { id, clause, title, places, onlyWhen, variants };
}
