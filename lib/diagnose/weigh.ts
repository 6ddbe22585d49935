import type { EvidenceItem } from "./evidence";
import { placeOf, signIds, signIndex, type CauseModel } from "./model";
import type { Evidence, Network, Posterior, VirtualEvidence } from "./network/types";
import type { CauseId } from "./cause-ids";
import type { Odds } from "./reading";

/** The network with the looks worked into its links, and the evidence in the network's own terms. */
export interface Weighed {
  readonly network: Network;
  readonly evidence: Evidence;
}

export function weigh(model: CauseModel, items: readonly EvidenceItem[]): Weighed {
  return {
    network: withLooks(model, items),
    evidence: evidenceOf(
      items,
      items.map((item) => virtualOf(model, item)),
    ),
  };
}

export function evidenceOf(
  items: readonly EvidenceItem[],
  virtual: readonly (readonly VirtualEvidence[])[],
): Evidence {
  return {
    present: items.flatMap(({ present }) => (present === null ? [] : [signIndex(present)])),
    absent: items.flatMap(({ absent }) => (absent === null ? [] : [signIndex(absent)])),
    virtual: virtual.flat(),
  };
}

/** The strength -log(1 - q) of a link times the look's factor: q stays a probability whatever the factors. */
export function withLooks(model: CauseModel, items: readonly EvidenceItem[]): Network {
  const changed = items.filter(({ strength }) => Object.keys(strength).length > 0);
  if (changed.length === 0) return model.network;
  const signs = model.network.signs.map((sign, index) => {
    const mine = changed.filter(({ imperfection }) => imperfection === signIds[index]);
    if (mine.length === 0) return sign;
    return {
      ...sign,
      links: sign.links.map((link) => {
        const cause = model.variables[link.variable]![link.state - 1]!;
        const factor = mine.reduce((product, { strength }) => product * (strength[cause] ?? 1), 1);
        return { ...link, q: 1 - (1 - link.q) ** factor };
      }),
    };
  });
  return { ...model.network, signs };
}

export function virtualOf(model: CauseModel, { odds, answer }: EvidenceItem): readonly VirtualEvidence[] {
  const touched = new Set<number>();
  for (const cause of [...(Object.keys(odds) as CauseId[]), ...(answer?.causes ?? [])]) {
    const place = placeOf(model, cause);
    if (place) touched.add(place.variable);
  }
  return [...touched].map((variable) => {
    const states = model.variables[variable]!;
    return {
      variable,
      likelihood: [1, ...states.map((cause) => oddsOf(odds, cause) * answerFactor(answer, cause, states))],
    };
  });
}

const oddsOf = (odds: Odds, cause: CauseId): number => odds[cause] ?? 1;

/** P(answer | cause) over P(answer | in order), for the variable the question is about. */
function answerFactor(answer: EvidenceItem["answer"], cause: CauseId, states: readonly CauseId[]): number {
  if (answer === null || !answer.causes.some((id) => states.includes(id))) return 1;
  const column = answer.causes.indexOf(cause);
  return column < 0 ? 1 : answer.likelihood[column + 1]! / answer.likelihood[0]!;
}

/** Probability of each cause. */
export type CauseProbabilities = ReadonlyMap<CauseId, number>;

export function causeProbabilities(model: CauseModel, posterior: Posterior): CauseProbabilities {
  return new Map(
    model.causes.map(({ id }) => {
      const { variable, state } = placeOf(model, id)!;
      return [id, posterior.marginals[variable]![state]!];
    }),
  );
}
