import { PlanAskSchema, type PlanAsk } from "@/lib/plan";
import { plannedJoints } from "@/lib/plan/tables/figures";
import { electrodeClasses, inputPowers, positions, sizesWithRows, type ElectrodeClass } from "@/lib/trade";

/** Every wire with a row, in every gas it runs in. */
export const wires: readonly Partial<PlanAsk>[] = electrodeClasses
  .filter(({ process }) => process !== "SMAW" && process !== "GTAW")
  .flatMap((row: ElectrodeClass) =>
    sizesWithRows(row).flatMap((electrodeDiameterMm) =>
      (row.gases.length === 0 ? ["none" as const] : row.gases).flatMap((gas) =>
        (row.process === "GMAW" ? (["short-circuit", "spray"] as const) : ([null] as const)).map(
          (transfer) => ({
            process: row.process,
            electrodeClass: row.id,
            electrodeDiameterMm,
            gas,
            transfer,
          }),
        ),
      ),
    ),
  );

export const places: readonly Partial<PlanAsk>[] = positions.flatMap((position): Partial<PlanAsk>[] =>
  position === "vertical"
    ? [
        { position, progression: "up" },
        { position, progression: "down" },
      ]
    : [{ position }],
);

export const thicknesses = [0.8, 1.2, 1.5, 2, 2.5, 3, 4, 5, 5.9, 6, 6.3, 6.4, 8, 10, 12, 20, 25];
export const legs = [null, 3, 4.8, 6, 8, 12];
export const inputs = [null, ...inputPowers];

/** The whole grid, in a mixed order, so that every `every`th meets all of it. */
export function* grid(every: number, offset = 0): Generator<PlanAsk> {
  const sides = [wires, places, plannedJoints, thicknesses, legs, inputs] as const;
  const size = sides.reduce((product, side) => product * side.length, 1);
  for (let i = offset; i < size; i += every) {
    let rest = i;
    const pick = <T>(side: readonly T[]): T => {
      const one = side[rest % side.length]!;
      rest = Math.floor(rest / side.length);
      return one;
    };
    yield PlanAskSchema.parse({
      ...pick(wires),
      ...pick(places),
      joint: pick(plannedJoints),
      thicknessMm: pick(thicknesses),
      targetLegMm: pick(legs),
      inputPower: pick(inputs),
      dials: i % 2 === 0 ? "metric" : "inch",
    });
  }
}

export const gridSize =
  wires.length * places.length * plannedJoints.length * thicknesses.length * legs.length * inputs.length;
