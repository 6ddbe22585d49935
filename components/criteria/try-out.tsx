"use client";

import { useState, useTransition } from "react";
import { Button, Field, Panel } from "@/components/ui";
import type { ShopDraft } from "./shop-draft";
import styles from "./criteria.module.css";

export interface TriedBead {
  readonly id: string;
  readonly title: string;
}

/** What the limits as they stand say of one bead: the word, then a line for each of them. */
export interface TriedVerdict {
  readonly word: string;
  readonly lines: readonly string[];
}
export type TryOn = (draft: ShopDraft, beadId: string) => Promise<TriedVerdict | null>;

const unreachable: TriedVerdict = { word: "Toeline did not answer. Try again in a moment.", lines: [] };
const refused: TriedVerdict = { word: "This bead could not be judged: reload the page.", lines: [] };

/** Judges a bead of the shop by limits that are not saved yet. Changes nothing. */
export function TryOut({
  draft,
  beads,
  isSound,
  tryOn,
}: {
  readonly draft: ShopDraft;
  readonly beads: readonly TriedBead[];
  /** The draft could be saved as it stands. */
  readonly isSound: boolean;
  readonly tryOn: TryOn;
}) {
  const [beadId, setBeadId] = useState(beads[0]?.id ?? "");
  const [tried, setTried] = useState<{ readonly draft: ShopDraft; readonly verdict: TriedVerdict } | null>(
    null,
  );
  const [pending, run] = useTransition();
  if (beads.length === 0) return null;
  return (
    <Panel title="Try it on a bead" tone="purple">
      <p className={styles.soft}>Judges a bead by the limits as they stand here. Nothing is saved.</p>
      <Field label="Bead">
        {(ids) => (
          <select {...ids} value={beadId} onChange={({ target }) => setBeadId(target.value)}>
            {beads.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        )}
      </Field>
      <div className={styles.tools}>
        <Button
          disabled={pending || !isSound}
          onClick={() =>
            run(async () => {
              const verdict = await tryOn(draft, beadId).catch(() => unreachable);
              setTried({ draft, verdict: verdict ?? refused });
            })
          }
        >
          {pending ? "Judging …" : "Judge it"}
        </Button>
      </div>
      {!isSound && <p className={styles.soft}>First let every limit above be complete.</p>}
      <div role="status" data-testid="tried">
        {tried && (
          <>
            <p>
              <strong>{tried.verdict.word}</strong>
              {tried.draft !== draft && " The limits were changed since."}
            </p>
            <ul>
              {tried.verdict.lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </>
        )}
      </div>
    </Panel>
  );
}
