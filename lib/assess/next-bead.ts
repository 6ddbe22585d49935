import type { RunSetup } from "@/lib/setup";
import { emptyBeadJudgement, MOST_TITLE, type BeadContent, type TriedChange } from "./bead";

/**
 * What the next bead begins with: the set-up it is to be run with, the change that is tried, and what the bead before was
 * judged by. What was seen, read or answered on the bead before stays there.
 */
export function nextBead(
  { title, welder, judgement }: Pick<BeadContent, "title" | "welder" | "judgement">,
  tried: TriedChange,
  setup: RunSetup,
): Pick<BeadContent, "title" | "welder" | "setup" | "judgement"> {
  const { criteriaId, criteriaSettings, weld } = judgement;
  return {
    title: nextTitle(title),
    welder,
    setup,
    judgement: { ...emptyBeadJudgement, criteriaId, criteriaSettings, weld, tried },
  };
}

/** "Lap on 2 mm" -> "Lap on 2 mm, try 2" -> "…, try 3"; a title too long for it loses its end, not the count. */
function nextTitle(title: string): string {
  const [, base = title, count] = /^(.*), try (\d+)$/.exec(title) ?? [];
  const which = `, try ${count ? Number(count) + 1 : 2}`;
  return base.slice(0, MOST_TITLE - which.length) + which;
}
