"use client";

import Link from "next/link";
import { Chip, Panel } from "@/components/ui";
import { outcomes, type Outcome, type TriedChange } from "@/lib/assess";
import { outcomeWords } from "@/lib/report";
import styles from "./verdict-panel.module.css";

/** What was changed for this bead, and what it did: the answer that teaches the shop. */
export function TriedPanel({
  previous,
  tried,
  outcome,
  onOutcome,
}: {
  previous: { readonly id: string; readonly number: number; readonly title: string };
  tried: TriedChange;
  outcome: Outcome | null;
  onOutcome: (outcome: Outcome | null) => void;
}) {
  return (
    <Panel
      tone="blue"
      title={
        <>
          Run after <Link href={`/beads/${previous.id}`}>bead {previous.number}</Link>
        </>
      }
    >
      <p>
        <strong>{tried.sentence}</strong> {tried.step}
      </p>
      <p id="outcome-question">Compared with that bead, what did the change do?</p>
      <div className={styles.chips} role="group" aria-labelledby="outcome-question">
        {outcomes.map((one) => (
          <Chip key={one} on={outcome === one} onClick={() => onOutcome(outcome === one ? null : one)}>
            {outcomeWords[one]}
          </Chip>
        ))}
      </div>
    </Panel>
  );
}
