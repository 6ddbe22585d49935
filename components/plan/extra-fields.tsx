"use client";

import { useTyped } from "@/components/setup";
import { Field } from "@/components/ui";
import type { PlanAsk } from "@/lib/plan";
import { fieldText, parseAngle, parseLength, type UnitPreferences } from "@/lib/units";

interface Props {
  ask: PlanAsk;
  units: UnitPreferences;
  onChange: (ask: PlanAsk) => void;
}

/** What only a plan asks: how wide a pad is, how a groove is cut. */
export function ExtraFields(props: Props) {
  const { joint } = props.ask;
  if (joint === "stringer-pad") return <PadWidth {...props} />;
  return joint === "groove-backed" ? <GrooveAngle {...props} /> : null;
}

function PadWidth({ ask, units, onChange }: Props) {
  const typed = useTyped({
    value: ask.padWidthMm,
    unit: units.length,
    write: (stored) => fieldText("length", stored, units),
    parse: (text) => parseLength(text, { default: units.length, max: 2000 }),
    store: (padWidthMm) => onChange({ ...ask, padWidthMm }),
  });
  return (
    <Typed
      label={`Pad width, ${units.length}`}
      hint="Beads side by side until it is covered."
      typed={typed}
    />
  );
}

function GrooveAngle({ ask, onChange }: Props) {
  const typed = useTyped({
    value: ask.grooveAngleDeg,
    unit: "°",
    write: (stored) => (stored === null ? "" : String(stored)),
    parse: (text) => parseAngle(text, { max: 120, allowZero: true }),
    store: (grooveAngleDeg) => onChange({ ...ask, grooveAngleDeg }),
  });
  return (
    <Typed label="Groove angle, °" hint="Between the faces; 45° is taken where it is open." typed={typed} />
  );
}

function Typed({ label, hint, typed }: { label: string; hint: string; typed: ReturnType<typeof useTyped> }) {
  return (
    <Field label={label} hint={hint} error={typed.error}>
      {(ids) => (
        <input
          {...ids}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          placeholder="not known"
          value={typed.text}
          onChange={(event) => typed.type(event.target.value)}
          onBlur={typed.leave}
        />
      )}
    </Field>
  );
}
