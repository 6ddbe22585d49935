import Link from "next/link";
import type { Card } from "@/lib/cards";
import { cardWatchLines } from "@/lib/report";
import type { RunSetup } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import styles from "./trials.module.css";

export interface SeriesNote {
  /** The trial this bead belongs to, its place in it, and what is to be run next. */
  readonly trial: {
    readonly id: string;
    readonly title: string;
    readonly place: string;
    readonly next: string;
  } | null;
  /** The card it is run by. */
  readonly card: { readonly id: string; readonly title: string; readonly content: Card } | null;
}

/** On a bead of a series the change to run next is the series' next point; one that is run by a card is watched as it is typed. */
export function TrialNote({
  note: { trial, card },
  setup,
  units,
}: {
  note: SeriesNote;
  setup: RunSetup;
  units: UnitPreferences;
}) {
  if (trial === null && card === null) return null;
  return (
    <aside className={styles.note} aria-label="Series and card" data-testid="series-note">
      {trial && (
        <p>
          {trial.place} of <Link href={`/trials/${trial.id}`}>{trial.title}</Link>.{" "}
          <strong>{trial.next}</strong> Change nothing else while the trial runs.
        </p>
      )}
      {card && <ByCard card={card} off={cardWatchLines(card.content, setup, units)} />}
    </aside>
  );
}

function ByCard({ card, off }: { card: NonNullable<SeriesNote["card"]>; off: readonly string[] }) {
  return (
    <p>
      By <Link href={`/cards/${card.id}`}>{card.title}</Link>:{" "}
      {off.length === 0 ? "inside its ranges." : <strong>{off.join(" ")}</strong>}
    </p>
  );
}
