"use client";

import { useState, useTransition } from "react";
import { Button, buttonClass } from "@/components/ui";
import { bulkWords, type BulkDid, type BulkDone } from "./bulk-words";
import { choosingOff, type Chosen } from "./chosen";
import styles from "./chosen-bar.module.css";
import { useChosen } from "./use-chosen";
import { WeldForm, type WeldChoice } from "./weld-form";

export interface ChosenActs {
  readonly export: boolean;
  /** Deletes these, and brings back what was deleted, by the ids it is kept under; null where that is not theirs to do. */
  readonly remove: {
    readonly remove: (ids: readonly string[]) => Promise<BulkDone>;
    readonly bringBack: (deletedIds: readonly string[]) => Promise<BulkDone>;
  } | null;
  /** Files these under a weld of a job; null where that is not theirs to do. */
  readonly weld: {
    readonly choices: () => Promise<readonly WeldChoice[]>;
    readonly attach: (ids: readonly string[], jobId: string, weldId: string) => Promise<BulkDone>;
  } | null;
}

interface Told {
  readonly text: string;
  /** What can be brought back, by the ids it is kept under. */
  readonly back: Chosen;
}

const files = [
  { href: "/api/export/archive.zip", label: "Archive" },
  { href: "/api/export/beads.csv", label: "CSV" },
] as const;

const address = (href: string, chosen: Chosen): string =>
  `${href}?${new URLSearchParams(chosen.map(({ id }) => ["pick", id])).toString()}`;

const noAnswer =
  "Toeline did not answer, so it is not known how far that came. The list shows what is there once it answers.";

/** What was deleted, as it can be brought back. */
const backAgain = ({ done }: BulkDone, asked: Chosen): Chosen =>
  done.flatMap(({ id, deletedId }) => {
    const number = asked.find((one) => one.id === id)?.number;
    return deletedId === undefined || number === undefined ? [] : [{ id: deletedId, number }];
  });

/** What can be done with the chosen beads, at the foot of the list; and what became of it. */
export function ChosenBar({ acts }: { acts: ChosenActs }) {
  const [chosen, choose] = useChosen();
  const [told, setTold] = useState<Told | null>(null);
  const [filing, setFiling] = useState(false);
  const [pending, start] = useTransition();
  if (chosen.length === 0 && told === null) return null;

  const act = (did: BulkDid, of: Chosen, work: (ids: readonly string[]) => Promise<BulkDone>): void =>
    start(async () => {
      const done = await work(of.map(({ id }) => id)).catch(() => null);
      setFiling(false);
      if (done === null) return setTold({ text: noAnswer, back: [] });
      choose((before) => choosingOff(before, done.done));
      setTold({ text: bulkWords(did, done, of), back: backAgain(done, of) });
    });
  const { remove, weld } = acts;
  return (
    <section className={styles.bar} aria-label="Chosen beads">
      <p role="status" className={styles.said}>
        {told !== null && <span>{told.text}</span>}
        {chosen.length > 0 && <strong>{chosen.length} chosen</strong>}
      </p>
      {filing && weld ? (
        <WeldForm
          choices={weld.choices}
          pending={pending}
          onClose={() => setFiling(false)}
          onWeld={(jobId, weldId) => act("filed", chosen, (ids) => weld.attach(ids, jobId, weldId))}
        />
      ) : (
        <div className={styles.acts}>
          {told !== null && told.back.length > 0 && remove && (
            <Button
              tone="main"
              disabled={pending}
              onClick={() => act("brought back", told.back, remove.bringBack)}
            >
              Bring them back
            </Button>
          )}
          {chosen.length > 0 && (
            <>
              <Compare chosen={chosen} />
              {acts.export &&
                files.map(({ href, label }) => (
                  <a key={href} className={buttonClass()} href={address(href, chosen)}>
                    {label}
                  </a>
                ))}
              {weld && <Button onClick={() => setFiling(true)}>To a job</Button>}
              {remove && (
                <Button
                  tone="danger"
                  disabled={pending}
                  onClick={() => act("deleted", chosen, remove.remove)}
                >
                  Delete
                </Button>
              )}
              <Button onClick={() => choose(() => [])}>Choose none</Button>
            </>
          )}
          {told !== null && <Button onClick={() => setTold(null)}>Seen</Button>}
        </div>
      )}
    </section>
  );
}

/** Two beads can be laid side by side; how many are missing is said instead of a button that does nothing. */
function Compare({ chosen: [a, b, more] }: { chosen: Chosen }) {
  if (!a || !b || more) return null;
  return (
    <a
      className={buttonClass("main")}
      href={`/compare?${new URLSearchParams([a, b].map(({ id }) => ["pick", id])).toString()}`}
    >
      Compare {a.number} and {b.number}
    </a>
  );
}
