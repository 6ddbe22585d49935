import { arcEnergyKJPerMm, heatFactors } from "@/lib/arc";
import type { Source } from "@/lib/base";
import { currentAt } from "@/lib/setup";
import { cite, together } from "@/lib/trade";
import type { Card, CardField } from "./card";

/** Heat input with its thermal efficiency, kJ/mm, at the cool and the hot end of a card and in between. */
export interface CardHeat {
  readonly low: number;
  readonly value: number;
  readonly high: number;
  /** "read": by amps as they were read; "burn-off": by the current that feed and tip to work make. */
  readonly amps: "read" | "burn-off";
  readonly source: Source;
}

/** null where volts, current or travel are not known. */
export function heatOfCard({ setup, ranges }: Pick<Card, "setup" | "ranges">): CardHeat | null {
  const { process, volts, travelSpeedMmPerMin: travel } = setup;
  if (process === null || volts === null || travel === null) return null;
  const end = (field: CardField, which: "low" | "high"): number | null =>
    ranges.find((range) => range.field === field)?.[which] ?? setup[field];
  const modelled = (which: "low" | "high") =>
    currentAt(
      setup,
      end("wireFeedMPerMin", which),
      // A longer wire carries less current.
      end("ctwdMm", which === "low" ? "high" : "low"),
    );
  const read = setup.amps !== null;
  const amps = read
    ? { low: end("amps", "low")!, value: setup.amps!, high: end("amps", "high")! }
    : { low: modelled("low")?.amps, value: currentAt(setup)?.amps, high: modelled("high")?.amps };
  if (amps.low === undefined || amps.value === undefined || amps.high === undefined) return null;
  const { k, source } = heatFactors[process];
  const heat = (v: number, i: number, mmPerMin: number): number =>
    k * arcEnergyKJPerMm({ volts: v, amps: i, travelMmPerS: mmPerMin / 60 });
  return {
    low: heat(end("volts", "low")!, amps.low, end("travelSpeedMmPerMin", "high")!),
    value: heat(volts, amps.value, travel),
    high: heat(end("volts", "high")!, amps.high, end("travelSpeedMmPerMin", "low")!),
    amps: read ? "read" : "burn-off",
    source: together([cite("iso-tr-18491", "seen-part", { note: "volts · amps / travel" }), source]),
  };
}
