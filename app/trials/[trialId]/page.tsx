import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { BeadRow } from "@/components/report";
import { Header, UnitSwitch } from "@/components/shell";
import { TrialView } from "@/components/trials";
import { page } from "@/components/ui";
import { chooseUnitsAction } from "@/app/beads/actions";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import { runsOf, thingOfTrial, type SeriesBead } from "@/app/_door/series";
import { alignPhotos } from "@/lib/assess";
import { db } from "@/lib/db";
import { settingsText, sheetDocument, trialSheet } from "@/lib/report";
import { getTrial } from "@/lib/series";
import type { Trial } from "@/lib/trials";
import { lengthSystem, type UnitPreferences } from "@/lib/units";
import { beginRunAction } from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Trial" };

interface Props {
  params: Promise<{ trialId: string }>;
}

export default async function TrialPage({ params }: Props) {
  const { trialId } = await params;
  const now = await pageFor("bead.read", await thingOfTrial(db(), trialId));
  const trial = await getTrial(now.db, trialId);
  if (trial === null) notFound();
  const units = await currentUnits();
  const runs = await runsOf(now.db, trial);
  const sheet = trialSheet(trial, runs, units.preferences);
  const mayBegin = now.may("bead.write", { personId: trial.personId });
  return (
    <>
      <Header>
        <UnitSwitch choice={units.choice} onChoose={chooseUnitsAction} />
      </Header>
      <main className={page.page}>
        <TrialView
          id={trial.id}
          trial={trial.content}
          sheet={sheet}
          units={units.preferences}
          onBegin={mayBegin ? beginRunAction.bind(null, trial.id) : null}
          archive={now.may("data.export") ? `/api/export/archive.zip?trial=${trial.id}` : null}
        >
          <BeadRow
            beads={inOrder(trial.content, runs).map(({ bead, at }) => ({
              id: bead.id,
              sheet: sheetDocument(bead, units.preferences),
              aligned: alignPhotos(bead),
              title: titleOf(trial.content, at, units.preferences),
            }))}
            system={lengthSystem(units.preferences.length)}
          />
        </TrialView>
      </main>
    </>
  );
}

const titleOf = (trial: Trial, at: readonly number[], units: UnitPreferences): string => {
  const text = settingsText(trial, at, units);
  return text.charAt(0).toUpperCase() + text.slice(1);
};

/** Beads in the order of the first knob, then of the second. */
function inOrder(
  { points }: Trial,
  runs: readonly { readonly place: number; readonly bead: SeriesBead | null }[],
) {
  return runs
    .flatMap(({ place, bead }) => (bead ? [{ bead, at: points[place]! }] : []))
    .toSorted((a, b) => a.at[0]! - b.at[0]! || (a.at[1] ?? 0) - (b.at[1] ?? 0));
}
