import type { Verdict } from "@/lib/accept";
import { proposal, type Assessed, type BeadContent, type PhotoFacts } from "@/lib/assess";
import { imperfections } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import { changeText } from "./amount-text";
import { dayText } from "./day-text";
import { setupLine } from "./setup-rows";

/** What the list shows of one bead. */
export interface BeadSummary {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly welder: string | null;
  readonly day: string;
  readonly thumbSha256: string | null;
  readonly setupLine: string;
  /** Names of what is marked, each once, with its count when more than one. */
  readonly seen: readonly string[];
  readonly firstChange: string | null;
  readonly verdict: Verdict["verdict"] | null;
}

export interface SummarisableBead {
  readonly id: string;
  readonly number: number;
  /** ISO 8601. */
  readonly createdAt: string;
  readonly content: BeadContent;
  readonly photos: readonly PhotoFacts[];
}

export function summariseBead(bead: Assessed<SummarisableBead>, units: UnitPreferences): BeadSummary {
  const { content } = bead;
  const { diagnosis, verdict } = bead.assessment;
  const marks = content.photos.flatMap((photo) => photo.drawing.marks);
  const change = diagnosis.ok ? (proposal(diagnosis.value)?.first ?? null) : null;
  return {
    id: bead.id,
    number: bead.number,
    title: content.title,
    welder: content.welder,
    day: dayText(bead.createdAt),
    thumbSha256: bead.photos[0]?.sha256 ?? null,
    setupLine: setupLine(content.setup, units),
    seen: countNames(marks.map((mark) => imperfections[mark.imperfection].name)),
    firstChange: change && [change.sentence, changeText(change, units)].filter(Boolean).join(" "),
    verdict: verdict?.ok ? verdict.value.verdict : null,
  };
}

function countNames(names: readonly string[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].map(([name, count]) => (count > 1 ? `${name} × ${count}` : name));
}
