import type { StudyFigures } from "./figures";

/**
 * How a gauge stands by its study. The borders (a tenth, three tenths, five categories) are AIAG's, Measurement Systems
 * Analysis, from memory: usual, no limit of a welding code.
 */
export type Standing = "good" | "may-do" | "poor" | "no-spread";

const GOOD = 0.1;
const MAY_DO = 0.3;
const CATEGORIES = 5;

/** Against the tolerance where one was asked, else against the parts of the study. */
export function studyStanding({ lines, categories }: StudyFigures): Standing {
  const gauge = lines.find(({ id }) => id === "gauge");
  const share = gauge?.ofTolerance ?? gauge?.ofStudy ?? null;
  if (share === null || categories === null) return "no-spread";
  if (share > MAY_DO) return "poor";
  const tellsApart = gauge?.ofTolerance !== null || categories >= CATEGORIES;
  return share <= GOOD && tellsApart ? "good" : "may-do";
}
