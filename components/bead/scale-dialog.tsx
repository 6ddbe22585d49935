"use client";

import { Dialog } from "radix-ui";
import { useState } from "react";
import type { ScalePickKind } from "@/components/canvas";
import { Button, Chip, DialogBox, Field } from "@/components/ui";
import type { PhotoPoint } from "@/lib/marks";
import { parseLength, unitsSentence, type UnitPreferences } from "@/lib/units";
import styles from "./scale-dialog.module.css";

export interface ScalePicks {
  readonly kind: ScalePickKind;
  readonly points: readonly PhotoPoint[];
}

/** Flat things whose size is known. ISO/IEC 7810 fixes the card; the others are what the person reads on their rule. */
const known: readonly { readonly name: string; readonly text: string }[] = [
  { name: "Card, long side 85.60 mm", text: "85.60 mm" },
  { name: "Card, short side 53.98 mm", text: "53.98 mm" },
  { name: "50 mm of a rule", text: "50 mm" },
  { name: "100 mm of a rule", text: "100 mm" },
  { name: "2 in of a rule", text: "2 in" },
];

type Asked = { readonly title: string; readonly labels: readonly string[] };

/** The sizes to ask for. A card's are known, so it never comes here. */
const asked: Readonly<Record<ScalePickKind, Asked>> = {
  "two-points": { title: "How far apart are the two points?", labels: ["Length"] },
  disc: { title: "How wide is the disc?", labels: ["Diameter"] },
  rectangle: {
    title: "How long are the sides?",
    labels: ["From the first corner to the second", "From the second corner to the third"],
  },
  edges: { title: "", labels: [] },
};

/** Asks for the size of the scale object that was picked. */
export function ScaleDialog({
  picks,
  units,
  onSizes,
  onClose,
}: {
  picks: ScalePicks | null;
  units: UnitPreferences;
  onSizes: (sizesMm: readonly number[]) => void;
  onClose: () => void;
}) {
  return (
    <DialogBox open={picks !== null} onOpen={(open) => !open && onClose()}>
      {picks && <SizeForm kind={picks.kind} units={units} onSizes={onSizes} onClose={onClose} />}
    </DialogBox>
  );
}

function SizeForm({
  kind,
  units,
  onSizes,
  onClose,
}: {
  kind: ScalePickKind;
  units: UnitPreferences;
  onSizes: (sizesMm: readonly number[]) => void;
  onClose: () => void;
}) {
  const { title, labels } = asked[kind];
  const [texts, setTexts] = useState<readonly string[]>(labels.map(() => ""));
  const [errors, setErrors] = useState<readonly (string | null)[]>([]);

  const accept = () => {
    const parsed = texts.map((text) => parseLength(text, { default: units.length }));
    setErrors(parsed.map(errorOf));
    const sizes = parsed.flatMap((one) => (one.ok ? [one.value] : []));
    if (sizes.length === labels.length) onSizes(sizes);
  };

  return (
    <>
      <Dialog.Title asChild>
        <h2>{title}</h2>
      </Dialog.Title>
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault();
          accept();
        }}
      >
        {labels.map((label, i) => (
          <Field
            key={label}
            label={`${label} (${units.length})`}
            hint="50, 2 in, 1 3/8 in: any unit you type is understood."
            error={errors[i]}
          >
            {(ids) => (
              <input
                {...ids}
                autoFocus={i === 0}
                value={texts[i] ?? ""}
                autoComplete="off"
                onChange={(event) => setTexts(texts.with(i, event.target.value))}
              />
            )}
          </Field>
        ))}
        {kind === "two-points" && <KnownLengths text={texts[0]} onText={(text) => setTexts([text])} />}
        <p>
          The scale holds in the plane the object lies in. Higher or lower, sizes are off; the error stated
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
    </>
  );
}

const errorOf = (read: ReturnType<typeof parseLength>): string | null => {
  if (read.ok) return null;
  return read.issues[0] ? unitsSentence(read.issues[0]) : "Type a length.";
};

/** Lengths of things that lie about, one tap each. */
function KnownLengths({ text, onText }: { text: string | undefined; onText: (text: string) => void }) {
  return (
    <div className={styles.known}>
      {known.map((one) => (
        <Chip key={one.name} on={text === one.text} onClick={() => onText(one.text)}>
          {one.name}
        </Chip>
      ))}
    </div>
  );
}
