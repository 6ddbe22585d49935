"use client";

import { useState } from "react";
import { parseReading, useTyped } from "@/components/setup";
import { SaveBar, useEdited, type Editing } from "@/components/saving";
import { Choice, Field, Panel } from "@/components/ui";
import type { BeadReading } from "@/lib/assess";
import { carriedBy, carriedText, type ReadingStudy } from "@/lib/gauge";
import { instrumentNames, quantitiesAtBench, readingOf, withReading } from "@/lib/inspect";
import { beadQuantityRows, type BeadQuantity } from "@/lib/measure";
import type { Joint } from "@/lib/trade";
import { fieldText, metric, type UnitPreferences } from "@/lib/units";
import styles from "./weld-bench.module.css";

/** What a reading can be taken with here: name with serial number, its smallest step, and what it is for. */
export interface BenchGauge {
  readonly name: string;
  readonly resolution: number;
  readonly kind: string;
  readonly doubt: string | null;
  readonly study: ReadingStudy | null;
}

interface Content {
  readonly readings: readonly BeadReading[];
}

/** Readings under the hand: what each is taken with, and what becomes of a number that was typed. */
function useReadings(editing: Editing<Content>, joint: Joint | null, ticked: readonly BenchGauge[]) {
  const edited = useEdited(editing, "auto");
  const { readings } = edited.content;
  const quantities = quantitiesAtBench(joint);
  const gauges = offeredGauges(ticked, quantities);
  const [chosen, setChosen] = useState<Readonly<Record<string, string>>>({});
  const gaugeOf = (quantity: BeadQuantity): BenchGauge | null => {
    const name = chosen[beadQuantityRows[quantity].gauge] ?? readingOf(readings, quantity)?.instrument;
    return gauges.find((one) => one.name === name) ?? usualGauge(gauges, quantity);
  };
  const put = (quantity: BeadQuantity, value: number | null) => {
    const gauge = gaugeOf(quantity);
    if (!gauge) return;
    const { name: instrument, resolution, study } = gauge;
    const carried = carriedBy(study, beadQuantityRows[quantity].unit);
    const reading = value === null ? null : { quantity, value, instrument, resolution, ...carried };
    edited.change({ readings: withReading(readings, quantity, reading) });
  };
  const choose = (kind: string, name: string) => {
    setChosen({ ...chosen, [kind]: name });
    const gauge = gauges.find((one) => one.name === name);
    if (gauge) edited.change({ readings: readWith(readings, quantities, kind, gauge) });
  };
  return { edited, readings, quantities, offered: gauges, gaugeOf, put, choose };
}

/**
 * The readings of one bead, one field each in the order of the bench; Tab goes from reading to reading, the gauges come
 * after them. Saved shortly after each change.
 */
export function WeldReadings({
  joint,
  gauges,
  units,
  ...editing
}: Editing<Content> & {
  readonly joint: Joint | null;
  readonly gauges: readonly BenchGauge[];
  readonly units: UnitPreferences;
}) {
  const { edited, readings, quantities, offered, gaugeOf, put, choose } = useReadings(editing, joint, gauges);
  return (
    <Panel title="Readings" tone="blue">
      <form
        aria-label="Readings"
        onSubmit={(event) => {
          event.preventDefault();
          edited.submit();
        }}
      >
        <div className={styles.readings}>
          {quantities.map((quantity) => (
            <ReadingField
              key={quantity}
              quantity={quantity}
              value={readingOf(readings, quantity)?.value ?? null}
              gauge={gaugeOf(quantity)}
              taken={takenText(readingOf(readings, quantity), units)}
              units={units}
              onChange={(value) => put(quantity, value)}
            />
          ))}
        </div>
        {gauges.length === 0 && (
          <p>No gauge is ticked on the inspection, so these readings leave the weld open.</p>
        )}
        <details className={styles.gauges}>
          <summary>Read with</summary>
          {[...new Set(quantities.map((quantity) => beadQuantityRows[quantity].gauge))].map((kind) => (
            <Field key={kind} label={kind.replaceAll("-", " ")}>
              {(ids) => (
                <Choice
                  {...ids}
                  value={gaugeOf(quantities.find((one) => beadQuantityRows[one].gauge === kind)!)?.name ?? ""}
                  options={offered.map(({ name }) => name)}
                  nameOf={(name) => labelOf(offered, name)}
                  onChoose={(name) => choose(kind, name)}
                />
              )}
            </Field>
          ))}
        </details>
        <SaveBar edited={edited}>Save the readings</SaveBar>
      </form>
    </Panel>
  );
}

