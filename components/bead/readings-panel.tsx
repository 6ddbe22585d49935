"use client";

import { Trash2 } from "lucide-react";
import { useState } from "react";
import { Button, Choice, Field, Panel } from "@/components/ui";
import { beadQuantities, type BeadQuantity, type BeadReading } from "@/lib/assess";
import { lengthText } from "@/lib/report";
import { parseAngle, parseLength, unitsSentence, type UnitPreferences } from "@/lib/units";
import styles from "./readings-panel.module.css";

const names: Readonly<Record<BeadQuantity, string>> = {
  "leg-1": "Leg on the first plate",
  "leg-2": "Leg on the second plate",
  throat: "Throat",
  convexity: "Convexity",
  reinforcement: "Reinforcement height",
  width: "Width of the face",
  "toe-angle": "Toe angle",
  misalignment: "Misalignment",
  "root-gap": "Root gap",
  "weld-length": "Length of the weld",
};

/** Gauges with the step they can usually be read to, in mm (ISO 17637 Annex A lists kinds; steps from memory). */
const instruments: readonly { readonly name: string; readonly resolution: number }[] = [
  { name: "Fillet gauge", resolution: 0.5 },
  { name: "Weld gauge with vernier", resolution: 0.1 },
  { name: "Calliper", resolution: 0.05 },
  { name: "Steel rule", resolution: 0.5 },
  { name: "Protractor", resolution: 1 },
];

const instrumentNames = instruments.map(({ name }) => name);

const degrees = (value: number) => `${value}°`;

/** What was read on the weld itself. It outranks the photo. */
export function ReadingsPanel({
  readings,
  units,
  onChange,
}: {
  readings: readonly BeadReading[];
  units: UnitPreferences;
  onChange: (readings: BeadReading[]) => void;
}) {
  return (
    <Panel title="Gauge readings" tone="blue">
      {readings.length > 0 && (
        <ul className={styles.list}>
          {readings.map((reading, index) => (
            <li key={`${reading.quantity} ${index}`}>
              <span>
                {names[reading.quantity]}{" "}
                <strong>
                  {reading.quantity === "toe-angle"
                    ? degrees(reading.value)
                    : lengthText(reading.value, units)}
                </strong>{" "}
                ({reading.instrument})
              </span>
              <Button
                aria-label={`Remove ${names[reading.quantity]}`}
                onClick={() => onChange(readings.filter((_, other) => other !== index))}
              >
                <Trash2 size={20} aria-hidden="true" />
              </Button>
            </li>
          ))}
        </ul>
      )}
      <NewReading units={units} onAdd={(reading) => onChange([...readings, reading])} />
    </Panel>
  );
}

function NewReading({ units, onAdd }: { units: UnitPreferences; onAdd: (reading: BeadReading) => void }) {
  const [quantity, setQuantity] = useState<BeadQuantity>("leg-1");
  const [instrument, setInstrument] = useState(instrumentNames[0]!);
  const [text, setText] = useState("");
  const [error, setError] = useState<string | null>(null);

  function add() {
    const parsed =
      quantity === "toe-angle"
        ? parseAngle(text)
        : parseLength(text, { default: units.length, allowZero: true });
    if (!parsed.ok) return setError(parsed.issues[0] ? unitsSentence(parsed.issues[0]) : "Type a number.");
    const resolution = instruments.find(({ name }) => name === instrument)?.resolution ?? 0.5;
    onAdd({ quantity, value: parsed.value, instrument, resolution });
    setText("");
    setError(null);
  }

  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <Field label="What">
        {(ids) => (
          <Choice
            {...ids}
            value={quantity}
            options={beadQuantities}
            nameOf={(one) => names[one]}
            onChoose={setQuantity}
          />
        )}
      </Field>
      <Field label="Read with">
        {(ids) => (
          <Choice
            {...ids}
            value={instrument}
            options={instrumentNames}
            nameOf={(name) => name}
            onChoose={setInstrument}
          />
        )}
      </Field>
      <Field label={quantity === "toe-angle" ? "Degrees" : `Reading (${units.length})`} error={error}>
        {(ids) => (
          <input
            {...ids}
            value={text}
            inputMode="text"
            autoComplete="off"
            onChange={(event) => setText(event.target.value)}
          />
        )}
      </Field>
      <Button type="submit" tone="main">
        Add reading
      </Button>
    </form>
  );
}
