"use client";

import { useEffect, useState } from "react";
import { Button, Field } from "@/components/ui";
import styles from "./chosen-bar.module.css";

/** A weld of a job that beads can be filed under. */
export interface WeldChoice {
  readonly jobId: string;
  readonly weldId: string;
  readonly label: string;
}

/** Asks which weld of which job; the jobs are looked up when somebody wants one. */
export function WeldForm({
  choices,
  pending,
  onWeld,
  onClose,
}: {
  choices: () => Promise<readonly WeldChoice[]>;
  pending: boolean;
  onWeld: (jobId: string, weldId: string) => void;
  onClose: () => void;
}) {
  const [there, setThere] = useState<readonly WeldChoice[] | null>(null);
  const [at, setAt] = useState(0);
  useEffect(() => {
    let gone = false;
    void choices()
      .catch(() => [])
      .then((found) => gone || setThere(found));
    return () => {
      gone = true;
    };
  }, [choices]);
  const weld = there?.[at];
  return (
    <div className={styles.acts}>
      {there?.length === 0 && <p>No job with a weld is there yet.</p>}
      {weld && (
        <Field label="Weld of a job">
          {({ "aria-invalid": _never, ...ids }) => (
            <select {...ids} value={at} onChange={(event) => setAt(Number(event.target.value))}>
              {there.map(({ jobId, weldId, label }, i) => (
                <option key={`${jobId} ${weldId}`} value={i}>
                  {label}
                </option>
              ))}
            </select>
          )}
        </Field>
      )}
      {weld && (
        <Button tone="main" disabled={pending} onClick={() => onWeld(weld.jobId, weld.weldId)}>
          File them there
        </Button>
      )}
      <Button onClick={onClose}>Not now</Button>
    </div>
  );
}
