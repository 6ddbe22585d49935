import { imperfectionIds } from "@/lib/trade";
import { MarkShapeSchema, ScaleSchema } from "@/lib/marks";
import { budgetSentences } from "./budget";
import { defaultMeasureOptions } from "./options";
import { measureSentences } from "./sentences";
import { budgetParts, readingSources, units, type MeasureIssueCode, type MeasureOptions } from "./types";

/** What a measuring case may say and what its answer may hold, for a machine that has to write one. */
export interface MeasureVocabulary {
  readonly scaleKinds: readonly string[];
  readonly shapeKinds: readonly string[];
  readonly imperfections: readonly string[];
  readonly units: readonly string[];
  /** In rising order of trust. */
  readonly sources: readonly string[];
  /** Parts of an uncertainty, each with where it comes from. */
  readonly budgetParts: readonly { readonly part: string; readonly sentence: string }[];
  /** Reasons why a size is missing, each with what to do. */
  readonly issues: readonly { readonly code: string; readonly sentence: string }[];
  readonly defaultOptions: MeasureOptions;
}

/** Read from the schemas and tables themselves, so that it cannot fall behind them. */
export function measureVocabulary(): MeasureVocabulary {
  const codes = Object.keys(measureSentences) as MeasureIssueCode[];
  return {
    scaleKinds: ScaleSchema.options.map(({ shape }) => shape.kind.value),
    shapeKinds: MarkShapeSchema.options.map(({ shape }) => shape.kind.value),
    imperfections: imperfectionIds,
    units,
    sources: readingSources,
    budgetParts: budgetParts.map((part) => ({ part, sentence: budgetSentences[part] })),
    issues: codes.map((code) => ({ code, sentence: measureSentences[code]({ code, path: [], data: {} }) })),
    defaultOptions: defaultMeasureOptions,
  };
}
