import type { Source } from "@/lib/base";
import { cite, type Process } from "@/lib/trade";

export interface HeatFactor {
  /** Thermal efficiency k: heat input over arc energy. */
  readonly k: number;
  readonly iso4063: string;
  readonly source: Source;
}

const en1011 = cite("en-1011-1", "seen-part");

export const heatFactors: Readonly<Record<Process, HeatFactor>> = {
  "FCAW-S": { k: 0.8, iso4063: "114", source: en1011 },
  "FCAW-G": { k: 0.8, iso4063: "136", source: en1011 },
  GMAW: { k: 0.8, iso4063: "135", source: en1011 },
  SMAW: { k: 0.8, iso4063: "111", source: en1011 },
  GTAW: { k: 0.6, iso4063: "141", source: en1011 },
};
