import { evidenceItems, type EvidenceItem } from "./evidence";
import { changeFor } from "./change";
import type { DiagnoseInput } from "./input";
import { lazily } from "./lazily";
import { withoutEach } from "./leave-one-out";
import { causeModel, type CauseModel } from "./model";
import { solverFor, type Solution, type Solver } from "./network/infer";
import type { ReadingContext } from "./reading";
import { readingsOf } from "./readings/all";
import { confirmedTotal } from "./shop-priors";
import type { Weights } from "./tuning";
import type { RankedCause } from "./types";
import { causeProbabilities, weigh, type Weighed } from "./weigh";
import { whyFor } from "./why";

/** The causes of a bead in order, and the inference they come from. */
export interface Ranking {
  /** Most likely first. The reasons and the change of each are worked out when they are first read. */
  readonly causes: readonly RankedCause[];
  readonly model: CauseModel;
  readonly items: readonly EvidenceItem[];
  readonly weighed: Weighed;
  readonly solver: Solver;
  readonly posterior: Solution;
}

export function rankCauses(input: DiagnoseInput, context: ReadingContext, weights: Weights): Ranking {
  const model = causeModel(input.setup.process, input.shopCounts, weights);
  const items = evidenceItems(input, context.electrode, readingsOf(context), weights);
  const weighed = weigh(model, items);
  const solver = solverFor(weighed.network, weighed.evidence.present);
  const posterior = solver.solve(weighed.evidence);
  const all = causeProbabilities(model, posterior);
  const without = withoutEach(model, items, weighed, solver, posterior);
  const ids = model.causes.map(({ id }) => id);
  const confirmed = confirmedTotal(ids, input.shopCounts);
  const causes = model.causes.map((cause): RankedCause => {
    const probability = all.get(cause.id)!;
    const change = lazily(() => changeFor(cause, probability, context));
    const why = lazily(() => whyFor(model, cause.id, items, probability, without(cause.id)));
    return {
      id: cause.id,
      name: cause.name,
      sentence: cause.sentence,
      probability,
      prior: model.priors.get(cause.id)!,
      get why() {
        return why();
      },
      get change() {
        return change();
      },
      shop: confirmed === 0 ? null : { confirmed: input.shopCounts[cause.id] ?? 0, total: confirmed },
    };
  });
  const sorted = causes.toSorted((a, b) => b.probability - a.probability);
  return { causes: sorted, model, items, weighed, solver, posterior };
}
