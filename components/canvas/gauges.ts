"use client";

import type { ReadingStudy } from "@/lib/gauge";
import { createContext, useContext } from "react";

/** What a reading can be taken with, and the smallest step it reads, mm (a protractor: degrees). */
export interface Gauge {
  /** Stands with the reading: for a gauge of the shop with its serial number. */
  readonly name: string;
  readonly resolution: number;
  /** Why it should be looked at before it is used: its calibration; null: nothing to say. */
  readonly doubt: string | null;
  /** What a study of it says readings are uncertain by; null: none counts. */
  readonly study: ReadingStudy | null;
}

const plain = (name: string, resolution: number): Gauge => ({
  ...{ name, resolution },
  ...{ doubt: null, study: null },
});

/** Where the shop lists none of its own: kinds with their usual smallest division (common practice, no source). */
export const plainGauges: readonly Gauge[] = [
  plain("pit gauge, dial", 0.1),
  plain("vernier calliper", 0.05),
  plain("fillet gauge, leaf", 1),
  plain("throat and leg gauge, sliding", 0.5),
  plain("high-low gauge", 0.5),
  plain("feeler gauge", 0.05),
  plain("steel rule", 0.5),
];

const ShopGauges = createContext<readonly Gauge[]>([]);
export const ShopGaugesProvider = ShopGauges.Provider;

/** The shop's own gauges first, then the plain kinds. */
export const useGauges = (): readonly Gauge[] => [...useContext(ShopGauges), ...plainGauges];

export const gaugeLabel = ({ name, doubt }: Gauge): string => (doubt ? `${name} (${doubt})` : name);
