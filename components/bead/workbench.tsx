"use client";

import { Camera, FileText, Gavel, ListTree, Scan, SlidersHorizontal } from "lucide-react";
import Link from "next/link";
import { useMemo, useReducer, useState } from "react";
import { ShopGaugesProvider, type Gauge } from "@/components/canvas";
import { CollisionNotice, useRevision } from "@/components/saving";
import { Header, UnitSwitch } from "@/components/shell";
import type { ShopCriteria } from "@/lib/accept";
import { mergeContent, type BeadContent, type PhotoFacts, type TriedChange } from "@/lib/assess";
import type { ShopCounts } from "@/lib/diagnose";
import type { RunSetup } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import { CausesSection } from "./causes-section";
import { PhotoSection } from "./photo-section";
import { readBead, saveBead, type StoredBead } from "./save-bead";
import { SaveNote } from "./save-note";
import { SectionPart } from "./section-part";
import { SetupSection, type SavedSetup, type SetupStore } from "./setup-section";
import { useAssessment } from "./use-assessment";
import { VerdictSection } from "./verdict-section";
import { startWork, toContent, work } from "./work-state";
import styles from "./workbench.module.css";

export interface WorkbenchProps {
  readonly bead: {
    readonly id: string;
    readonly number: number;
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
  readonly onRunAgain: (tried: TriedChange, setup: RunSetup) => Promise<void>;
  readonly onChooseUnits: (choice: "metric" | "inch") => Promise<void>;
}

const parts = [
  { id: "photo", label: "Marks", icon: Camera },
  { id: "setup", label: "Set-up", icon: SlidersHorizontal },
  { id: "causes", label: "Causes", icon: ListTree },
  { id: "verdict", label: "Verdict", icon: Gavel },
  { id: "section", label: "Section", icon: Scan },
] as const;
type SectionId = (typeof parts)[number]["id"];

/**
 * One bead from photo to verdict. On a wide screen the photo stays in view and the other parts take turns beside it; on a
 * phone all take turns, chosen from a bar under the thumb. A photo of a cut weld brings a part of its own.
 */
export function Workbench({
  bead,
  units,
  savedSetups,
  lastSetup,
  setupStore,
  shop,
  onRunAgain,
  onChooseUnits,
}: WorkbenchProps) {
  const [state, dispatch] = useReducer(work, bead, ({ content, photos }) => startWork(content, photos));
  const [chosen, setSection] = useState<SectionId>("photo");
  const [shownId, setShownId] = useState<string | null>(state.photos[0]?.id ?? null);
  const isCut = state.photos.some(({ role }) => role === "section");
  const sections = parts.filter(({ id }) => isCut || id !== "section");
  const section = sections.some(({ id }) => id === chosen) ? chosen : "photo";
  const content = useMemo(() => toContent(state), [state]);
  const save = useRevision("auto", bead.revision, content, saveBead.bind(null, bead.id));
  const replace = (next: BeadContent, { photos }: StoredBead) =>
    dispatch({ type: "replace", state: startWork(next, photos) });
  const assessment = useAssessment(content, state.photos, { shopCounts: shop.counts, shopSets: shop.sets });
  const shared = { beadId: bead.id, state, dispatch, assessment, units: units.preferences };
  const shown = state.photos.find(({ id }) => id === shownId) ?? state.photos[0];
  const first = shown?.role === "section" ? "section" : "setup";
  const beside = section === "photo" ? first : section;

  return (
    <ShopGaugesProvider value={shop.gauges}>
      <div className={styles.page}>
        <Header>
          <SaveNote state={save.state} />
          <Link
            href={`/beads/${bead.id}/sheet`}
            className={styles.sheetLink}
            onClick={() => void save.flush()}
          >
            <FileText size={20} aria-hidden="true" /> Sheet
          </Link>
          <UnitSwitch choice={units.choice} onChoose={onChooseUnits} />
        </Header>
        <CollisionNotice
          className={styles.notice}
          state={save.state}
          readStored={() => readBead(bead.id)}
          onRetry={() => void save.flush()}
          choices={[
            {
              label: "Keep both: all marks of both, my settings",
              choose: (stored) => {
                replace(mergeContent(content, stored.content), stored);
                save.keepOwn(stored);
              },
            },
            {
              label: "Keep mine",
              choose: (stored) => {
                replace(content, stored);
                save.keepOwn(stored);
              },
            },
            {
              label: "Take the other one",
              choose: (stored) => {
                replace(stored.content, stored);
                save.takeStored(stored);
              },
            },
          ]}
        />
        <main className={styles.bench} data-section={section}>
          <section className={styles.photo} aria-label="Photo and marks">
            <PhotoSection {...shared} number={bead.number} shownId={shownId} onShow={setShownId} />
          </section>
          <section className={styles.side} aria-label={sections.find(({ id }) => id === beside)?.label}>
            <nav className={styles.tabs} aria-label="Parts of this bead">
              {sections.map(({ id, label, icon: Icon }) => (
                <button
                  key={id}
                  type="button"
                  data-tab={id}
                  aria-current={section === id ? "true" : beside === id ? "page" : undefined}
                  onClick={() => setSection(id)}
                >
                  <Icon size={22} aria-hidden="true" />
                  {label}
                  {id === "setup" && assessment.stops > 0 && (
                    <span className={styles.count}>{assessment.stops}</span>
                  )}
                </button>
              ))}
            </nav>
            <div className={styles.part} data-part={beside}>
              {beside === "setup" && (
                <SetupSection {...shared} saved={savedSetups} last={lastSetup} store={setupStore} />
              )}
              {beside === "causes" && (
                <CausesSection
                  {...shared}
                  previous={bead.previous}
                  shop={shop}
                  onGoMark={() => setSection("photo")}
                  onRunAgain={async (tried, setup) => {
                    await save.flush();
                    await onRunAgain(tried, setup);
                  }}
                />
              )}
              {beside === "verdict" && <VerdictSection {...shared} shopSets={shop.sets} />}
              {beside === "section" && <SectionPart {...shared} />}
            </div>
          </section>
        </main>
      </div>
    </ShopGaugesProvider>
  );
}
