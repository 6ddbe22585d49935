"use client";

import { Panel } from "@/components/ui";
import { etchingCaution } from "@/lib/section";
import { SectionFigures } from "./section-figures";
import { SectionReport } from "./section-report";
import { SectionVerdictPanel } from "./section-verdict-panel";
import type { BenchProps } from "./shared";
import styles from "./section.module.css";

/** All that the cut and etched photos of this bead say: sizes, the macro criteria row by row, and the report's heads. */
export function SectionPart({ state, dispatch, assessment, units }: BenchProps) {
  const cut = state.photos.filter(({ role }) => role === "section");
  return (
    <div className={styles.stack}>
      {cut.map((photo) => {
        const found = assessment.photos.find(({ photoId }) => photoId === photo.id)?.section ?? null;
        const marks = photo.history.present.marks;
        const act = (action: Parameters<typeof dispatch>[0] & { type: "section" }) => dispatch(action);
        return (
          <section
            key={photo.id}
            className={styles.stack}
            aria-label={`Section on photo ${numberOf(photo.id)}`}
          >
            {cut.length > 1 && <h2>Photo {numberOf(photo.id)}</h2>}
            {found === null ? (
              <Panel tone="straw">
                <p>Say under the photo which joint was cut. Then its sizes appear here.</p>
              </Panel>
            ) : (
              <>
                <SectionFigures measures={found.measures} units={units} />
                <SectionVerdictPanel
                  found={found}
                  judgement={state.judgement}
                  units={units}
                  markNumber={(id) => numberIn(marks, id)}
                  onJudgement={(change) => dispatch({ type: "judgement", change })}
                  onAction={(action) => act({ type: "section", photoId: photo.id, action })}
                />
                <SectionReport
                  section={found.section}
                  onText={(field, text) =>
                    act({
                      type: "section",
                      photoId: photo.id,
                      action: { type: "section.report", field, text },
                    })
                  }
                />
              </>
            )}
          </section>
        );
      })}
      <Panel tone="bronze" title="Etchants">
        <p data-testid="etching-caution">{etchingCaution}</p>
      </Panel>
    </div>
  );

  function numberOf(id: string): number {
    return state.photos.findIndex((photo) => photo.id === id) + 1;
  }
}

function numberIn(marks: readonly { readonly id: string }[], id: string): number | null {
  const index = marks.findIndex((mark) => mark.id === id);
  return index < 0 ? null : index + 1;
}
