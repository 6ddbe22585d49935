"use client";

import { useState, type ReactNode } from "react";
import { useTyped } from "@/components/setup";
import { Choice, Field } from "@/components/ui";
import { LONGEST_WELD_MM, type Extent } from "@/lib/inspect";
import {
  inputText,
  metric,
  parseLength,
  parseOrUnknown,
  parsePercent,
  type UnitPreferences,
} from "@/lib/units";
import styles from "./inspect.module.css";

type Kind = Extent["kind"];
const kinds: readonly Kind[] = ["percent", "length"];

const toExtent = (kind: Kind, value: number | null): Extent | null => {
  if (value === null) return null;
  return kind === "percent" ? { kind, percent: value } : { kind, lengthMm: value };
};
const numberOf = (extent: Extent | null): number | null =>
  extent === null ? null : extent.kind === "percent" ? extent.percent : extent.lengthMm;

interface ExtentFieldProps {
  readonly label: string;
  readonly hint?: ReactNode;
  readonly extent: Extent | null;
  readonly units: UnitPreferences;
  /** Nothing of it was seen is an answer; nothing of it is asked is none. */
  readonly allowZero: boolean;
  readonly onChange: (extent: Extent | null) => void;
}

/**
 * How much of a weld: a number and its unit, % of the length or a length in the person's unit. Empty is "not recorded".
 * With another unit chosen the number that was typed is read anew in that unit.
 */
export function ExtentField(props: ExtentFieldProps) {
  const { label, units } = props;
  const { kind, typed, switchTo } = useTypedExtent(props);
  return (
    <Field label={label} hint={props.hint} error={typed.error}>
      {(ids) => (
        <div className={styles.extent}>
          <input
            {...ids}
            type="text"
            inputMode={kind === "length" && units.length === "in" ? "text" : "decimal"}
            autoComplete="off"
            placeholder="not recorded"
            value={typed.text}
            onChange={(event) => typed.type(event.target.value)}
            onBlur={typed.leave}
          />
          <Choice
            aria-label={`Unit of: ${label}`}
            value={kind}
            options={kinds}
            nameOf={(one) => (one === "percent" ? "% of length" : units.length)}
            onChoose={switchTo}
          />
        </div>
      )}
    </Field>
  );
}

function useTypedExtent({ extent, units, allowZero, onChange }: ExtentFieldProps) {
  const [chosen, setChosen] = useState<Kind>("percent");
  const kind = extent?.kind ?? chosen;
  const parseAs = (as: Kind) => (text: string) =>
    as === "percent"
      ? parsePercent(text, { allowZero })
      : parseLength(text, { default: units.length, allowZero, max: LONGEST_WELD_MM });
  const typed = useTyped({
    value: numberOf(extent),
    unit: kind === "percent" ? "%" : units.length,
    write: (value) =>
      kind === "percent" ? inputText("plain", value, metric) : inputText("length", value, units),
    parse: parseAs(kind),
    store: (value) => {
      setChosen(kind);
      onChange(toExtent(kind, value));
    },
  });
  const switchTo = (next: Kind) => {
    const read = parseOrUnknown(typed.text, parseAs(next));
    setChosen(next);
    typed.leave();
    onChange(toExtent(next, read.ok ? read.value : null));
  };
  return { kind, typed, switchTo };
}
