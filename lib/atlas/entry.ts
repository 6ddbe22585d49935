import { usualCauses, whyCauseless, type UsualCause } from "@/lib/diagnose";
import {
  firstActs,
  imperfections,
  tellApart,
  type Imperfection,
  type ImperfectionId,
  type Process,
  type TellApart,
} from "@/lib/trade";
import { limitTables } from "./limits";

/** All that is told of one imperfection, apart from any bead. */
export interface AtlasEntry {
  readonly imperfection: Imperfection;
  readonly lookAlikes: readonly TellApart[];
  /** What usually leaves it in the process asked for, the most named first. */
  readonly causes: readonly UsualCause[];
  /** Said instead of causes, where there are none. */
  readonly causeless: string | null;
  /** What to do about the place itself, before curing or judging. */
  readonly firstAct: string;
  readonly whoSees: string;
  readonly limits: ReturnType<typeof limitTables>;
}

const INSPECTOR = "A qualified inspector sees it before anything is changed, ground or welded over.";
const GOVERNING =
  "Whoever the governing code, the contract or the procedure names. Without one: whoever answers for the work.";

/** The page of one imperfection; process null: causes of every process. */
export function atlasEntry(id: ImperfectionId, process: Process | null): AtlasEntry {
  const imperfection = imperfections[id];
  const causes = usualCauses(id, process);
  const nowhere =
    "Nothing in the tables leaves it in this process. Look again whether it is that, and whether the process is right.";
  return {
    imperfection,
    lookAlikes: tellApart(id),
    causes,
    causeless: causes.length > 0 ? null : (whyCauseless(id) ?? nowhere),
    firstAct: firstActs[id],
    whoSees: imperfection.inspectorFirst ? INSPECTOR : GOVERNING,
    limits: limitTables(id),
  };
}
