"use client";

import { useState } from "react";
import { Button, Chip, Field } from "@/components/ui";
import type { Scale } from "@/lib/marks";
import { defaultMeasureOptions } from "@/lib/measure";
import { lengthText } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import { correctionTexts, correctScale, type CorrectionErrors } from "./scale-correction";
import styles from "./scale-panel.module.css";

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
  const [texts, setTexts] = useState(() => correctionTexts(scale, units));
  const [errors, setErrors] = useState<CorrectionErrors>({});
  const length = (name: "bar" | "height" | "spread", label: string, hint: string) => (
    <Field label={`${label} (${units.length})`} hint={hint} error={errors[name]}>
      {(ids) => (
        <input
          {...ids}
          value={texts[name]}
          autoComplete="off"
          onChange={({ target }) => setTexts({ ...texts, [name]: target.value })}
        />
      )}
    </Field>
  );
  const accept = () => {
    const answer = correctScale(scale, texts, units);
    setErrors("errors" in answer ? answer.errors : {});
    if ("scale" in answer) onScale(answer.scale);
  };
  const isStrip = scale.kind === "strip";
  return (
    <details className={styles.corrections}>
      <summary>{isStrip ? "Printed bar and height of the surface" : "Height of the surface"}</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          accept();
        }}
      >
        {isStrip &&
          length(
            "bar",
            "The bar marked 100 mm measures",
            "By a steel rule on the printed page. A printer may be half a percent out.",
          )}
        <div className={styles.objects}>
          {length("height", "The marked surface lies off the scale's plane by", "Empty: not measured.")}
          {length(
            "spread",
            "Give or take",
            `Empty: ± ${lengthText(defaultMeasureOptions.heightHalfWidthMm, units)}.`,
          )}
        </div>
        <Sides below={texts.below} onBelow={(below) => setTexts({ ...texts, below })} />
        <div>
          <Button type="submit" tone="main">
            Measure again
          </Button>
        </div>
      </form>
    </details>
  );
}

function Sides({ below, onBelow }: { below: boolean; onBelow: (below: boolean) => void }) {
  return (
    <div className={styles.sides} role="group" aria-label="On which side of the scale">
      <Chip on={!below} onClick={() => onBelow(false)}>
        Above, nearer to the camera
      </Chip>
      <Chip on={below} onClick={() => onBelow(true)}>
        Below
      </Chip>
    </div>
  );
}
