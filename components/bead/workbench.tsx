"use client";

import { ClipboardList, Columns2, FileText, FlaskConical, Trash2 } from "lucide-react";
import Link from "next/link";
import { useMemo, useReducer, useState } from "react";
import { ShopGaugesProvider } from "@/components/canvas";
import { LinkWhenSent } from "@/components/offline";
import { formStyles } from "@/components/setup";
import { Header, UnitSwitch } from "@/components/shell";
import { TrialNote } from "@/components/trials";
import { laterPart } from "@/components/ui";
import { isPlanned } from "@/lib/assess";
import type { FirstAnswer } from "./bench-assessment";
import { benchCode } from "./bench-code";
import { BehindNote } from "./behind-note";
import { BenchCollision } from "./bench-collision";
import type * as BenchLate from "./bench-late";
import { BenchTabs } from "./bench-tabs";
import type { BesideProps } from "./beside";
import { Guide } from "./guide";
import { PhotoSection } from "./photo-section";
import { RunPlan } from "./run-plan";
import { SaveNote } from "./save-note";
import type { BenchProps, EarlyProps } from "./shared";
import { useAssessment } from "./use-assessment";
import { useKeptWork } from "./use-kept-work";
import { useParts } from "./use-parts";
import { startWork, toContent, work, type WorkState } from "./work-state";
import type { WorkbenchProps } from "./workbench-props";
import styles from "./workbench.module.css";
import { YourChange } from "./your-change";

/** Of a bead with nothing on it. */
const noAnswer: FirstAnswer = { stops: 0, answer: "unlooked" };

/** With the style sheets of its form: the server shows it before its code is here. */
const Beside = laterPart<typeof BenchLate, BesideProps>(benchCode, ({ BesideNow }) => BesideNow);
void formStyles;

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
  const shopKnows = useMemo(() => ({ shopCounts: shop.counts, shopSets: shop.sets }), [shop]);
  const assessment = useAssessment(content, state.photos, shopKnows, props.first ?? noAnswer);
  const inTrial = props.series?.trial ?? null;
  const shared: EarlyProps = {
    ...{ beadId: bead.id, kept, state, dispatch, assessment, shopKnows, inTrial },
    isBehind: useChanged(state) && assessment.full === null,
    units: units.preferences,
  };
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
            {shared.isBehind && <BehindNote />}
            <div className={styles.part} data-part={beside} data-behind={shared.isBehind || undefined}>
              <Beside part={beside} shared={shared} bench={props} onGoMark={() => parts.choose("photo")} />
            </div>
          </section>
        </main>
      </div>
    </ShopGaugesProvider>
  );
}

/** Whether anything that an answer rests on is other than it was when the page came. */
function useChanged({ photos, setup, judgement }: WorkState): boolean {
  const [first] = useState({ photos, setup, judgement });
  return first.photos !== photos || first.setup !== setup || first.judgement !== judgement;
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
