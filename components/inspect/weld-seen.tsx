"use client";

import { SaveBar, useEdited, type Editing } from "@/components/saving";
import { Panel } from "@/components/ui";
import type { InspectionDraft, JobWeld } from "@/lib/inspect";
import type { UnitPreferences } from "@/lib/units";
import styles from "./inspect.module.css";
import { Seen } from "./welds-looked";

/** How much of one weld was seen; the rest of the inspection stays as it is. */
export function WeldSeen({
  weld,
  units,
  ...editing
}: Editing<InspectionDraft> & { readonly weld: JobWeld; readonly units: UnitPreferences }) {
  const edited = useEdited(editing, "auto");
  const { welds } = edited.content;
  const looked = welds.find(({ weldId }) => weldId === weld.id) ?? {
    weldId: weld.id,
    seen: null,
    seenNote: "",
  };
  return (
    <Panel title="How much was seen" tone="straw">
      <form
        className={styles.wide}
        aria-label="How much was seen"
        onSubmit={(event) => {
          event.preventDefault();
          edited.submit();
        }}
      >
        <Seen
          weld={weld}
          looked={looked}
          units={units}
          change={(part) =>
            edited.change({
              welds: [...welds.filter(({ weldId }) => weldId !== weld.id), { ...looked, ...part }],
            })
          }
        />
        <SaveBar edited={edited}>Save what was seen</SaveBar>
      </form>
    </Panel>
  );
}
