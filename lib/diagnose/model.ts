import { imperfectionIds, processes, type ImperfectionId, type Process } from "@/lib/trade";
import type { CauseId } from "./cause-ids";
import { lazily } from "./lazily";
import type { Network, Sign } from "./network/types";
import { shiftedPriors } from "./shop-priors";
import { causes, type Cause } from "./tables/causes";
import { causeLinks, type CauseLink } from "./tables/links";
import { symptomIds, symptoms, type SymptomId } from "./tables/symptoms";
import { exclusiveCauses } from "./tables/variables";
import { presentWeights, type Weights } from "./tuning";

export type SignId = ImperfectionId | SymptomId;
export const signIds: readonly SignId[] = [...imperfectionIds, ...symptomIds];

/** Where a cause stands in the network. */
export interface CausePlace {
  readonly variable: number;
  readonly state: number;
}

/** The tables as a network for one process; causes that cannot occur in it are not in it. */
export interface CauseModel {
  readonly process: Process | null;
  readonly causes: readonly Cause[];
  /** Per variable the causes that are its states 1, 2, ... */
  readonly variables: readonly (readonly CauseId[])[];
  readonly network: Network;
  readonly places: ReadonlyMap<CauseId, CausePlace>;
  readonly priors: ReadonlyMap<CauseId, number>;
}

/**
 * Builds the network. An unknown process takes every cause in: its plausibility is the mean over the processes, its
 * strength the strongest. Shop counts shift the plausibilities (shop-priors.ts).
 * Without counts the network follows from tables and weights alone, so it is built once for each; with counts it is kept as
 * long as the same are asked with, as they are by whoever goes through many beads.
 */
export function causeModel(
  process: Process | null,
  shopCounts: Counts = {},
  weights: Weights = presentWeights,
): CauseModel {
  if (Object.keys(shopCounts).length > 0) return counted(process, shopCounts, weights);
  const known = published.get(weights) ?? built({}, weights);
  published.set(weights, known);
  return known.get(process)!();
}

type Counts = Partial<Readonly<Record<CauseId, number>>>;
type ByProcess = ReadonlyMap<Process | null, () => CauseModel>;

/** The networks of the counts that were last asked with. */
let lastCounted: { readonly said: string; readonly weights: Weights; readonly byProcess: ByProcess } | null =
  null;

function counted(process: Process | null, shopCounts: Counts, weights: Weights): CauseModel {
  const said = JSON.stringify(shopCounts);
  if (lastCounted?.said !== said || lastCounted.weights !== weights)
    lastCounted = { said, weights, byProcess: built({ ...shopCounts }, weights) };
  return lastCounted.byProcess.get(process)!();
}

const published = new WeakMap<Weights, ByProcess>();

const built = (counts: Counts, weights: Weights): ByProcess =>
  new Map([...processes, null].map((process) => [process, lazily(() => build(process, counts, weights))]));

function build(process: Process | null, shopCounts: Counts, weights: Weights): CauseModel {
  const possible = causes.filter((cause) => process === null || cause.processes.includes(process));
  const plausible = new Map(possible.map((cause) => [cause.id, plausibility(cause, process, weights)]));
  const priors = shiftedPriors(plausible, shopCounts);
  const variables = variablesOf(possible.map(({ id }) => id));
  return {
    process,
    causes: possible,
    variables,
    priors,
    places: new Map(
      variables.flatMap((states, variable) =>
        states.map((id, i) => [id, { variable, state: i + 1 }] as const),
      ),
    ),
    network: {
      variables: variables.map((states) => {
        const p = states.map((id) => priors.get(id) ?? 0);
        return { prior: [1 - p.reduce((a, b) => a + b, 0), ...p] };
      }),
      signs: signIds.map((sign) => signFor(sign, process, variables, weights)),
    },
  };
}

function plausibility(cause: Cause, process: Process | null, { commonness }: Weights): number {
  const inOne = (p: Process) =>
    cause.processes.includes(p) ? commonness[cause.commonnessIn[p] ?? cause.commonness] : 0;
  return process === null
    ? processes.reduce((sum, p) => sum + inOne(p), 0) / processes.length
    : inOne(process);
}

function variablesOf(ids: readonly CauseId[]): readonly (readonly CauseId[])[] {
  const grouped = exclusiveCauses.flat();
  return [...exclusiveCauses, ...ids.filter((id) => !grouped.includes(id)).map((id) => [id])]
    .map((states) => states.filter((id) => ids.includes(id)))
    .filter((states) => states.length > 0);
}

function signFor(
  sign: SignId,
  process: Process | null,
  variables: CauseModel["variables"],
  weights: Weights,
): Sign {
  const strengths = linkStrengths(sign, process, weights);
  return {
    leak: byNature.includes(sign) ? weights.leakByNature : weights.leak,
    links: variables.flatMap((states, variable) =>
      states.flatMap((id, i) => {
        const q = strengths.get(id);
        return q === undefined ? [] : [{ variable, state: i + 1, q }];
      }),
    ),
  };
}

/** Marks that hardly anything but their one cause leaves. */
const byNature: readonly SignId[] = ["arc-strike", "open-crater", "crater-pipe", "misalignment"];

function linkStrengths(
  sign: SignId,
  process: Process | null,
  { linkStrength, judgedShare }: Weights,
): ReadonlyMap<CauseId, number> {
  const strengths = new Map<CauseId, number>();
  const rows = [
    ...linksFor(sign, process),
    ...symptomLinks(sign).map((link) => ({ ...link, judged: false })),
  ];
  for (const { cause, weight, judged } of rows) {
    const q = linkStrength[weight] * (judged ? judgedShare : 1);
    strengths.set(cause, Math.max(strengths.get(cause) ?? 0, q));
  }
  return strengths;
}

/** The rows that tie this sign to causes in this process; all processes when it is unknown. */
export function linksFor(sign: SignId, process: Process | null): readonly CauseLink[] {
  const rows = linksBySign.get(sign) ?? [];
  return process === null ? rows : rows.filter((link) => link.processes.includes(process));
}

const linksBySign: ReadonlyMap<SignId, readonly CauseLink[]> = new Map(
  imperfectionIds.map((id) => [id, causeLinks.filter((link) => link.imperfection === id)]),
);

function symptomLinks(sign: SignId) {
  return symptoms.find(({ id }) => id === sign)?.links ?? [];
}

/** Where a cause stands in the network, null when it cannot occur in the process. */
export function placeOf(model: CauseModel, cause: CauseId): CausePlace | null {
  return model.places.get(cause) ?? null;
}

export function signIndex(sign: SignId): number {
  return signIds.indexOf(sign);
}
