import type { SeriesNote } from "@/components/trials";
import { assessBead, type Assessed } from "@/lib/assess";
import { getBeads, MOST_AT_ONCE, type BeadRecord } from "@/lib/beads";
import type { Thing } from "@/lib/people";
import { trialSheet, type TrialRunInput } from "@/lib/report";
import { cardOfBead, getTrial, listCards, listTrials, trialOfBead, type TrialRecord } from "@/lib/series";
import { assessContext } from "@/lib/shop";
import type { Db } from "@/lib/db";
import type { UnitPreferences } from "@/lib/units";

/** To whom a trial belongs; one that is not there belongs to nobody. */
export async function thingOfTrial(db: Db, id: string): Promise<Thing> {
  return { personId: (await getTrial(db, id))?.personId ?? null };
}

/** How a trial or card is called by its id; null where beads are grouped by something else. */
export async function seriesNames(db: Db, by: string): Promise<((id: string) => string) | null> {
  if (by !== "card" && by !== "trial") return null;
  const [records, word] = by === "card" ? [await listCards(db), "Card"] : [await listTrials(db), "Trial"];
  const names = new Map(
    records.map(({ id, number, content }) => [id, `${word} ${number}: ${content.title}`]),
  );
  return (id) => names.get(id) ?? id;
}

export type SeriesBead = Assessed<BeadRecord>;

/** The runs of a trial with their beads, each assessed once. */
export async function runsOf(
  db: Db,
  trial: TrialRecord,
): Promise<readonly (TrialRunInput & { readonly bead: SeriesBead | null })[]> {
  const context = await assessContext(db);
  const ids = trial.runs.map(({ beadId }) => beadId).slice(0, MOST_AT_ONCE);
  const beads = ids.length === 0 ? [] : await getBeads(db, ids);
  return trial.runs.map(({ place, beadId }) => {
    const bead = beads.find(({ id }) => id === beadId);
    return { place, beadId, bead: bead ? assessBead(bead, context) : null };
  });
}

/** What a bead says of its series and its card; nulls where it has none. */
export async function seriesNote(db: Db, beadId: string, units: UnitPreferences): Promise<SeriesNote> {
  const [found, card] = await Promise.all([trialOfBead(db, beadId), cardOfBead(db, beadId)]);
  const sheet = found && trialSheet(found.trial, await runsOf(db, found.trial), units);
  return {
    trial: found &&
      sheet && {
        id: found.trial.id,
        title: sheet.title,
        place: `Run ${found.place + 1} of ${Math.max(found.trial.content.budget, found.trial.content.points.length)}`,
        next: sheet.next,
      },
    card: card && {
      id: card.id,
      title: `card ${card.number}, ${card.content.title}`,
      content: card.content,
    },
  };
}
