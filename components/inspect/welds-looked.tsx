"use client";

import { Button, form } from "@/components/ui";
import { extentStanding, extentText, weldPartText, type InspectionDraft, type JobWeld } from "@/lib/inspect";
import type { UnitPreferences } from "@/lib/units";
import { ExtentField } from "./extent-field";
import { TextField } from "./fields";
import styles from "./inspect.module.css";

type Looked = InspectionDraft["welds"][number];

/** Which welds were looked at, and how much of each was seen; beside it what the job asks. */
export function WeldsLooked({
  looked,
  welds,
  units,
  onChange,
}: {
  readonly looked: readonly Looked[];
  readonly welds: readonly JobWeld[];
  readonly units: UnitPreferences;
  readonly onChange: (looked: Looked[]) => void;
}) {
  return (
    <fieldset className={styles.item}>
      <legend>Welds looked at</legend>
      {welds.map((weld) => {
        const one = looked.find(({ weldId }) => weldId === weld.id);
        const others = looked.filter(({ weldId }) => weldId !== weld.id);
        return (
          <div key={weld.id} className={styles.grid}>
            <label className={form.check}>
              <input
                type="checkbox"
                checked={one !== undefined}
                onChange={({ target }) =>
                  onChange(
                    target.checked ? [...others, { weldId: weld.id, seen: null, seenNote: "" }] : others,
                  )
                }
              />
              Weld {weld.number}
            </label>
            {one && (
              <Seen
                weld={weld}
                looked={one}
                units={units}
                change={(part) =>
                  onChange(looked.map((other) => (other.weldId === weld.id ? { ...other, ...part } : other)))
                }
              />
            )}
          </div>
        );
      })}
    </fieldset>
  );
}

/** How much of one weld was seen, beside what the job asks. */
export function Seen({
  weld,
  looked,
  units,
  change,
}: {
  readonly weld: JobWeld;
  readonly looked: Looked;
  readonly units: UnitPreferences;
  readonly change: (part: Partial<Looked>) => void;
}) {
  const { asked, askedNote, lengthMm, number } = weld;
  const { seen, seenNote } = looked;
  const isFull = extentStanding(asked, seen, lengthMm).kind === "full";
  return (
    <>
      <ExtentField
        label={`Seen of weld ${number}`}
        hint={`Asked: ${extentText(asked, askedNote, lengthMm) || "not recorded"}. ${standingWords(weld, seen)}`}
        extent={seen}
        units={units}
        allowZero
        onChange={(next) => change({ seen: next })}
      />
      {asked !== null && !isFull && (
        <Button onClick={() => change({ seen: asked })}>All that was asked of weld {number}</Button>
      )}
      {((seen !== null && !isFull) || seenNote !== "") && (
        <TextField
          label={`Which part of weld ${number}`}
          value={seenNote}
          most={80}
          onChange={(note) => change({ seenNote: note })}
        />
      )}
    </>
  );
}

function standingWords({ asked, lengthMm }: JobWeld, seen: Looked["seen"]): string {
  const standing = extentStanding(asked, seen, lengthMm);
  if (standing.kind === "full") return "All of it was seen.";
  if (standing.kind === "short") return `Missing: ${weldPartText(standing.missing)}.`;
  if (standing.kind === "not-comparable") return "Without the weld's length nobody can tell what is missing.";
  if (standing.kind === "beyond-length") return "One of the figures is more than the weld is long.";
  return "";
}
