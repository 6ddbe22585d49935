import type { ImperfectionId } from "@/lib/trade";
import { beadFigure } from "./bead-figure";
import type { CaseContext } from "./case-context";
import { decide, spreadOf } from "./decide";
import { evaluateFormula } from "./formula";
import { decided, limitOf, outcome, type Outcome } from "./outcome";
import { sizeOf, worstOf } from "./evaluate-each";
import type { BeadFigure, Test } from "./rule";
import type { Observation } from "./types";
import type { MissingReading } from "./verdict";

/** Figures that a height or depth read on a mark of the same imperfection stands for. */
const alsoReadOnMarks: ReadonlySet<BeadFigure> = new Set(["convexity", "reinforcement", "misalignment"]);

/**
 * A figure of the whole bead against its limit. Where sight is enough, "looked for and absent" meets it; elsewhere only
 * a reading does.
 */
export function evaluateBead(
  test: Extract<Test, { test: "bead" }>,
  observations: readonly Observation[],
  imperfections: readonly ImperfectionId[],
  context: CaseContext,
): Outcome {
  const range = evaluateFormula(test.limit, context.symbols, context.units);
  const unit = test.figure === "toe-angle" ? "deg" : "mm";
  const limit = limitOf(test.limit, range, test.comparison, unit, context.units);
  const figure = beadFigure(test.figure, context);
  const onMarks = alsoReadOnMarks.has(test.figure)
    ? observations.flatMap((one) => {
        const quantity = sizeOf(one, ["height", "depth"]);
        return quantity === null ? [] : [{ quantity, used: [one.id], again: [] as MissingReading[] }];
      })
    : [];
  const again = whatWouldRead(test.figure, context);
  const readings = [
    ...(figure.quantity === null ? [] : [{ quantity: figure.quantity, used: [...figure.used], again }]),
    ...onMarks,
  ];
  if (readings.length === 0) {
    const absent =
      observations.length === 0 &&
      imperfections.length > 0 &&
      imperfections.every((id) => context.input.lookedFor.includes(id));
    if (test.bySight === true && absent) return outcome("meets", "none-found", { limit: limit.row });
    return outcome("open", "reading-missing", { limit: limit.row, missing: figure.missing });
  }
  return worstOf(
    readings.map(({ quantity, used, again: better }) => {
      const { value, expandedUncertainty } = quantity;
      const spread = spreadOf(quantity, context.guarded);
      return decided(decide({ low: value, high: value, spread }, test.comparison, range), limit, {
        value,
        expandedUncertainty,
        readingsUsed: used,
        better: spread > 0 ? better : [],
      });
    }),
  );
}

/** The readings a figure is made of, as if none had been taken: what to take again with a gauge. */
function whatWouldRead(figure: BeadFigure, context: CaseContext): MissingReading[] {
  const { input } = context;
  const none = Object.fromEntries(Object.keys(input.beadReadings).map((key) => [key, null]));
  const bare = beadFigure(figure, {
    ...context,
    input: {
      ...input,
      beadReadings: none as typeof input.beadReadings,
      weld: { ...input.weld, faceWidthMm: null },
    },
  });
  return [...bare.missing];
}
