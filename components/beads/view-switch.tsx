"use client";

import { useTransition } from "react";
import styles from "./choose.module.css";
import { listViews, type ListView } from "./list-views";

const words = { cards: "Cards", table: "Table" } as const;

export function ViewSwitch({
  choice,
  onChoose,
}: {
  choice: ListView;
  onChoose: (choice: ListView) => Promise<void>;
}) {
  const [pending, start] = useTransition();
  return (
    <div className={styles.views} role="group" aria-label="How the list lies">
      {listViews.map((one) => (
        <button
          key={one}
          type="button"
          aria-pressed={one === choice}
          disabled={pending}
          onClick={() => start(() => onChoose(one))}
        >
          {words[one]}
        </button>
      ))}
    </div>
  );
}
