import { MM_PER_INCH, type Source } from "@/lib/base";
import { cite, type Position, type Process, remark } from "@/lib/trade";

/** The largest fillet leg laid in one pass. */
export interface PassRow {
  readonly processes: readonly Process[];
  /** Given: only these positions. */
  readonly positions?: readonly Position[];
  /** Given: only wires and rods up to this stored size, mm. */
  readonly upToDiameterMm?: number;
  readonly mm: number;
  /** "code": what a prequalified procedure may lay at most; "practice": what the wire or the position carries. */
  readonly kind: "code" | "practice";
  readonly source: Source;
}

const d11 = cite("aws-d1-1", "memory", {
  clause: "prequalified procedures: largest single-pass fillet",
});
const shopManual = cite("multi-process-manual", "seen");
const wis5 = cite("welding-inspection-of-steels", "seen", {
  note: "a horizontal run of more than about 9 mm undercuts at the upper toe",
});
const anywhere = remark(wis5, "the figure for horizontal, lent to other positions", "own-estimate");
const coveredManual = cite("covered-multi-run-manual", "seen", { note: "about 6.4 mm with a 3.2 mm rod" });

const IN = MM_PER_INCH;
const WIRE: readonly Process[] = ["FCAW-S", "FCAW-G", "GMAW"];
const code = (processes: readonly Process[], position: Position, inches: number): PassRow => ({
  processes,
  positions: [position],
  mm: inches * IN,
  kind: "code",
  source: d11,
});

export const passRows: readonly PassRow[] = [
  code(["SMAW"], "flat", 3 / 8),
  code(["SMAW"], "horizontal", 5 / 16),
  code(["SMAW"], "vertical", 1 / 2),
  code(["SMAW"], "overhead", 5 / 16),
  code(WIRE, "flat", 1 / 2),
  code(WIRE, "horizontal", 3 / 8),
  code(WIRE, "vertical", 1 / 2),
  code(WIRE, "overhead", 5 / 16),
  { processes: WIRE, upToDiameterMm: 0.82, mm: IN / 8, kind: "practice", source: shopManual },
  { processes: WIRE, upToDiameterMm: 0.95, mm: (3 / 16) * IN, kind: "practice", source: shopManual },
  { processes: [...WIRE, "SMAW"], positions: ["horizontal"], mm: 9, kind: "practice", source: wis5 },
  { processes: ["SMAW"], upToDiameterMm: 3.3, mm: 6.4, kind: "practice", source: coveredManual },
  { processes: [...WIRE, "SMAW", "GTAW"], mm: 9, kind: "practice", source: anywhere },
];
