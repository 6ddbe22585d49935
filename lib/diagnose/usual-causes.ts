import type { Source } from "@/lib/base";
import { processes, type ImperfectionId, type Process } from "@/lib/trade";
import type { CauseId } from "./cause-ids";
import { linksFor } from "./model";
import { causes } from "./tables/causes";
import type { CauseLink } from "./tables/links";
import { withoutCause } from "./tables/without-cause";
import { weightClasses, type WeightClass } from "./weights";
import { sourcesOf } from "./witness";

/** A cause that is known to leave an imperfection, apart from any bead. */
export interface UsualCause {
  readonly id: CauseId;
  readonly name: string;
  /** How the cause makes the mark. */
  readonly because: string;
  /** What to do about it on the next bead, imperative. */
  readonly correction: string;
  /** How many and how good the documents that name the pair are; no frequency. */
  readonly weight: WeightClass;
  readonly processes: readonly Process[];
  /** The documents behind the pair, the most trusted first. */
  readonly sources: readonly Source[];
}

/**
 * What usually leaves an imperfection in a process (null: in any), the most named first, read from the link tables. A
 * cause with a row of its own for some processes stands once, with its strongest row's words.
 */
export function usualCauses(id: ImperfectionId, process: Process | null): readonly UsualCause[] {
  const rows = linksFor(id, process).toSorted((a, b) => rank(a) - rank(b));
  const ids = [...new Set(rows.map(({ cause }) => cause))];
  return ids.map((cause) => {
    const mine = rows.filter((row) => row.cause === cause);
    const [first] = mine;
    const { name, correction } = causes.find((one) => one.id === cause)!;
    return {
      id: cause,
      name,
      because: first!.because,
      correction,
      weight: first!.weight,
      processes: processes.filter((one) => mine.some((row) => row.processes.includes(one))),
      sources: sourcesOf(first!.witnesses),
    };
  });
}

const rank = ({ weight }: CauseLink): number => weightClasses.indexOf(weight);

/** Why no setting and no movement of the arc leaves it; null where some does. */
export const whyCauseless = (id: ImperfectionId): string | null => withoutCause[id] ?? null;
