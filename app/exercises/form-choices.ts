import { listCriteria } from "@/lib/accept";
import type { Db } from "@/lib/db";
import { listSavedSetups } from "@/lib/record";
import { jointWords, positionWords } from "@/lib/report";
import { exampleSetups } from "@/lib/setup";

/** What the exercise form offers to choose from. */
export async function formChoices(db: Db) {
  const saved = await listSavedSetups(db);
  return {
    criteria: listCriteria(),
    setups: [...saved, ...exampleSetups].map(({ name, setup }) => ({ name, setup })),
    words: { joints: jointWords, positions: positionWords },
  };
}
