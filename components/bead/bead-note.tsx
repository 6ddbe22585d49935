"use client";

import { useState } from "react";
import { DictateButton, page } from "@/components/ui";
import type { BenchProps } from "./shared";
import styles from "./bead-note.module.css";

/** What its welder says of the bead in their own words; it stands on the sheet and is found by its words. */
export function BeadNote({ state, dispatch }: Pick<BenchProps, "state" | "dispatch">) {
  const { note } = state.judgement;
  const [startsOpen] = useState(note !== "");
  const change = (text: string) => dispatch({ type: "judgement", change: { note: text.slice(0, MOST) } });
  return (
    <details className={page.details} open={startsOpen}>
      <summary>Note</summary>
      <div className={styles.note}>
        <label htmlFor="bead-note">
          In your own words: what you heard, felt or changed. It is printed on the sheet.
        </label>
        <textarea
          id="bead-note"
          rows={3}
          maxLength={MOST}
          value={note}
          onChange={(event) => change(event.target.value)}
        />
        <DictateButton onText={(said) => change([note, said].filter(Boolean).join(" "))} />
      </div>
    </details>
  );
}

/** As many letters as the record takes. */
const MOST = 4000;
