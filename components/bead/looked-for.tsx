"use client";

import { imperfections, type ImperfectionId } from "@/lib/trade";
import { Button, Chip, Panel } from "@/components/ui";
import styles from "./verdict-panel.module.css";

/** Nothing is accepted because nobody looked: what the criteria name is either marked or ticked here as looked for. */
export function LookedFor({
  needed,
  lookedFor,
  where = "on the whole weld",
  onChange,
}: {
  needed: readonly ImperfectionId[];
  lookedFor: readonly ImperfectionId[];
  where?: string;
  onChange: (lookedFor: ImperfectionId[]) => void;
}) {
  const all = [...new Set([...lookedFor, ...needed])];
  if (all.length === 0) return null;
  const toggle = (id: ImperfectionId) =>
    onChange(lookedFor.includes(id) ? lookedFor.filter((one) => one !== id) : [...lookedFor, id]);
  return (
    <Panel tone="purple" title="Looked for and not found">
      <p>Tick what you have looked for {where}. What is not ticked stays open.</p>
      <div className={styles.chips}>
        {all.map((id) => (
          <Chip key={id} on={lookedFor.includes(id)} onClick={() => toggle(id)}>
            {lookedFor.includes(id) ? "✓ " : ""}
            {imperfections[id].name}
          </Chip>
        ))}
      </div>
      {needed.length > 1 && (
        <Button onClick={() => onChange([...new Set([...lookedFor, ...needed])])}>
          I looked for all {needed.length} of these and found none
        </Button>
      )}
    </Panel>
  );
}
