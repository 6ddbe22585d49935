import type { Source } from "@/lib/base";
import type { CauseId } from "../cause-ids";
import type { Odds, Reading } from "../reading";
import type { Amount } from "../types";

interface Fact {
  readonly key: string;
  readonly odds: Odds;
  readonly source: Source;
  readonly forText: string;
  readonly againstText?: string;
  readonly amounts?: readonly Amount[];
}

/** A plain fact of the record; one sentence for whatever it speaks for, one for what it speaks against. */
export function fact({ key, odds, source, forText, againstText, amounts }: Fact): Reading {
  return {
    key,
    odds,
    source,
    forText: Object.fromEntries((Object.keys(odds) as CauseId[]).map((id) => [id, forText])),
    againstText: againstText ?? forText,
    amounts: amounts ?? [],
  };
}
