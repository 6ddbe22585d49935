import type { Source } from "@/lib/base";
import { logOdds } from "@/lib/numeric";
import { fromMemory, type ImperfectionId } from "@/lib/trade";
import type { CauseId } from "./cause-ids";
import { imperfectionName, type EvidenceItem } from "./evidence";
import { linksFor, type CauseModel } from "./model";
import type { CauseLink } from "./tables/links";
import { contraries } from "./tables/looks";
import type { WhyItem } from "./types";
import { weightClasses } from "./weights";
import { sourcesOf } from "./witness";

/** Smaller shifts than this say nothing worth a line. */
const LEAST_LOG_ODDS = 0.05;

/** Evidence for and against one cause, heaviest first; weights are the change of log-odds by leaving it out. */
export function whyFor(
  model: CauseModel,
  cause: CauseId,
  items: readonly EvidenceItem[],
  probability: number,
  without: readonly number[],
): readonly WhyItem[] {
  const full = logOdds(probability);
  return items
    .map((item, i) => ({ item, weight: full - logOdds(without[i]!) }))
    .filter(({ weight }) => Math.abs(weight) >= LEAST_LOG_ODDS)
    .map(({ item, weight }) => whyItem(model, cause, item, weight))
    .toSorted((a, b) => Math.abs(b.logOdds) - Math.abs(a.logOdds) || (a.key < b.key ? -1 : 1));
}

function whyItem(model: CauseModel, cause: CauseId, item: EvidenceItem, weight: number): WhyItem {
  const direction = weight >= 0 ? "for" : "against";
  const { sentence, sources } = words(model, cause, item, direction);
  return {
    key: item.key,
    kind: item.kind,
    direction,
    logOdds: weight,
    imperfection: item.imperfection,
    sentence,
    amounts: speaksOf(item, cause) ? item.amounts : [],
    sources,
    source: sources[0]!,
  };
}

interface Words {
  readonly sentence: string;
  readonly sources: readonly Source[];
}

function words(model: CauseModel, cause: CauseId, item: EvidenceItem, direction: "for" | "against"): Words {
  if (item.kind === "mark" && item.imperfection !== null)
    return markWords(model, cause, item.imperfection, direction);
  if (item.kind === "absent" && item.imperfection !== null) {
    return absentWords(model, cause, item.imperfection, direction, item.sources);
  }
  if (!speaksOf(item, cause)) return { sentence: indirect(item, direction), sources: item.sources };
  const direct = direction === "for" ? item.forText[cause] : undefined;
  return { sentence: direct ?? item.againstText, sources: item.sources };
}

/** Whether the item is about this cause itself; otherwise it works by way of other causes. */
function speaksOf({ odds, answer, strength, makes, forText }: EvidenceItem, cause: CauseId): boolean {
  return (
    odds[cause] !== undefined ||
    strength[cause] !== undefined ||
    makes[cause] !== undefined ||
    forText[cause] !== undefined ||
    (answer?.causes.includes(cause) ?? false)
  );
}

function indirect(item: EvidenceItem, direction: "for" | "against"): string {
  const said = item.againstText || Object.values(item.forText)[0] || "";
  return direction === "for"
    ? `${said} That makes other causes less likely.`
    : `${said} Something else explains these marks better.`;
}

function markWords(
  model: CauseModel,
  cause: CauseId,
  id: ImperfectionId,
  direction: "for" | "against",
): Words {
  const name = imperfectionName(id);
  const opposite = contraries.find((row) => row.imperfection === id && row.cause === cause);
  if (opposite && direction === "against") {
    return {
      sentence: `${name}: this would make the opposite.`,
      sources: sourcesOf([...opposite.documents, "memory"]),
    };
  }
  const link = heaviest(linksFor(id, model.process).filter((row) => row.cause === cause));
  if (link === null) {
    return {
      sentence: `${name}: not known to come of this.`,
      sources: [fromMemory],
    };
  }
  const named = sourcesOf(link.witnesses);
  return {
    sentence:
      direction === "for"
        ? `${name}: ${lowerFirst(link.because)}`
        : `${name}: something else explains it better.`,
    sources: named,
  };
}

function absentWords(
  model: CauseModel,
  cause: CauseId,
  id: ImperfectionId,
  direction: "for" | "against",
  sources: readonly Source[],
): Words {
  const name = imperfectionName(id);
  const link = heaviest(linksFor(id, model.process).filter((row) => row.cause === cause));
  if (link !== null && direction === "against") {
    return {
      sentence: `${name}: looked for and not there, though this tends to leave it.`,
      sources: sourcesOf(link.witnesses),
    };
  }
  return { sentence: `${name}: looked for and not there; other causes would have left it.`, sources };
}

function heaviest(links: readonly CauseLink[]): CauseLink | null {
  return (
    links.toSorted((a, b) => weightClasses.indexOf(a.weight) - weightClasses.indexOf(b.weight))[0] ?? null
  );
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
