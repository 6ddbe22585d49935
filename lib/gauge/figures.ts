import { studentQuantile } from "@/lib/numeric";
import { crossedAnova, type Anova } from "./anova";
import { studyComponents, type Component, type Components } from "./components";
import { speaksForReadings, type GaugeStudy } from "./study";

export const componentIds = ["repeatability", "reproducibility", "gauge", "part", "total"] as const;
export type ComponentId = (typeof componentIds)[number];

export interface StudyLine extends Component {
  readonly id: ComponentId;
  /** Of the standard deviation of everything, 0 to 1: these do not add up, their squares do. null where all is nought. */
  readonly ofStudy: number | null;
  /** Six standard deviations against the tolerance; null where none was asked. */
  readonly ofTolerance: number | null;
}

/** What a reading carries of the study of its gauge. */
export interface ReadingStudy {
  /** The day of the study. */
  readonly on: string;
  /** Standard uncertainty of one reading by any of the people: repeatability and reproducibility, in the gauge's unit. */
  readonly u: number;
  /** How many u hold about 95 %: Student's t at the effective degrees of freedom (JCGM 100:2008, G.4). */
  readonly k: number;
  readonly unit: GaugeStudy["unit"];
}

/** What a reading in this unit keeps of the study of the gauge it was taken with. */
export function carriedBy(
  study: ReadingStudy | null,
  unit: GaugeStudy["unit"],
): { readonly study?: { readonly on: string; readonly u: number; readonly k: number } } {
  if (study === null || study.unit !== unit) return {};
  const { on, u, k } = study;
  return { study: { on, u, k } };
}

export interface StudyFigures {
  readonly anova: Anova;
  readonly components: Components;
  readonly lines: readonly StudyLine[];
  /** Groups of parts the gauge tells apart; null where nothing but the parts differed. */
  readonly categories: number | null;
  /** null where the study is too small to speak for readings, or nothing but the parts differed. */
  readonly reading: ReadingStudy | null;
}

/** Standard deviations across the study variation, as tolerances are compared (AIAG, 3rd edition on; from memory). */
const SPREAD = 6;
/** AIAG's factor for the number of distinct categories, from memory. */
const CATEGORY_FACTOR = 1.41;

/** Everything a study says, worked out of its readings. */
export function studyFigures(study: GaugeStudy): StudyFigures {
  const anova = crossedAnova(study.values);
  const components = studyComponents(anova);
  const { gauge, part, total } = components;
  return {
    anova,
    components,
    lines: componentIds.map((id) => ({
      id,
      ...components[id],
      ofStudy: total.sigma > 0 ? components[id].sigma / total.sigma : null,
      ofTolerance: study.tolerance === null ? null : (SPREAD * components[id].sigma) / study.tolerance,
    })),
    categories:
      gauge.sigma > 0 ? Math.max(1, Math.floor((CATEGORY_FACTOR * part.sigma) / gauge.sigma)) : null,
    reading: speaksForReadings(study) ? readingStudy(study, components) : null,
  };
}

function readingStudy({ on, unit }: GaugeStudy, { gauge, gaugeDegrees }: Components): ReadingStudy | null {
  if (gaugeDegrees === null || gauge.sigma === 0) return null;
  return { on, unit, u: gauge.sigma, k: Math.max(2, studentQuantile(0.975, gaugeDegrees)) };
}
