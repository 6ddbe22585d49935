import { Plus, Trash2 } from "lucide-react";
import { useState } from "react";
import { Button, Field } from "@/components/ui";
import { gaugeQuantities, type GaugeQuantity, type GaugeReading } from "@/lib/marks";
import {
  formatLength,
  lengthSystem,
  metric,
  parseLength,
  unitsSentence,
  type UnitPreferences,
} from "@/lib/units";
import { instruments } from "./instruments";
import styles from "./mark-card.module.css";

const quantityNames: Readonly<Record<GaugeQuantity, string>> = {
  depth: "Depth",
  height: "Height",
  diameter: "Diameter",
  length: "Length",
};

/** The schema's own ceiling for a reading, mm. */
const LARGEST_MM = 1000;

interface Typed {
  readonly quantity: GaugeQuantity;
  readonly value: string;
  readonly instrument: number;
}
const blank: Typed = { quantity: "depth", value: "", instrument: 0 };

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
  const [typed, setTyped] = useState<Typed | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  const add = () => {
    const instrument = instruments[typed?.instrument ?? 0];
    if (!typed || !instrument) return;
    const parsed = parseLength(typed.value, { default: units.length, max: LARGEST_MM, allowZero: true });
    if (!parsed.ok) return setProblem(parsed.issues.map(unitsSentence).join(" "));
    const { name, resolutionMm } = instrument;
    onReadings([
      ...readings,
      { quantity: typed.quantity, valueMm: parsed.value, instrument: name, resolutionMm },
    ]);
    setTyped(null);
    setProblem(null);
  };

  return (
    <div className={styles.choice}>
      <p className={styles.label}>
        Gauge readings <span className={styles.hint}>They outrank the photo.</span>
      </p>
      {readings.length > 0 && (
        <ul className={styles.readings}>
          {readings.map((reading, i) => (
            <li key={`${reading.quantity}-${i}`}>
              <span>
                {quantityNames[reading.quantity]}{" "}
                <strong>{formatLength(reading.valueMm, { system: lengthSystem(units.length) })}</strong>{" "}
                <span className={styles.hint}>{reading.instrument}</span>
              </span>
              {!readOnly && (
                <button
                  type="button"
                  className={styles.bin}
                  aria-label={`Remove the ${quantityNames[reading.quantity].toLowerCase()} reading`}
                  onClick={() => onReadings(readings.filter((_, other) => other !== i))}
                >
                  <Trash2 aria-hidden="true" />
                </button>
              )}
            </li>
          ))}
        </ul>
      )}
      {typed === null
        ? !readOnly &&
          readings.length < 10 && (
            <Button onClick={() => setTyped(blank)}>
              <Plus aria-hidden="true" size={20} /> Add a reading
            </Button>
          )
        : typedForm(typed, setTyped, units, problem, add, () => {
            setTyped(null);
            setProblem(null);
          })}
    </div>
  );
}

function typedForm(
  typed: Typed,
  setTyped: (typed: Typed) => void,
  units: UnitPreferences,
  problem: string | null,
  add: () => void,
  drop: () => void,
) {
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
          <select
            {...ids}
            value={typed.quantity}
            onChange={(event) => {
              const quantity = gaugeQuantities.find((q) => q === event.target.value);
              if (quantity) setTyped({ ...typed, quantity });
            }}
          >
            {gaugeQuantities.map((quantity) => (
              <option key={quantity} value={quantity}>
                {quantityNames[quantity]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field label={`Reading (${units.length})`} error={problem ?? undefined}>
        {(ids) => (
          <input
            {...ids}
            inputMode="decimal"
            autoComplete="off"
            value={typed.value}
            onChange={(event) => setTyped({ ...typed, value: event.target.value })}
          />
        )}
      </Field>
      <Field label="With">
        {(ids) => (
          <select
            {...ids}
            value={typed.instrument}
            onChange={(event) => setTyped({ ...typed, instrument: Number(event.target.value) })}
          >
            {instruments.map(({ name }, i) => (
              <option key={name} value={i}>
                {name}
              </option>
            ))}
          </select>
        )}
      </Field>
      <div className={styles.chips}>
        <Button type="submit" tone="main">
          Add
        </Button>
        <Button onClick={drop}>Cancel</Button>
      </div>
    </form>
  );
}
