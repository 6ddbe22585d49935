"use client";

import { useMemo } from "react";
import { NewerVersion } from "@/components/criteria";
import { acceptSentence, listCriteria, type ShopCriteria } from "@/lib/accept";
import { judgeBeside, marksAcrossPhotos } from "@/lib/assess";
import { BesidePanel } from "./beside-panel";
import { ReadingsPanel } from "./readings-panel";
import type { BenchProps } from "./shared";
import { VerdictPanel } from "./verdict-panel";
import { WeldQuestionsPanel } from "./weld-questions-panel";
import { toContent } from "./work-state";
import styles from "./verdict-panel.module.css";

/** The verdict on the workbench, with the gauge readings that feed it. */
export function VerdictSection({
  state,
  dispatch,
  assessment,
  units,
  shopSets,
}: BenchProps & { readonly shopSets: readonly ShopCriteria[] }) {
  const criteria = useMemo(() => listCriteria(shopSets), [shopSets]);
  const chosen = criteria.find((set) => set.id === state.judgement.criteriaId);
  const { verdict } = assessment;
  const numbers = new Map(
    marksAcrossPhotos(toContent(state), assessment.photos).map(({ key, number }) => [key, number]),
  );
  const change = (judgement: Partial<typeof state.judgement>) =>
    dispatch({ type: "judgement", change: judgement });
  return (
    <div className={styles.stack}>
      <NewerVersion
        chosen={state.judgement.criteriaId}
        criteria={criteria}
        what="bead"
        onTake={(criteriaId) => change({ criteriaId })}
      />
      <VerdictPanel
        criteria={criteria}
        judgement={state.judgement}
        verdict={verdict?.ok ? verdict.value : null}
        problem={verdict && !verdict.ok && verdict.issues[0] ? acceptSentence(verdict.issues[0]) : null}
        markNumber={(id) => numbers.get(id) ?? null}
        units={units}
        onChange={change}
      />
      {verdict?.ok && (
        <BesidePanel
          criteria={criteria}
          judgement={state.judgement}
          verdict={verdict.value}
          judgeBy={(other) => judgeBeside(toContent(state), assessment.photos, shopSets, other)}
          units={units}
        />
      )}
      {state.judgement.criteriaId !== null && (
        <>
          {chosen && (
            <WeldQuestionsPanel
              set={chosen}
              setup={state.setup}
              weld={state.judgement.weld}
              units={units}
              onChange={(weld) => change({ weld })}
            />
          )}
          <ReadingsPanel
            readings={state.judgement.readings}
            units={units}
            onChange={(readings) => change({ readings })}
          />
        </>
      )}
    </div>
  );
}
