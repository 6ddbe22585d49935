"use client";

import { Dialog } from "radix-ui";
import { useState } from "react";
import { Button, Chip, Field } from "@/components/ui";
import type { Point } from "@/lib/geometry";
import { parseLength, unitsSentence, type UnitPreferences } from "@/lib/units";
import styles from "./scale-dialog.module.css";

export interface ScalePicks {
  readonly a: Point;
  readonly b: Point;
}

/** Flat things whose size is known. ISO/IEC 7810 fixes the card; the others are what the person reads on their rule. */
const known: readonly { readonly name: string; readonly text: string }[] = [
  { name: "Card, long side 85.60 mm", text: "85.60 mm" },
  { name: "Card, short side 53.98 mm", text: "53.98 mm" },
  { name: "50 mm of a rule", text: "50 mm" },
  { name: "100 mm of a rule", text: "100 mm" },
  { name: "2 in of a rule", text: "2 in" },
];

/** Asks how far apart the two picked points are. */
export function ScaleDialog({
  picks,
  units,
  onLength,
  onClose,
}: {
  picks: ScalePicks | null;
  units: UnitPreferences;
  onLength: (lengthMm: number) => void;
  onClose: () => void;
}) {
  const [text, setText] = useState("");
  const [error, setError] = useState<string | null>(null);

  function accept(typed: string) {
    const parsed = parseLength(typed, { default: units.length });
    if (!parsed.ok) return setError(parsed.issues[0] ? unitsSentence(parsed.issues[0]) : "Type a length.");
    setError(null);
    setText("");
    onLength(parsed.value);
  }

  return (
    <Dialog.Root
      open={picks !== null}
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
    >
      <Dialog.Portal>
        <Dialog.Overlay className={styles.veil} />
        <Dialog.Content className={styles.dialog} aria-describedby={undefined}>
          <Dialog.Title asChild>
            <h2>How far apart are the two points?</h2>
          </Dialog.Title>
          <form
            onSubmit={(event) => {
              event.preventDefault();
              accept(text);
            }}
          >
            <Field
              label={`Length (${units.length})`}
              hint="50, 2 in, 1 3/8 in: any unit you type is understood."
              error={error}
            >
              {(ids) => (
                <input
                  {...ids}
                  autoFocus
                  value={text}
                  autoComplete="off"
                  onChange={(event) => setText(event.target.value)}
                />
              )}
            </Field>
            <div className={styles.known}>
              {known.map((one) => (
                <Chip key={one.name} on={text === one.text} onClick={() => setText(one.text)}>
                  {one.name}
                </Chip>
              ))}
            </div>
            <p>
              The scale holds in the plane the rule lies in. Higher or lower, sizes are off; the error stated
              with them includes it.
            </p>
            <div className={styles.buttons}>
              <Button type="submit" tone="main" size="large">
                Set scale
              </Button>
              <Button size="large" onClick={onClose}>
                Pick again
              </Button>
            </div>
          </form>
        </Dialog.Content>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
