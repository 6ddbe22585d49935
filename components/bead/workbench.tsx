"use client";

import { ClipboardList, Columns2, FileText, FlaskConical, Trash2 } from "lucide-react";
import Link from "next/link";
import { useMemo, useReducer, useState } from "react";
import { ShopGaugesProvider, type Gauge } from "@/components/canvas";
import { LinkWhenSent } from "@/components/offline";
import { Header, UnitSwitch } from "@/components/shell";
import { TrialNote, type SeriesNote } from "@/components/trials";
import type { ShopCriteria } from "@/lib/accept";
import { isPlanned, type BeadContent, type PhotoFacts, type TriedChange } from "@/lib/assess";
import type { ShopCounts } from "@/lib/diagnose";
import type { RunSetup } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import { BenchCollision, type Saving } from "./bench-collision";
import { BenchTabs, type PartId } from "./bench-tabs";
import { CausesSection } from "./causes-section";
import { Guide } from "./guide";
import { PhotoSection } from "./photo-section";
import { SaveNote } from "./save-note";
import { SectionPart } from "./section-part";
import type { BenchProps } from "./shared";
import { SetupSection, type SavedSetup, type SetupStore } from "./setup-section";
import { useParts } from "./use-parts";
import { useAssessment } from "./use-assessment";
import { useKeptWork } from "./use-kept-work";
import { VerdictSection } from "./verdict-section";
import { startWork, toContent, work } from "./work-state";
import styles from "./workbench.module.css";
import { RunPlan } from "./run-plan";
import { YourChange } from "./your-change";

export interface WorkbenchProps {
  /** Of the series it belongs to and the card it is run by; left out where it has neither. */
  readonly series?: SeriesNote;
  readonly bead: {
    readonly id: string;
    /** null: it was begun on this device, and there is no record of it yet. */
    readonly number: number | null;
    /** 0 where there is no record. */
    readonly revision: number;
    readonly content: BeadContent;
    readonly photos: readonly PhotoFacts[];
    readonly previous: { readonly id: string; readonly number: number; readonly title: string } | null;
  };
  readonly units: { readonly choice: "metric" | "inch"; readonly preferences: UnitPreferences };
  readonly savedSetups: readonly SavedSetup[];
  readonly lastSetup: RunSetup | null;
  readonly setupStore: SetupStore;
  readonly shop: {
    readonly counts: ShopCounts;
    /** The shop's own limits this bead is or may be judged by. */
    readonly sets: readonly ShopCriteria[];
    readonly onReset: () => Promise<void>;
    /** The shop's own gauges, for readings. */
    readonly gauges: readonly Gauge[];
  };
  /** Starts the next bead from the given set-up and opens it. */
  readonly onRunAgain: (beadId: string, tried: TriedChange, setup: RunSetup) => Promise<void>;
  /** The weld of a job it was run on, and where that is looked at; left out where there is none. */
  readonly weld?: { readonly href: string; readonly words: string } | null;
  /** Whether this person may delete the bead. */
  readonly mayDelete: boolean;
  readonly onChooseUnits: (choice: "metric" | "inch") => Promise<void>;
  /** Somebody's first bead: what comes next is said on top. */
  readonly guided?: boolean;
}

/**
 * One bead from photo to verdict. On a wide screen the photo stays in view and the other parts take turns beside it; on a
 * phone all take turns, chosen from a bar under the thumb. A photo of a cut weld brings a part of its own.
 */
