import type { Anova } from "./anova";
import { differenceBounds, sumBounds, type Bounds, type Term } from "./bounds";

/** Interaction no surer than this is counted with repeatability (AIAG, Measurement Systems Analysis; from memory). */
export const POOL_ABOVE = 0.25;

/** One part of the variation that was seen. */
export interface Component {
  readonly variance: number;
  readonly sigma: number;
  /** 95 % interval of `sigma`; null where no method is certain. */
  readonly bounds: Bounds | null;
}

export interface Components {
  /** Whether the interaction went into repeatability. */
  readonly pooled: boolean;
  /** One person, one part, the same gauge. */
  readonly repeatability: Component;
  /** People apart from each other, on all parts alike. */
  readonly people: Component;
  /** People apart from each other on some parts more than on others; nought where it is pooled. */
  readonly interaction: Component;
  /** `people` and `interaction` together. */
  readonly reproducibility: Component;
  /** Repeatability and reproducibility: all that does not come from the parts. */
  readonly gauge: Component;
  readonly part: Component;
  readonly total: Component;
  /** Effective degrees of freedom of `gauge` (Welch and Satterthwaite; JCGM 100:2008, G.4.1); null where it is nought. */
  readonly gaugeDegrees: number | null;
}

const component = (variance: number, bounds: Bounds | null = null): Component => ({
  variance,
  sigma: Math.sqrt(variance),
  bounds: bounds && { low: Math.sqrt(bounds.low), high: Math.sqrt(bounds.high) },
});

const atLeastNought = (value: number): number => Math.max(0, value);

/**
 * Variance components of a crossed study, both people and parts drawn at random. A component that comes out below nought
 * is nought. Intervals: repeatability by chi-square; the gauge by Graybill and Wang 1980; parts by Ting et al. 1990, all
 * as in Burdick, Borror and Montgomery 2003 (Journal of Quality Technology 35, 342-354). The others have none here.
 */
export function studyComponents(anova: Anova): Components {
  const { people: o, parts: p, tries: r } = anova.sizes;
  const pooled = anova.p === null || anova.p > POOL_ABOVE;
  const within: Term = pooled
    ? pool(anova)
    : { meanSquare: anova.repeatability.meanSquare, degrees: anova.repeatability.degrees };
  const against: Term = pooled ? within : anova.interaction;
  const people = atLeastNought((anova.people.meanSquare - against.meanSquare) / (p * r));
  const interaction = pooled ? 0 : atLeastNought((against.meanSquare - within.meanSquare) / r);
  const part = atLeastNought((anova.parts.meanSquare - against.meanSquare) / (o * r));
  const gauge = within.meanSquare + people + interaction;
  const terms = gaugeTerms(anova, within, pooled);
  return {
    pooled,
    repeatability: component(within.meanSquare, sumBounds([{ ...within, weight: 1 }])),
    people: component(people),
    interaction: component(interaction),
    reproducibility: component(people + interaction),
    gauge: component(gauge, sumBounds(terms)),
    part: component(part, differenceBounds(anova.parts, against, o * r)),
    total: component(gauge + part),
    gaugeDegrees: effectiveDegrees(terms),
  };
}

const pool = ({ interaction, repeatability }: Anova): Term => {
  const degrees = interaction.degrees + repeatability.degrees;
  return { meanSquare: (interaction.sumOfSquares + repeatability.sumOfSquares) / degrees, degrees };
};

/** The gauge's variance as a sum of mean squares, each with its weight above nought. */
function gaugeTerms({ sizes, people, interaction }: Anova, within: Term, pooled: boolean) {
  const { parts: p, tries: r } = sizes;
  const own = { ...people, weight: 1 / (p * r) };
  if (pooled) return [own, { ...within, weight: (p * r - 1) / (p * r) }];
  return [own, { ...interaction, weight: (p - 1) / (p * r) }, { ...within, weight: (r - 1) / r }];
}

function effectiveDegrees(
  terms: readonly { readonly meanSquare: number; readonly degrees: number; readonly weight: number }[],
): number | null {
  const parts = terms.map(({ meanSquare, degrees, weight }) => ({ part: weight * meanSquare, degrees }));
  const whole = parts.reduce((sum, { part }) => sum + part, 0);
  if (whole === 0) return null;
  return whole ** 2 / parts.reduce((sum, { part, degrees }) => sum + part ** 2 / degrees, 0);
}
