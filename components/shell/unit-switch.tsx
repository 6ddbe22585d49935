"use client";

import { useTransition } from "react";
import styles from "./unit-switch.module.css";

/** Metric or inch, for everything on every screen. */
export function UnitSwitch({
  choice,
  onChoose,
}: {
  choice: "metric" | "inch";
  onChoose: (choice: "metric" | "inch") => Promise<void>;
}) {
  const [pending, start] = useTransition();
  return (
    <div className={styles.switch} role="group" aria-label="Units">
      {(["metric", "inch"] as const).map((one) => (
        <button
          key={one}
          type="button"
          aria-pressed={one === choice}
          disabled={pending}
          onClick={() => start(() => onChoose(one))}
        >
          {one === "metric" ? "mm" : "inch"}
        </button>
      ))}
    </div>
  );
}
