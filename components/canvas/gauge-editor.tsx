"use client";

import { Plus, Trash2 } from "lucide-react";
import { useState } from "react";
import { Button, Choice, Field } from "@/components/ui";
import { carriedBy, carriedText } from "@/lib/gauge";
import { gaugeQuantities, type GaugeQuantity, type GaugeReading } from "@/lib/marks";
import {
  formatLength,
  lengthSystem,
  metric,
  parseLength,
  unitsSentence,
  type UnitPreferences,
} from "@/lib/units";
import { gaugeLabel, useGauges } from "./gauges";
import styles from "./mark-card.module.css";

const quantityNames: Readonly<Record<GaugeQuantity, string>> = {
  depth: "Depth",
  height: "Height",
  diameter: "Diameter",
  length: "Length",
};

/** The schema's own ceiling for a reading, mm. */
const LARGEST_MM = 1000;

/** As many as a mark may hold. */
const MOST_READINGS = 10;

/** Readings taken with an instrument: they outrank the photo, so each says with what it was taken. */
export function GaugeEditor({
  readings,
  onReadings,
  units = metric,
  readOnly,
}: {
  readings: readonly GaugeReading[];
  onReadings: (readings: GaugeReading[]) => void;
  units: UnitPreferences | undefined;
  readOnly: boolean;
}) {
  const [isAdding, setAdding] = useState(false);
  const offers = !readOnly && !isAdding && readings.length < MOST_READINGS;
  return (
    <div className={styles.choice}>
      <p className={styles.label}>
        Gauge readings <span className={styles.hint}>They outrank the photo.</span>
      </p>
      {readings.length > 0 && (
        <ul className={styles.readings}>
          {readings.map((reading, i) => (
            <ReadingRow
              key={`${reading.quantity}-${i}`}
              reading={reading}
              units={units}
              onRemove={readOnly ? null : () => onReadings(readings.filter((_, other) => other !== i))}
            />
          ))}
        </ul>
      )}
      {offers && (
        <Button onClick={() => setAdding(true)}>
          <Plus aria-hidden="true" size={20} /> Add a reading
        </Button>
      )}
      {isAdding && (
        <ReadingForm
          units={units}
          onAdd={(reading) => {
            onReadings([...readings, reading]);
            setAdding(false);
          }}
          onCancel={() => setAdding(false)}
        />
      )}
    </div>
  );
}

function ReadingRow({
  reading: { quantity, valueMm, instrument, study },
  units,
  onRemove,
}: {
  reading: GaugeReading;
  units: UnitPreferences;
  onRemove: (() => void) | null;
}) {
  const name = quantityNames[quantity];
  return (
    <li>
      <span>
        {name} <strong>{formatLength(valueMm, { system: lengthSystem(units.length) })}</strong>{" "}
        <span className={styles.hint}>
          {instrument}
          {carriedText(study ?? null, units.length)}
        </span>
      </span>
      {onRemove && (
        <button
          type="button"
          className={styles.bin}
          aria-label={`Remove the ${name.toLowerCase()} reading`}
          onClick={onRemove}
        >
          <Trash2 aria-hidden="true" />
        </button>
      )}
    </li>
  );
}

/** One reading as it is typed; what cannot be read stays in its field with the reason under it. */
function ReadingForm({
  units,
  onAdd,
  onCancel,
}: {
  units: UnitPreferences;
  onAdd: (reading: GaugeReading) => void;
  onCancel: () => void;
}) {
  const [quantity, setQuantity] = useState<GaugeQuantity>("depth");
  const [value, setValue] = useState("");
  const gauges = useGauges();
  const [gauge, setGauge] = useState(gauges[0]!);
  const [problem, setProblem] = useState<string | null>(null);
  const add = () => {
    const parsed = parseLength(value, { default: units.length, max: LARGEST_MM, allowZero: true });
    if (!parsed.ok) return setProblem(parsed.issues.map(unitsSentence).join(" "));
    const { name: instrument, resolution: resolutionMm, study } = gauge;
    onAdd({ quantity, valueMm: parsed.value, instrument, resolutionMm, ...carriedBy(study, "mm") });
  };
  return (
    <form
      className={styles.gaugeForm}
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <Field label="What was read">
        {(ids) => (
          <Choice
            {...ids}
            value={quantity}
            options={gaugeQuantities}
            nameOf={(one) => quantityNames[one]}
            onChoose={setQuantity}
          />
        )}
      </Field>
      <Field label={`Reading (${units.length})`} error={problem ?? undefined}>
        {(ids) => (
          <input
            {...ids}
            inputMode="decimal"
            autoComplete="off"
            value={value}
            onChange={(event) => setValue(event.target.value)}
          />
        )}
      </Field>
      <Field label="With">
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
      <div className={styles.chips}>
        <Button type="submit" tone="main">
          Add
        </Button>
        <Button onClick={onCancel}>Cancel</Button>
      </div>
    </form>
  );
}
