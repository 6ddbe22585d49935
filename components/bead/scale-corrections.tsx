"use client";

import { useState } from "react";
import { Button, Chip, Field } from "@/components/ui";
import type { Scale } from "@/lib/marks";
import { defaultMeasureOptions } from "@/lib/measure";
import { inputText, parseLength, parseOrUnknown, unitsSentence, type UnitPreferences } from "@/lib/units";
import styles from "./scale-panel.module.css";

/** The bar beside the printed strip that a rule is held against, mm. */
const BAR_MM = 100;
/** Further off than this it is no printer's error: the page was scaled to fit. */
const MOST_OFF_MM = 10;

/** What a person can measure about a scale that is set: how long the printed bar is, how high the marks lie above it. */
export function ScaleCorrections({
  scale,
  units,
  onScale,
}: {
  scale: Scale;
  units: UnitPreferences;
  onScale: (scale: Scale) => void;
}) {
  const { surface } = scale;
  const write = (mm: number | null) => inputText("length", mm, units);
  const [bar, setBar] = useState(write(scale.kind === "strip" ? scale.printFactor * BAR_MM : null));
  const [height, setHeight] = useState(write(surface ? Math.abs(surface.aboveMm) : null));
  const [below, setBelow] = useState((surface?.aboveMm ?? 0) < 0);
  const [spread, setSpread] = useState(write(surface?.plusMinusMm ?? null));
  const [errors, setErrors] = useState<Partial<Record<"bar" | "height" | "spread", string>>>({});

  function accept() {
    const read = (text: string) => parseOrUnknown(text, (one) => parseLength(one, { default: units.length }));
    const fields = { bar: read(bar), height: read(height), spread: read(spread) };
    const wrong = Object.entries(fields).flatMap(([name, one]) =>
      one.ok ? [] : [[name, one.issues.map(unitsSentence).join(" ")] as const],
    );
    const mm = (one: (typeof fields)["bar"]) => (one.ok ? one.value : null);
    const barMm = mm(fields.bar) ?? BAR_MM;
    if (Math.abs(barMm - BAR_MM) > MOST_OFF_MM)
      wrong.push(["bar", "That is more than 10 % off. Print the page again at its full size (100 %)."]);
    for (const name of ["height", "spread"] as const)
      if ((mm(fields[name]) ?? 0) > 100)
        wrong.push([name, "More than 100 mm is another set-up, not a correction."]);
    setErrors(Object.fromEntries(wrong));
    if (wrong.length > 0) return;
    const aboveMm = mm(fields.height);
    const plusMinusMm = mm(fields.spread);
    const { surface: _, ...bare } = scale;
    const corrected: Scale = bare.kind === "strip" ? { ...bare, printFactor: barMm / BAR_MM } : bare;
    const known = aboveMm !== null || plusMinusMm !== null;
    onScale({
      ...corrected,
      ...(known ? { surface: { aboveMm: (below ? -1 : 1) * (aboveMm ?? 0), plusMinusMm } } : {}),
    });
  }

  return (
    <details className={styles.corrections}>
      <summary>
        {scale.kind === "strip" ? "Printed bar and height of the surface" : "Height of the surface"}
      </summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          accept();
        }}
      >
        {scale.kind === "strip" && (
          <Field
            label={`The bar marked 100 mm measures (${units.length})`}
            hint="By a steel rule on the printed page. A printer may be half a percent out."
            error={errors.bar}
          >
            {(ids) => (
              <input
                {...ids}
                value={bar}
                autoComplete="off"
                onChange={(event) => setBar(event.target.value)}
              />
            )}
          </Field>
        )}
        <div className={styles.objects}>
          <Field
            label={`The marked surface lies off the scale's plane by (${units.length})`}
            hint="Empty: not measured."
            error={errors.height}
          >
            {(ids) => (
              <input
                {...ids}
                value={height}
                autoComplete="off"
                onChange={(event) => setHeight(event.target.value)}
              />
            )}
          </Field>
          <Field
            label={`Give or take (${units.length})`}
            hint={`Empty: ± ${defaultMeasureOptions.heightHalfWidthMm} mm.`}
            error={errors.spread}
          >
            {(ids) => (
              <input
                {...ids}
                value={spread}
                autoComplete="off"
                onChange={(event) => setSpread(event.target.value)}
              />
            )}
          </Field>
        </div>
        <div className={styles.sides} role="group" aria-label="On which side of the scale">
          <Chip on={!below} onClick={() => setBelow(false)}>
            Above, nearer to the camera
          </Chip>
          <Chip on={below} onClick={() => setBelow(true)}>
            Below
          </Chip>
        </div>
        <div>
          <Button type="submit" tone="main">
            Measure again
          </Button>
        </div>
      </form>
    </details>
  );
}
