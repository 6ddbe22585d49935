import type { Source } from "@/lib/base";
import type { Joint } from "@/lib/trade";
import { carbonSources, cetPercent, iiwPercent, pcmPercent } from "./carbon-equivalents";
import { coolingTime, type CoolingTime } from "./cooling-time";
import { preheatMethodB, preheatSource, type PreheatAsked } from "./preheat";
import type { Steel } from "./steel";
import { coolingSource } from "./tables/shape-factors";

/** The numbers of a shop's card. No qualified procedure: the governing code and qualified people decide. */
export interface ProcedureNumbers {
  readonly carbonEquivalents: readonly {
    readonly name: "IIW" | "CET" | "Pcm";
    readonly percent: number;
    readonly source: Source;
  }[];
  readonly preheat: {
    readonly celsius: number;
    readonly outside: readonly (keyof PreheatAsked)[];
    readonly source: Source;
  };
  /** At room temperature, and at the preheat where one is called for. */
  readonly cooling: readonly {
    readonly startC: number;
    readonly time: CoolingTime;
    readonly source: Source;
  }[];
  readonly caution: string;
}

const ROOM_C = 20;
const CAUTION =
  "A shop's card, not a qualified procedure: preheat, cooling time and their limits belong to the governing code, the steelmaker and qualified people.";

export function procedureNumbers(
  steel: Steel,
  run: { readonly heatKJPerMm: number; readonly thicknessMm: number; readonly joint: Joint },
): ProcedureNumbers {
  const cet = cetPercent(steel);
  const preheat = preheatMethodB({
    cetPercent: cet,
    thicknessMm: run.thicknessMm,
    hydrogenMlPer100G: steel.hydrogenMlPer100G,
    heatKJPerMm: run.heatKJPerMm,
  });
  const starts = preheat.celsius > ROOM_C ? [ROOM_C, preheat.celsius] : [ROOM_C];
  return {
    carbonEquivalents: [
      { name: "IIW", percent: iiwPercent(steel), source: carbonSources.iiw },
      { name: "CET", percent: cet, source: carbonSources.cet },
      { name: "Pcm", percent: pcmPercent(steel), source: carbonSources.pcm },
    ],
    preheat: { ...preheat, source: preheatSource },
    cooling: starts.flatMap((startC) => {
      const time = coolingTime({ ...run, startC });
      return time === null ? [] : [{ startC, time, source: coolingSource }];
    }),
    caution: CAUTION,
  };
}
