"use client";

import { looks, type Look } from "@/lib/report";
import type { ImperfectionId } from "@/lib/trade";
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
  const isTicked = ({ ids }: Look) => ids.every((id) => lookedFor.includes(id));
  const toggle = (look: Look) => {
    const others = lookedFor.filter((id) => !look.ids.includes(id));
    onChange(isTicked(look) ? others : [...others, ...look.ids]);
  };
  return (
    <Panel tone="purple" title="Looked for and not found">
      <p>Tick what you have looked for {where}. What is not ticked stays open.</p>
      <div className={styles.chips}>
        {looks(all).map((look) => (
          <Chip key={look.name} on={isTicked(look)} onClick={() => toggle(look)}>
            {isTicked(look) ? "✓ " : ""}
            {look.name}
          </Chip>
        ))}
      </div>
      {needed.length > 1 && (
        <Button onClick={() => onChange([...new Set([...lookedFor, ...needed])])}>
          I looked for all {looks(needed).length} of these and found none
        </Button>
      )}
    </Panel>
  );
}
