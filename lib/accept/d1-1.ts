import type { CriteriaSet } from "./rule";
import {
  cyclicRows,
  cyclicUndercut,
  d11Settings,
  d11Source,
  document,
  edition,
  filletSize,
  leastThickness,
  porosityShortWeld,
  profiles,
  soundness,
  staticRows,
  surface,
  undercutShortWeld,
} from "./tables/d1-1";

const notCovered = [
  {
    clause: "Table 8.1 (5)",
    note: "Not before the weld is at ambient temperature; A514, A517 and A709 Gr. 100 not before 48 h.",
  },
  {
    clause: "Table 8.1 (6)",
    note: "No undersize at the ends of web-to-flange welds over twice the flange width: not checked by place.",
  },
  {
    clause: "7.23",
    note: "Corner and T-joint groove profiles, outside corner fillets and flush finish are not carried.",
  },
  { clause: "10", note: "Tubular welds (Table 10.15) are not carried." },
  { clause: "edition", note: "The 2025 edition's figures are not carried here." },
];

function structural(id: string, title: string, cyclic: boolean): CriteriaSet {
  return {
    id,
    title,
    document,
    edition,
    weldKinds: ["fillet", "butt", "surfacing"],
    scope: [{ symbol: "t", atLeast: leastThickness }],
    scopeSource: d11Source("1.4", "memory"),
    settings: [...d11Settings, porosityShortWeld, ...(cyclic ? [cyclicUndercut] : [undercutShortWeld])],
    criteria: [
      ...soundness(id, "Table 8.1"),
      ...profiles(id),
      ...filletSize(id, cyclic),
      ...(cyclic ? cyclicRows : staticRows),
      ...surface(id),
    ],
    notCovered,
  };
}

/** AWS D1.1/D1.1M visual acceptance, statically and cyclically loaded nontubular connections. */
export const d11Sets: readonly CriteriaSet[] = [
  structural("aws-d1-1-static", "AWS D1.1 static", false),
  structural("aws-d1-1-cyclic", "AWS D1.1 cyclic", true),
];
