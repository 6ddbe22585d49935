import type { Result } from "@/lib/base";
import { groupByPeriod, type Period } from "@/lib/trends/group";
import type { TrendIssue } from "@/lib/trends/issue";
import type { BeadObservation } from "@/lib/trends/observation";
import { pChart, type PChart } from "@/lib/trends/p-chart";
import { rejectRate } from "./reject-rate";
import { usualRules, type SignalRule } from "@/lib/trends/signals";

/**
 * Rejected beads among the decided ones, period by period, as a p-chart; each point keeps the beads it is made of.
 * A period whose beads are all undecided is named in `skipped`. Issues: `day-not-a-date`, `no-samples`.
 */
export function rejectChart(
  observations: readonly BeadObservation[],
  period: Period,
  rules: readonly SignalRule[] = usualRules,
): Result<PChart, TrendIssue> {
  const groups = groupByPeriod(observations, period);
  if (!groups.ok) return groups;
  const samples = groups.value.map(({ key, observations: members }) => {
    const { rejected, decidedIds } = rejectRate(members);
    return { label: key ?? "", count: rejected.count, of: rejected.of, beadIds: decidedIds };
  });
  return pChart(samples, rules);
}
