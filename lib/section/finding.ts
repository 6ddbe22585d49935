import type { SectionRow } from "./judgement";

/** What one test says, before it becomes a row with its clause and source. */
export type Finding = Pick<
  SectionRow,
  "result" | "figure" | "value" | "expandedUncertainty" | "limit" | "markIds" | "missing"
>;

export const openFinding: Finding = {
  result: "open",
  figure: null,
  value: null,
  expandedUncertainty: null,
  limit: null,
  markIds: [],
  missing: [],
};
