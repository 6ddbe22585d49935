import type { Result } from "@/lib/base";
import { judge, type AcceptIssue, type ShopCriteria, type Verdict } from "@/lib/accept";
import type { PhotoMeasures } from "./across-photos";
import type { BeadContent, BeadJudgement } from "./bead";
import { judgeInput } from "./judge-input";

/**
 * The same bead, with the same marks, readings and answers, judged by another set: to look at, nothing is kept. What
 * the other set wants looked for and nobody has looked for stays open.
 */
export function judgeBeside(
  content: BeadContent,
  measured: readonly PhotoMeasures[],
  shopSets: readonly ShopCriteria[],
  other: Pick<BeadJudgement, "criteriaId" | "criteriaSettings">,
): Result<Verdict, AcceptIssue> | null {
  const beside = { ...content, judgement: { ...content.judgement, ...other } };
  const input = judgeInput(beside, measured, shopSets);
  return input === null ? null : judge(input);
}
