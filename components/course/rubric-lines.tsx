"use client";

import { Plus, Trash2 } from "lucide-react";
import { Button } from "@/components/ui";
import type { RubricLine } from "@/lib/course";
import styles from "./rubric.module.css";

/** The lines of a rubric and how much each counts. */
export function RubricLines({
  lines,
  onChange,
}: {
  lines: readonly RubricLine[];
  onChange: (lines: readonly RubricLine[]) => void;
}) {
  const change = (id: string, part: Partial<RubricLine>) =>
    onChange(lines.map((line) => (line.id === id ? { ...line, ...part } : line)));
  const whole = lines.reduce((sum, { weight }) => sum + weight, 0);
  return (
    <div className={styles.lines}>
      {lines.map((line, i) => (
        <div key={line.id} className={styles.edit}>
          <input
            aria-label={`Line ${i + 1}`}
            value={line.title}
            maxLength={120}
            onChange={(event) => change(line.id, { title: event.target.value })}
          />
          <label className={styles.weight}>
            <span>Weight</span>
            <input
              type="number"
              min={1}
              max={20}
              step={1}
              value={line.weight}
              onChange={({ target }) =>
                change(line.id, { weight: Math.min(20, Math.max(1, Math.round(Number(target.value)) || 1)) })
              }
            />
          </label>
          <Button
            aria-label={`Delete line ${i + 1}`}
            onClick={() => onChange(lines.filter(({ id }) => id !== line.id))}
          >
            <Trash2 aria-hidden="true" />
          </Button>
        </div>
      ))}
      <div className={styles.edit}>
        <Button
          disabled={lines.length >= 20}
          onClick={() =>
            onChange([
              ...lines,
              { id: `line-${Date.now().toString(36)}`, title: `Line ${lines.length + 1}`, weight: 1 },
            ])
          }
        >
          <Plus aria-hidden="true" /> Add a line
        </Button>
        <span>
          {lines.length} lines, weights add up to {whole}
        </span>
      </div>
    </div>
  );
}
