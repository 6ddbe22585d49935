"use client";

import type { BenchProps } from "./shared";
import styles from "./bead-names.module.css";

/** Number, title and who ran it, edited in place. */
export function BeadNames({
  state,
  dispatch,
  number,
}: Pick<BenchProps, "state" | "dispatch"> & { number: number | null }) {
  return (
    <div className={styles.names}>
      <span className={styles.number}>{number ?? "New"}</span>
      <label className={styles.title}>
        <span className="visually-hidden">Title</span>
        <input
          value={state.title}
          maxLength={120}
          onChange={(event) => dispatch({ type: "name", title: event.target.value })}
        />
      </label>
      <label className={styles.welder}>
        <span>Run by</span>
        <input
          value={state.welder ?? ""}
          maxLength={80}
          placeholder="name or initials"
          onChange={(event) => dispatch({ type: "name", welder: event.target.value || null })}
        />
      </label>
    </div>
  );
}
