import type { CauseId } from "./cause-ids";
import type { EvidenceItem } from "./evidence";
import { lazily } from "./lazily";
import { placeOf, signIndex, type CauseModel } from "./model";
import { solverFor, type Solution, type Solver } from "./network/infer";
import type { VirtualEvidence } from "./network/types";
import { causeProbabilities, changesLinks, evidenceOf, virtualOf, withLooks, type Weighed } from "./weigh";

/** For one cause: its probability without each item, in the items' order. */
export type WithoutEach = (cause: CauseId) => readonly number[];

/**
 * The posterior with one item left out, for every item; exact. A mark or a reading of one thing needs no inference of
 * its own: two inferences, one plain and one with the cause held to be at work, carry P(evidence without it) for all of
 * them at once. What does more (absent signs, looks, readings of several things) is inferred without, once for all
 * causes. Nothing is worked out before it is asked for.
 */
export function withoutEach(
  model: CauseModel,
  items: readonly EvidenceItem[],
  weighed: Weighed,
  solver: Solver,
  all: Solution,
): WithoutEach {
  const virtual = items.map((item) => virtualOf(model, item));
  const present = [...new Set(weighed.evidence.present)];
  const inferred = items.map((item, left) =>
    lazily(() => {
      const rest = items.filter((_, i) => i !== left);
      const evidence = evidenceOf(
        rest,
        virtual.filter((_, i) => i !== left),
      );
      const looks = changesLinks(item);
      const own = looks ? withLooks(model, rest) : weighed.network;
      const solverOf = looks || item.present !== null ? solverFor(own, evidence.present) : solver;
      return causeProbabilities(model, solverOf.solve(evidence));
    }),
  );
  return (cause) => {
    const place = placeOf(model, cause)!;
    const held = solver.solve(weighed.evidence, place);
    return items.map((item, i) => {
      const quick = byHolding(item, virtual[i]!, present, all, held);
      return quick ?? inferred[i]!().get(cause)!;
    });
  };
}

/** P(cause | evidence without the item) from the two solutions; null for an item that does more than they can tell. */
function byHolding(
  item: EvidenceItem,
  virtual: readonly VirtualEvidence[],
  present: readonly number[],
  all: Solution,
  held: Solution,
): number | null {
  const { present: sign, absent } = item;
  if (absent !== null || changesLinks(item)) return null;
  if (!Number.isFinite(held.logEvidence)) return null;
  if (sign !== null) {
    if (virtual.length > 0) return null;
    const at = present.indexOf(signIndex(sign));
    return Math.exp(held.logWithout[at]! - all.logWithout[at]!);
  }
  const [one, ...more] = virtual;
  const plain = Math.exp(held.logEvidence - all.logEvidence);
  if (one === undefined) return plain;
  if (more.length > 0 || one.likelihood.some((l) => !(l > 0))) return null;
  const undone = ({ marginals }: Solution) =>
    marginals[one.variable]!.reduce((sum, p, state) => sum + p / one.likelihood[state]!, 0);
  return (plain * undone(held)) / undone(all);
}