const labelOf = (gauges: readonly BenchGauge[], name: string): string => {
  const doubt = gauges.find((one) => one.name === name)?.doubt;
  return doubt ? `${name} (${doubt})` : name;
};

/**
 * What can be chosen: the gauges that are ticked, and for a kind of which none is, the kind by its plain name. A reading
 * with that leaves the weld open, because nothing is known of its calibration; one under another gauge's name would lie.
 */
function offeredGauges(
  gauges: readonly BenchGauge[],
  quantities: readonly BeadQuantity[],
): readonly BenchGauge[] {
  const wanted = new Set(quantities.map((quantity) => beadQuantityRows[quantity].gauge));
  const plain = [...wanted]
    .filter((kind) => !gauges.some((one) => one.kind === kind))
    // Steps of common gauges (common practice, no source): half a millimetre, a degree.
    .map((kind) => ({
      ...{ name: instrumentNames[kind], kind, doubt: "not ticked here", study: null },
      resolution: kind === "protractor" ? 1 : 0.5,
    }));
  return [...gauges, ...plain];
}

/** What a stored reading was taken with, and what it carries of a study of it. */
function takenText(reading: BeadReading | undefined, units: UnitPreferences): string | undefined {
  if (!reading) return undefined;
  const { unit } = beadQuantityRows[reading.quantity];
  return reading.instrument + carriedText(reading.study ?? null, unit === "deg" ? "deg" : units.length);
}

/** The first gauge of the kind that gives this reading. */
const usualGauge = (gauges: readonly BenchGauge[], quantity: BeadQuantity): BenchGauge | null =>
  gauges.find(({ kind }) => kind === beadQuantityRows[quantity].gauge) ?? null;

/** What was read with one sort of gauge, now said to be read with this one. */
const readWith = (
  readings: readonly BeadReading[],
  quantities: readonly BeadQuantity[],
  kind: string,
  { name: instrument, resolution, study }: BenchGauge,
): readonly BeadReading[] =>
  readings.map((one) => {
    const { quantity, value } = one;
    if (!quantities.includes(quantity) || beadQuantityRows[quantity].gauge !== kind) return one;
    return { quantity, value, instrument, resolution, ...carriedBy(study, beadQuantityRows[quantity].unit) };
  });

function ReadingField({
  quantity,
  value,
  gauge,
  taken,
  units,
  onChange,
}: {
  readonly quantity: BeadQuantity;
  /** What the stored reading was taken with, whether it is ticked here or not. */
  readonly taken: string | undefined;
  readonly value: number | null;
  readonly gauge: BenchGauge | null;
  readonly units: UnitPreferences;
  readonly onChange: (value: number | null) => void;
}) {
  const { label, unit } = beadQuantityRows[quantity];
  const isAngle = unit === "deg";
  const typed = useTyped({
    value,
    unit: isAngle ? "deg" : units.length,
    write: (stored) => (isAngle ? fieldText("plain", stored, metric) : fieldText("length", stored, units)),
    parse: (text) => parseReading(quantity, text, units),
    store: onChange,
  });
  return (
    <Field
      label={`${label}, ${isAngle ? "°" : units.length}`}
      hint={taken ?? (gauge ? labelOf([gauge], gauge.name) : undefined)}
      error={typed.error}
    >
      {(ids) => (
        <input
          {...ids}
          type="text"
          inputMode={units.length === "in" && !isAngle ? "text" : "decimal"}
          autoComplete="off"
          disabled={gauge === null}
          value={typed.text}
          onChange={(event) => typed.type(event.target.value)}
          onBlur={typed.leave}
        />
      )}
    </Field>
  );
}
