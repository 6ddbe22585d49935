import type { JudgeInput } from "./types";
import type { UnusedReading, VerdictRow } from "./verdict";

const observationFigures = ["length", "depth", "height", "diameter", "area"] as const;

/** Every figure that was given, as rows name them: "throat", "o1.depth", "o1.poreCount". */
export function figuresGiven(input: JudgeInput): readonly string[] {
  const readings = Object.entries(input.beadReadings).flatMap(([name, read]) =>
    read === null ? [] : [name],
  );
  const sizes = input.observations.flatMap((one) => [
    ...observationFigures
      .filter((size) => (size === "area" ? one.areaMm2 : one[`${size}Mm` as const]) !== null)
      .map((size) => `${one.id}.${size}`),
    ...(one.poreCount === null ? [] : [`${one.id}.poreCount`]),
    ...(one.aboutCount === null ? [] : [`${one.id}.aboutCount`]),
  ]);
  return [...readings, ...sizes];
}

/**
 * Figures that were given and that no row went by: not needed where a row was decided without them (none is allowed),
 * without a rule where no clause of the set asks for them.
 */
export function unusedReadings(input: JudgeInput, rows: readonly VerdictRow[]): readonly UnusedReading[] {
  const used = new Set(rows.flatMap((row) => row.figuresUsed));
  const touched = new Set(
    rows.filter((row) => row.result !== "not-applicable").flatMap((row) => row.readingsUsed),
  );
  return figuresGiven(input)
    .filter((figure) => !used.has(figure))
    .map((figure) => ({
      figure,
      why: figure.endsWith(".aboutCount")
        ? ("guess" as const)
        : touched.has(nameOf(figure))
          ? ("not-needed" as const)
          : ("no-rule" as const),
      by: sourceOf(input, figure) === "photo" ? ("photo" as const) : ("hand" as const),
    }));
}

/** The mark's id holds no dot: its size stands after the last. A reading of the bead has none. */
const nameOf = (figure: string): string =>
  figure.includes(".") ? figure.slice(0, figure.lastIndexOf(".")) : figure;

function sourceOf({ observations }: JudgeInput, figure: string): string | null {
  const one = observations.find(({ id }) => id === nameOf(figure));
  const size = figure.slice(figure.lastIndexOf(".") + 1);
  const quantity = observationFigures.find((name) => name === size);
  if (one === undefined || quantity === undefined) return null;
  return (quantity === "area" ? one.areaMm2 : one[`${quantity}Mm` as const])?.source ?? null;
}
