import { bookOf } from "./edition";
import type { CriteriaBook, CriteriaSet, Criterion } from "./rule";
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
import { tubularLoading, tubularRows } from "./tables/d1-1-tubular";
import type { CriteriaSetting } from "./verdict";

const edge = {
  clause: "4.4.2",
  note: "The leg along a lap edge is a limit for the drawing: held to only where you set it so.",
};
const notCovered: CriteriaSet["notCovered"] = [
  {
    clause: "Table 8.1 (5)",
    note: "Not before the weld is at ambient temperature; A514, A517 and A709 Gr. 100 not before 48 h.",
  },
  {
    clause: "Table 8.1 (6)",
    note: "No undersize at the ends of web-to-flange welds over twice the flange width: not checked by place.",
  },
  {
    clause: "Table 8.1 (7)",
    note: "Where plates of different thickness meet, and on primary members, place, depth and length of undercut are for the Engineer; t here is the thinner plate. From memory.",
  },
  {
    clause: "7.23",
    note: "Corner and T-joint groove profiles, outside corner fillets and flush finish are not carried.",
  },
  { clause: "10", note: "Tubular connections (Table 10.15) have a set of their own." },
  edge,
  { clause: "edition", note: "The 2025 edition's figures are not carried here." },
];

const notCoveredTubular: CriteriaSet["notCovered"] = [
  {
    clause: "Table 10.15",
    note: "Nobody here has read this table: rows rest on memory and on Table 8.1. Check each against your copy.",
  },
  {
    clause: "10",
    note: "Profiles of T-, Y- and K-connections and the ends of branch members are not carried.",
  },
  ...notCovered.filter(({ clause }) => clause !== "10"),
];

interface Structural {
  readonly id: string;
  readonly title: string;
  readonly table: string;
  readonly settings: readonly CriteriaSetting[];
  /** The least size of Table 7.7 under cyclic loading. */
  readonly cyclic: boolean;
  readonly rows: readonly Criterion[];
  readonly notCovered: CriteriaSet["notCovered"];
}

function structural({
  id,
  title,
  table,
  settings,
  cyclic,
  rows,
  notCovered: missing,
}: Structural): CriteriaBook {
  return bookOf({
    id,
    title,
    document,
    edition,
    weldKinds: ["fillet", "butt", "surfacing"],
    scope: [{ symbol: "t", atLeast: leastThickness }],
    scopeSource: d11Source("1.4", "memory"),
    settings: [...d11Settings, porosityShortWeld, ...settings],
    criteria: [
      ...soundness(id, table),
      ...profiles(id),
      ...filletSize(id, cyclic, table),
      ...rows,
      ...surface(id),
    ],
    notCovered: missing,
  });
}

/** AWS D1.1/D1.1M visual acceptance: statically and cyclically loaded nontubular connections, and tubular ones. */
export const d11Books: readonly CriteriaBook[] = [
  structural({
    id: "aws-d1-1-static",
    title: "AWS D1.1 static",
    table: "Table 8.1",
    settings: [undercutShortWeld],
    cyclic: false,
    rows: staticRows,
    notCovered,
  }),
  structural({
    id: "aws-d1-1-cyclic",
    title: "AWS D1.1 cyclic",
    table: "Table 8.1",
    settings: [cyclicUndercut],
    cyclic: true,
    rows: cyclicRows,
    notCovered: [
      ...notCovered,
      {
        clause: "Table 8.1 (7)(B)",
        note: "Which member is primary, and joints of plates of unlike thickness, are for the Engineer: note place, depth and length of the undercut.",
      },
    ],
  }),
  structural({
    id: "aws-d1-1-tubular",
    title: "AWS D1.1 tubular",
    table: "Table 10.15",
    settings: [tubularLoading, cyclicUndercut, undercutShortWeld],
    cyclic: true,
    rows: tubularRows,
    notCovered: notCoveredTubular,
  }),
];
