"use client";

import { Trash2 } from "lucide-react";
import { useState } from "react";
import { parseReading } from "@/components/setup";
import { Button, Choice, Field, Panel } from "@/components/ui";
import { gaugeLabel, useGauges, type Gauge } from "@/components/canvas";
import type { BeadReading } from "@/lib/assess";
import { carriedBy, carriedText } from "@/lib/gauge";
import { beadQuantities, beadQuantityRows, type BeadQuantity } from "@/lib/measure";
import { lengthText } from "@/lib/report";
import { unitsSentence, type UnitPreferences } from "@/lib/units";
import styles from "./readings-panel.module.css";

const nameOf = (quantity: BeadQuantity): string => beadQuantityRows[quantity].label;
const isAngle = (quantity: BeadQuantity): boolean => beadQuantityRows[quantity].unit === "deg";

/** Reads degrees, so only a bead's reading is taken with it. */
const protractor: Gauge = { name: "protractor", resolution: 1, doubt: null, study: null };

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
                {nameOf(reading.quantity)}{" "}
                <strong>
                  {isAngle(reading.quantity) ? degrees(reading.value) : lengthText(reading.value, units)}
                </strong>{" "}
                ({reading.instrument}
                {carriedText(reading.study ?? null, isAngle(reading.quantity) ? "deg" : units.length)})
              </span>
              <Button
                aria-label={`Remove ${nameOf(reading.quantity)}`}
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

/** A reading as it is being typed. */
function useTypedReading(units: UnitPreferences, onAdd: (reading: BeadReading) => void) {
  const [quantity, setQuantity] = useState<BeadQuantity>("leg-1");
  const gauges = [...useGauges(), protractor];
  const [chosen, setGauge] = useState<Gauge | null>(null);
  // Nobody reads an angle with a calliper: until somebody chooses, an angle goes with the protractor.
  const gauge = chosen ?? (isAngle(quantity) ? protractor : gauges[0]!);
  const [text, setText] = useState("");
  const [error, setError] = useState<string | null>(null);
  const add = () => {
    const parsed = parseReading(quantity, text, units);
    if (!parsed.ok) return setError(parsed.issues[0] ? unitsSentence(parsed.issues[0]) : "Type a number.");
    const { name: instrument, resolution, study } = gauge;
    const carried = carriedBy(study, isAngle(quantity) ? "deg" : "mm");
    onAdd({ quantity, value: parsed.value, instrument, resolution, ...carried });
    setText("");
    setError(null);
  };
  return { quantity, setQuantity, gauges, gauge, setGauge, text, setText, error, add };
}

function NewReading({ units, onAdd }: { units: UnitPreferences; onAdd: (reading: BeadReading) => void }) {
  const { quantity, gauges, gauge, ...typed } = useTypedReading(units, onAdd);
  const gaugeOf = (name: string) => gauges.find((one) => one.name === name)!;
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        typed.add();
      }}
    >
      <Field label="What">
        {(ids) => (
          <Choice
            {...ids}
            value={quantity}
            options={beadQuantities}
            nameOf={nameOf}
            onChoose={typed.setQuantity}
          />
        )}
      </Field>
      <Field label="Read with">
        {(ids) => (
          <Choice
            {...ids}
            value={gauge.name}
            options={gauges.map(({ name }) => name)}
            nameOf={(name) => gaugeLabel(gaugeOf(name))}
            onChoose={(name) => typed.setGauge(gaugeOf(name))}
          />
        )}
      </Field>
      <Field label={isAngle(quantity) ? "Degrees" : `Reading (${units.length})`} error={typed.error}>
        {(ids) => (
          <input
            {...ids}
            value={typed.text}
            inputMode="text"
            autoComplete="off"
            onChange={(event) => typed.setText(event.target.value)}
          />
        )}
      </Field>
      <Button type="submit" tone="main">
        Add reading
      </Button>
    </form>
  );
}
