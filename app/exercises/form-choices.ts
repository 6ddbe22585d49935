import { listCriteria } from "@/lib/accept";
import type { Db } from "@/lib/db";
import { listSavedSetups, shopSetsToChoose } from "@/lib/shop";
import { jointWords, positionWords } from "@/lib/report";
import { exampleSetups } from "@/lib/setup";

/** What the exercise form offers to choose from. */
export async function formChoices(db: Db, chosen: string | null = null) {
  const [saved, sets] = await Promise.all([listSavedSetups(db, null), shopSetsToChoose(db, [chosen])]);
  return {
    criteria: listCriteria(sets),
    setups: [...saved, ...exampleSetups].map(({ name, setup }) => ({ name, setup })),
    words: { joints: jointWords, positions: positionWords },
  };
}
