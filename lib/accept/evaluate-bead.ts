import type { Quantity } from "@/lib/measure";
import type { ImperfectionId } from "@/lib/trade";
import { beadFigure } from "./bead-figure";
import type { CaseContext } from "./case-context";
import { missing } from "./case-context";
import { decide, spreadOf } from "./decide";
import { constantValue, evaluateFormula } from "./formula";
import { decided, limitOf, outcome, type LimitOf, type Outcome } from "./outcome";
import { sizeOf } from "./size-of";
import { worstOf } from "./worst-of";
import type { BeadFigure, Test } from "./rule";
import type { Observation } from "./types";
import type { MissingReading } from "./verdict";

type BeadTest = Extract<Test, { test: "bead" }>;

/** Figures that a height or depth read on a mark of the same imperfection stands for. */
const alsoReadOnMarks: ReadonlySet<BeadFigure> = new Set(["convexity", "reinforcement", "misalignment"]);

/**
 * A figure of the whole bead against its limit. Where sight is enough, "looked for and absent" meets it; elsewhere only
 * a reading does. Marks of it may fail the limit; to meet it, each must be read and the bead as well.
 */
export function evaluateBead(
  test: BeadTest,
  observations: readonly Observation[],
  imperfections: readonly ImperfectionId[],
  context: CaseContext,
): Outcome {
  const range = evaluateFormula(test.limit, context.symbols, context.units);
  const unit = test.figure === "toe-angle" ? "deg" : "mm";
  const limit = limitOf(test.limit, range, test.comparison, unit, context.units);
  const gapOver = test.lessGapOver === undefined ? null : constantValue(test.lessGapOver, context.units);
  const figure = beadFigure(test.figure, context, gapOver);
  const unread = outcome("open", "reading-missing", { limit: limit.row, missing: figure.missing });
  const ofBead = ofTheBead(test, figure, limit, context);
  const onMarks = alsoReadOnMarks.has(test.figure)
    ? observations.map((one) => onMark(test, one, limit, context))
    : [];
  if (onMarks.length > 0) return worstOf([...(ofBead.length > 0 ? ofBead : [unread]), ...onMarks]);
  if (ofBead.length > 0) return worstOf(ofBead);
  const absent =
    observations.length === 0 &&
    imperfections.length > 0 &&
    imperfections.every((id) => context.input.lookedFor.includes(id));
  // Sight is a reading taken as it stands; where uncertainty has to stay clear of the limit, a gauge has to say so.
  const sightCounts = test.bySight === true && context.rule === "as-read" && limit.row !== null;
  if (sightCounts && absent) return outcome("meets", "none-found", { limit: limit.row });
  return unread;
}

function ofTheBead(
  test: BeadTest,
  figure: ReturnType<typeof beadFigure>,
  limit: LimitOf,
  context: CaseContext,
): readonly Outcome[] {
  const { quantity, otherwise, whole, used, missing: lacks, lookFor } = figure;
  if (quantity === null) return [];
  const better = lacks.length > 0 ? lacks : whatWouldRead(test.figure, context);
  const bare = judgeFigure(test, quantity, whole, limit, context, used, used, better);
  const judged = bare.result === "open" ? { ...bare, lookFor } : bare;
  if (otherwise === null) return [judged];
  const other = judgeFigure(test, otherwise, whole, limit, context, used, used, better);
  if (other.result === judged.result) return [judged];
  const { value, expandedUncertainty } = otherwise;
  return [
    outcome("open", "readings-disagree", {
      limit: limit.row,
      value,
      expandedUncertainty,
      readingsUsed: used,
      figuresUsed: used,
      missing: [missing("throat"), missing("convexity")],
    }),
  ];
}

function onMark(test: BeadTest, mark: Observation, limit: LimitOf, context: CaseContext): Outcome {
  const { quantity, whole, wanted, figures } = sizeOf(mark, ["height", "depth"]);
  const better = [missing(wanted, mark.id)];
  if (quantity === null)
    return outcome("open", "reading-missing", { limit: limit.row, missing: better, readingsUsed: [mark.id] });
  return judgeFigure(test, quantity, whole, limit, context, [mark.id], figures, better);
}

function judgeFigure(
  test: BeadTest,
  quantity: Quantity,
  whole: boolean,
  limit: LimitOf,
  context: CaseContext,
  readingsUsed: readonly string[],
  figuresUsed: readonly string[],
  better: readonly MissingReading[],
): Outcome {
  const { value, expandedUncertainty } = quantity;
  const spread = spreadOf(quantity, context.rule);
  const figure =
    test.comparison === "<="
      ? { low: value, high: whole ? value : Infinity, spread }
      : { low: whole ? value : -Infinity, high: value, spread };
  return decided(decide(figure, test.comparison, limit.range), limit, {
    value,
    expandedUncertainty,
    readingsUsed,
    figuresUsed,
    better: spread > 0 || !whole ? better : [],
    incomplete: !whole,
  });
}

/** The readings a figure is made of, as if none had been taken: what to take again with a gauge. */
function whatWouldRead(figure: BeadFigure, context: CaseContext): MissingReading[] {
  const { input } = context;
  const none = Object.fromEntries(Object.keys(input.beadReadings).map((key) => [key, null]));
  const bare = beadFigure(figure, {
    ...context,
    section: null,
    input: {
      ...input,
      beadReadings: none as typeof input.beadReadings,
      weld: { ...input.weld, faceWidthMm: null },
    },
  });
  return [...bare.missing];
}
