import { isPlanned } from "@/lib/assess";
import type { PartId } from "./bench-tabs";
import { CausesSection } from "./causes-section";
import { SectionPart } from "./section-part";
import { SetupSection } from "./setup-section";
import type { EarlyProps } from "./shared";
import { useFull } from "./use-full";
import { VerdictSection } from "./verdict-section";
import { toContent } from "./work-state";
import type { WorkbenchProps } from "./workbench-props";

export interface BesideProps {
  readonly part: PartId;
  readonly shared: EarlyProps;
  readonly bench: WorkbenchProps;
  readonly onGoMark: () => void;
}

/** The part that lies beside the photo. */
export function BesideNow({ part, shared: early, bench, onGoMark }: BesideProps) {
  const { bead, savedSetups, lastSetup, setupStore, shop, onRunAgain } = bench;
  const shared = { ...early, assessment: useFull(early) };
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
            if ((await shared.kept.save.flush()) !== null) await onRunAgain(bead.id, tried, setup);
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
