import { expect, it } from "vitest";
import { DiagnoseInputSchema } from "@/lib/diagnose";
import { contextOf } from "@/lib/diagnose/diagnose";
import { volts } from "@/lib/diagnose/steps/dials";
import { emptyRunSetup, windowQueryFor, type RunSetup } from "@/lib/setup";
import { electrodeClasses, windowLines } from "@/lib/trade";
import { inDepth } from "../../../setup/in-depth";

const SIZES_MM = [0.9, 1.2, 1.6];
const PLACES = [
  ["flat", null],
  ["vertical", "up"],
] as const;

/** Every row of every wire, run at its ends and in its middle. */
const runs = electrodeClasses.flatMap(({ id, process }) =>
  SIZES_MM.flatMap((electrodeDiameterMm) =>
    PLACES.flatMap(([position, progression]) => {
      const wire = { process, electrodeClass: id, electrodeDiameterMm };
      const setup: RunSetup = { ...emptyRunSetup, ...wire, position, progression };
      const query = windowQueryFor(setup);
      const feeds = (query === null ? [] : windowLines(query)).flatMap(
        ({ volts: at, feedMPerMin: [low, high] }) => (at === null ? [] : [low, (low + high) / 2, high]),
      );
      return [...new Set(feeds)]
        .filter((_, i) => i % inDepth(9, 1) === 0)
        .map((wireFeedMPerMin): RunSetup => ({ ...setup, wireFeedMPerMin }));
    }),
  ),
);

/** A law of our own, no source: whoever reads the meter a little otherwise is told nearly the same. */
it(`a tenth of a volt moves the volts aimed at by hardly more than half a volt, on ${runs.length} runs`, () => {
  expect(runs.length).toBeGreaterThan(inDepth(60, 600));
  let [targets, worst, at] = [0, 0, ""];
  for (const setup of runs) {
    // Nothing of it but the reading itself depends on the volts.
    const context = contextOf(DiagnoseInputSchema.parse({ setup }));
    for (const sign of [1, -1] as const) {
      let last: number | null = null;
      for (let reading = 12; reading <= 36; reading += 0.1) {
        const { toSi } = volts({ ...context, setup: { ...setup, volts: reading } }, sign);
        const moved = toSi === null || last === null ? 0 : Math.abs(toSi - last);
        if (moved > worst)
          [worst, at] = [moved, `${setup.electrodeClass} ${setup.electrodeDiameterMm} mm, ${reading} V`];
        if (toSi !== null) targets += 1;
        last = toSi;
      }
    }
  }
  expect(targets).toBeGreaterThan(10_000);
  expect(worst, at).toBeLessThan(0.62);
});
