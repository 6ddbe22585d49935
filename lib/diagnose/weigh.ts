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

/**
 * The links of this bead: the strength -log(1 - q) of each times the looks' factors, so that q stays a probability whatever
 * the factors; and where a circumstance makes a cause leave a mark, at least that strong.
 */
export function withLooks(model: CauseModel, items: readonly EvidenceItem[]): Network {
  const changed = items.filter(changesLinks);
  if (changed.length === 0) return model.network;
  const signs = model.network.signs.map((sign, index) => {
    const mine = changed.filter(({ imperfection }) => imperfection === signIds[index]);
    return mine.length === 0 ? sign : { ...sign, links: linksOf(model, sign.links, mine) };
  });
  return { ...model.network, signs };
}

export const changesLinks = ({ strength, makes }: EvidenceItem): boolean =>
  Object.keys(strength).length > 0 || Object.keys(makes).length > 0;

function linksOf(
  model: CauseModel,
  links: Network["signs"][number]["links"],
  items: readonly EvidenceItem[],
): Network["signs"][number]["links"] {
  const made = items.flatMap(({ makes }) => Object.entries(makes) as [CauseId, number][]);
  const added = made.flatMap(([cause]) => {
    const place = placeOf(model, cause);
    const there =
      place !== null && links.some((l) => l.variable === place.variable && l.state === place.state);
    return place === null || there ? [] : [{ ...place, q: 0 }];
  });
  const unique = added.filter(
    (link, i) => added.findIndex((l) => l.variable === link.variable && l.state === link.state) === i,
  );
  return [...links, ...unique].map((link) => {
    const cause = model.variables[link.variable]![link.state - 1]!;
    const factor = items.reduce((product, { strength }) => product * (strength[cause] ?? 1), 1);
    const least = Math.max(0, ...made.filter(([id]) => id === cause).map(([, q]) => q));
    return { ...link, q: 1 - (1 - Math.max(least, link.q)) ** factor };
  });
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
