import { MM_PER_INCH } from "@/lib/base";
import type { LengthSystem } from "@/lib/units";

export interface RulerTick {
  /** From the weld's start, mm. */
  readonly mm: number;
  /** null: a short tick without a number. */
  readonly label: string | null;
}

/** Ticks and numbered ticks, in the ruler's own unit, finest first. */
const steps: Readonly<Record<LengthSystem, readonly (readonly [tick: number, numbered: number])[]>> = {
  metric: [
    [1, 5],
    [1, 10],
    [5, 20],
    [10, 50],
    [20, 100],
    [50, 200],
    [100, 500],
  ],
  inch: [
    [1 / 8, 1 / 2],
    [1 / 4, 1],
    [1 / 2, 2],
    [1, 5],
    [5, 20],
  ],
};
const MOST_NUMBERS = 10;

/** Ticks of a ruler laid along the weld, 0 at its start: whole millimetres, or parts of an inch. */
export function rulerTicks(fromMm: number, toMm: number, system: LengthSystem): readonly RulerTick[] {
  const unit = system === "metric" ? 1 : MM_PER_INCH;
  const span = (toMm - fromMm) / unit;
  const table = steps[system];
  const [tick, numbered] = table.find(([, n]) => span / n <= MOST_NUMBERS) ?? table.at(-1)!;
  const first = Math.ceil(fromMm / unit / tick - 1e-9);
  const last = Math.floor(toMm / unit / tick + 1e-9);
  const every = Math.round(numbered / tick);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const at = first + i;
    return { mm: at * tick * unit, label: at % every === 0 ? String(at * tick) : null };
  });
}
