"use client";

import { useState } from "react";
import { basisOf, type DiagnoseInput, type Diagnosis, type RankedCause } from "@/lib/diagnose";
import { basisWords, changeText, otherCauseWords, reasonsOf } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import styles from "./causes-panel.module.css";
import { Origins } from "./origins";
import { useInIdle } from "./use-in-idle";

const SHOWN = 3;
/** Beyond these a cause is one of many that hardly fit: nobody acts on it. */
const CONSIDERED = 5;

interface ListProps {
  readonly diagnosis: Diagnosis;
  readonly evidence: DiagnoseInput;
  /** The cause the answer is about: it leads the list, open with its reasons. */
  readonly answered: RankedCause["id"] | null;
  readonly units: UnitPreferences;
}

/** The first few causes, that of the answer open with its reasons; some others folded away. */
export function CausesList({ diagnosis, evidence, answered, units }: ListProps) {
  const { causes } = diagnosis;
  // Opening the panel shows everything at once; what comes with later marks follows their frame.
  const [openedWith] = useState(causes);
  const lead = causes.find(({ id }) => id === answered) ?? causes[0];
  const ranked = [...(lead ? [lead] : []), ...causes.filter((cause) => cause !== lead)];
  const row = (cause: RankedCause, open: boolean) => (
    <CauseRow
      key={cause.id}
      {...{ cause, units, open }}
      words={
        cause.id === answered || cause === causes[0]
          ? basisWords[basisOf(evidence, diagnosis, cause.id)]
          : otherCauseWords(cause.probability)
      }
      atOnce={causes === openedWith}
    />
  );
  const others = ranked.slice(SHOWN, SHOWN + CONSIDERED);
  return (
    <section className={styles.causes} aria-label="Likely causes">
      <h3>Likely causes</h3>
      <ol data-testid="causes">{ranked.slice(0, SHOWN).map((cause, i) => row(cause, i === 0))}</ol>
      {others.length > 0 && (
        <details className={styles.rest}>
          <summary>Others considered</summary>
          <ol>{others.map((cause) => row(cause, false))}</ol>
        </details>
      )}
    </section>
  );
}

interface RowProps {
  readonly cause: RankedCause;
  readonly words: string;
  readonly units: UnitPreferences;
  readonly open: boolean;
  readonly atOnce: boolean;
}

function CauseRow({ cause, words, units, open, atOnce }: RowProps) {
  const [opened, setOpened] = useState(open);
  return (
    <li className={styles.cause} data-cause={cause.id}>
      <details open={open} onToggle={(event) => setOpened(event.currentTarget.open)}>
        <summary>
          <span className={styles.name}>{cause.name}</span>
          <span className={styles.chance}>{words}</span>
          <span className={styles.bar} aria-hidden="true">
            <span style={{ width: `${Math.max(1, cause.probability * 100)}%` }} />
          </span>
        </summary>
        <p>{cause.sentence}</p>
        {cause.shop && cause.shop.confirmed > 0 && (
          <p className={styles.shop}>
            {cause.shop.confirmed} of {cause.shop.total} confirmed here
          </p>
        )}
        <WhyOf cause={cause} units={units} wanted={open || opened} atOnce={atOnce} />
        <p>
          <strong>Correction:</strong> {cause.change.sentence} {changeText(cause.change, units)}
        </p>
      </details>
    </li>
  );
}

/** Reasons take longer than the ranking: they follow it, and the last ones stand until then, so that nothing jumps. */
function WhyOf({
  cause,
  units,
  wanted,
  atOnce,
}: Pick<RowProps, "cause" | "units" | "atOnce"> & { readonly wanted: boolean }) {
  const why = useInIdle(cause, wanted, () => cause.why, atOnce);
  if (why === null && !wanted) return null;
  if (why === null) return <p className={styles.waiting} aria-busy="true" aria-label="Reasons follow" />;
  if (why.length === 0) {
    return (
      <p className={styles.small}>
        Nothing recorded speaks for or against it; this is only how common it is.
      </p>
    );
  }
  const { speaksFor, speaksAgainst, restFor, restAgainst } = reasonsOf(why, units);
  return (
    <>
      <Lines title="Speaks for it" lines={speaksFor} />
      <Lines title="Speaks against it" lines={speaksAgainst} />
      {restFor.length + restAgainst.length > 0 && (
        <details className={styles.rest}>
          <summary>Lighter reasons</summary>
          <Lines title="For it" lines={restFor} />
          <Lines title="Against it" lines={restAgainst} />
        </details>
      )}
      <Origins sources={why.flatMap(({ sources }) => sources)} />
    </>
  );
}

function Lines({ title, lines }: { title: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <div>
      <h4>{title}</h4>
      <ul className={styles.why}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
