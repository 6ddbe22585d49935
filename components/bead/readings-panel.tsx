"use client";

import { Trash2 } from "lucide-react";
import { useState } from "react";
import { Button, Choice, Field, Panel } from "@/components/ui";
import { gaugeLabel, useGauges, type Gauge } from "@/components/canvas/gauges";
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

/** Reads degrees, so only a bead's reading is taken with it. */
const protractor: Gauge = { name: "protractor", resolution: 1, doubt: null };

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
  const gauges = [...useGauges(), protractor];
  const [chosen, setGauge] = useState<Gauge | null>(null);
  // Nobody reads an angle with a calliper: until somebody chooses, an angle goes with the protractor.
  const gauge = chosen ?? (quantity === "toe-angle" ? protractor : gauges[0]!);
  const [text, setText] = useState("");
  const [error, setError] = useState<string | null>(null);

  function add() {
    const parsed =
      quantity === "toe-angle"
        ? parseAngle(text)
        : parseLength(text, { default: units.length, allowZero: true });
    if (!parsed.ok) return setError(parsed.issues[0] ? unitsSentence(parsed.issues[0]) : "Type a number.");
    onAdd({ quantity, value: parsed.value, instrument: gauge.name, resolution: gauge.resolution });
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
            value={gauge.name}
            options={gauges.map(({ name }) => name)}
            nameOf={(name) => gaugeLabel(gauges.find((one) => one.name === name)!)}
            onChoose={(name) => setGauge(gauges.find((one) => one.name === name)!)}
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