export function Workbench(props: WorkbenchProps) {
  const { bead, units, shop } = props;
  const [state, dispatch] = useReducer(work, bead, ({ content, photos }) => startWork(content, photos));
  const [shownId, setShownId] = useState<string | null>(state.photos[0]?.id ?? null);
  const content = useMemo(() => toContent(state), [state]);
  const kept = useKeptWork(bead, content, state, dispatch, setShownId);
  const assessment = useAssessment(content, state.photos, { shopCounts: shop.counts, shopSets: shop.sets });
  const inTrial = props.series?.trial ?? null;
  const shared = { beadId: bead.id, kept, state, dispatch, assessment, units: units.preferences, inTrial };
  const parts = useParts(state.photos, shownId, assessment.answer);
  const { section, beside } = parts;
  const { tried } = content.judgement;
  return (
    <ShopGaugesProvider value={shop.gauges}>
      <div className={styles.page}>
        <BenchHeader {...props} kept={kept} />
        {props.guided && (
          <Guide content={content} answerShown={section === "causes" || beside === "causes"} />
        )}
        {props.series && <TrialNote note={props.series} setup={content.setup} units={units.preferences} />}
        <RunPlan state={state} dispatch={dispatch} units={units.preferences} />
        {tried && isPlanned(content) && <YourChange tried={tried} previous={bead.previous} />}
        <BenchCollision
          beadId={bead.id}
          waiting={state.photos.filter(({ sha256 }) => sha256 === "")}
          {...{ content, save: kept.save, keeps: kept.keeps, dispatch }}
        />
        <main className={styles.bench} data-section={section}>
          <section className={styles.photo} aria-label="Photo and marks">
            <PhotoSection {...shared} number={kept.number} shownId={shownId} onShow={setShownId} />
            {!kept.isNew && <WaysOn {...props} kept={kept} />}
          </section>
          <section className={styles.side} aria-label={parts.parts.find(({ id }) => id === beside)?.label}>
            <BenchTabs {...parts} stops={assessment.stops} onChoose={parts.choose} />
            <div className={styles.part} data-part={beside}>
              <Beside
                part={beside}
                shared={shared}
                bench={props}
                flush={kept.save.flush}
                onGoMark={() => parts.choose("photo")}
              />
            </div>
          </section>
        </main>
      </div>
    </ShopGaugesProvider>
  );
}

/** Who saves, the way to the sheet, the units. */
function BenchHeader({
  bead,
  units,
  onChooseUnits,
  kept,
  weld,
}: WorkbenchProps & { kept: BenchProps["kept"] }) {
  return (
    <Header>
      {weld && (
        <LinkWhenSent
          href={weld.href}
          kept={kept}
          what={weld.words}
          className={`${styles.iconLink} ${styles.onWide}`}
        >
          {weld.words}
        </LinkWhenSent>
      )}
      <SaveNote kept={kept} />
      {!kept.isNew && (
        <LinkWhenSent
          href={`/beads/${bead.id}/sheet`}
          kept={kept}
          what="The sheet"
          className={styles.iconLink}
        >
          <FileText size={20} aria-hidden="true" /> Sheet
        </LinkWhenSent>
      )}
      <UnitSwitch choice={units.choice} onChoose={onChooseUnits} />
    </Header>
  );
}

/** Where else this bead leads; below everything else, where no glove presses it by mistake. */
function WaysOn({ bead, weld, mayDelete, kept }: WorkbenchProps & { kept: BenchProps["kept"] }) {
  return (
    <>
      {weld && (
        <LinkWhenSent
          href={weld.href}
          kept={kept}
          what={weld.words}
          className={`${styles.iconLink} ${styles.onPhone}`}
        >
          {weld.words}
        </LinkWhenSent>
      )}
      <LinkWhenSent
        href={`/compare?pick=${bead.id}`}
        kept={kept}
        what="The comparison"
        className={styles.iconLink}
      >
        <Columns2 size={20} aria-hidden="true" /> Compare it with another bead
      </LinkWhenSent>
      <Link href={`/trials/new?bead=${bead.id}`} className={styles.iconLink}>
        <FlaskConical size={20} aria-hidden="true" /> Make a trial of it
      </Link>
      <Link href={`/cards/new?bead=${bead.id}`} className={styles.iconLink}>
        <ClipboardList size={20} aria-hidden="true" /> Make a card of it
      </Link>
      {mayDelete && (
        <Link href={`/beads/${bead.id}/delete`} className={styles.iconLink}>
          <Trash2 size={20} aria-hidden="true" /> Delete this bead
        </Link>
      )}
    </>
  );
}

/** The part that lies beside the photo. */
function Beside({
  part,
  shared,
  bench: { bead, savedSetups, lastSetup, setupStore, shop, onRunAgain },
  flush,
  onGoMark,
}: {
  part: PartId;
  shared: BenchProps;
  bench: WorkbenchProps;
  flush: Saving["flush"];
  onGoMark: () => void;
}) {
  switch (part) {
    case "setup":
      return (
        <SetupSection
          {...shared}
          planned={isPlanned(toContent(shared.state))}
          saved={savedSetups}
          last={lastSetup}
          store={setupStore}
        />
      );
    case "causes":
      return (
        <CausesSection
          {...shared}
          previous={bead.previous}
          shop={shop}
          onGoMark={onGoMark}
          onRunAgain={async (tried, setup) => {
            // What is not stored yet would be missing from the next bead.
            if ((await flush()) !== null) await onRunAgain(bead.id, tried, setup);
          }}
        />
      );
    case "verdict":
      return <VerdictSection {...shared} shopSets={shop.sets} />;
    case "section":
      return <SectionPart {...shared} />;
    case "photo":
      return null;
  }
}
