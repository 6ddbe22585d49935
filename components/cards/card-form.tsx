"use client";

import { useState } from "react";
import { RangeFields } from "@/components/setup";
import { Choice, Field, form, MakeFoot, page, Panel } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { cardCodes, type Card, type CardCode, type CardRange } from "@/lib/cards";
import type { SteelSchema } from "@/lib/procedure";
import type { UnitPreferences } from "@/lib/units";
import type { z } from "zod";

type Steel = z.infer<typeof SteelSchema>;
type Open = { readonly field: CardRange["field"]; readonly low: number | null; readonly high: number | null };

const codeWords: Readonly<Record<CardCode, string>> = {
  "aws-d1-1": "AWS D1.1",
  "iso-15614-1": "ISO 15614-1",
};

const parts = {
  carbonPercent: "C",
  siliconPercent: "Si",
  manganesePercent: "Mn",
  chromiumPercent: "Cr",
  molybdenumPercent: "Mo",
  vanadiumPercent: "V",
  nickelPercent: "Ni",
  copperPercent: "Cu",
  boronPercent: "B",
} as const satisfies Partial<Record<keyof Steel, string>>;
const partNames = Object.keys(parts) as (keyof typeof parts)[];

/** A card begun from a bead or a trial: its ranges as proposed, to be put right by hand, and the steel's certificate. */
export function CardForm({
  start,
  units,
  onMake,
}: {
  start: Card;
  units: UnitPreferences;
  onMake: (card: Card) => Promise<Answer<null>>;
}) {
  const [title, setTitle] = useState(start.title);
  const [ranges, setRanges] = useState<readonly Open[]>(start.ranges);
  const [code, setCode] = useState<CardCode>(start.code);
  const [steel, setSteel] = useState<Partial<Record<keyof Steel, string>>>({});
  const [note, setNote] = useState("");
  const ready =
    ranges.every(({ low, high }) => low !== null && high !== null && low <= high) && title.trim() !== "";
  const typed = { title, code, note, ranges, steel };
  return (
    <div className={form.form}>
      <Field label="Title">
        {(ids) => (
          <input {...ids} value={title} maxLength={120} onChange={({ target }) => setTitle(target.value)} />
        )}
      </Field>
      <Panel title="Between what each dial may stand" tone="straw">
        <Ranges ranges={ranges} units={units} onChange={setRanges} />
      </Panel>
      <Panel title="Code and steel" tone="bronze">
        <Field label="Essential variables of">
          {(ids) => (
            <Choice
              {...ids}
              value={code}
              options={cardCodes}
              nameOf={(one) => codeWords[one]}
              onChoose={setCode}
            />
          )}
        </Field>
        <SteelFields steel={steel} onChange={setSteel} />
      </Panel>
      <Field label="Note">
        {(ids) => (
          <textarea
            {...ids}
            rows={3}
            maxLength={2000}
            value={note}
            onChange={({ target }) => setNote(target.value)}
          />
        )}
      </Field>
      <MakeFoot label="Make the card" ready={ready} onMake={() => onMake(cardOf(start, typed))} />
    </div>
  );
}

interface Typed {
  readonly title: string;
  readonly code: CardCode;
  readonly note: string;
  readonly ranges: readonly Open[];
  readonly steel: Partial<Record<keyof Steel, string>>;
}

const cardOf = (start: Card, { ranges, steel, ...typed }: Typed): Card => ({
  ...start,
  ...typed,
  ranges: ranges.map(({ field, low, high }) => ({ field, low: low!, high: high! })),
  steel: steelOf(steel),
});

function Ranges({
  ranges,
  units,
  onChange,
}: {
  ranges: readonly Open[];
  units: UnitPreferences;
  onChange: (ranges: readonly Open[]) => void;
}) {
  return (
    <>
      <p className={page.note}>
        Proposed about what was run, and never beyond the wire’s rows by our own hand. Put them right: the
        card is yours.
      </p>
      {ranges.map((range) => (
        <RangeFields
          key={range.field}
          field={range.field}
          range={range}
          units={units}
          onChange={(next) =>
            onChange(ranges.map((one) => (one.field === range.field ? { ...one, ...next } : one)))
          }
        />
      ))}
    </>
  );
}

/** Without carbon there is no certificate, and the card says nothing of preheat. */
function steelOf(typed: Partial<Record<keyof Steel, string>>): Steel | null {
  const number = (name: keyof Steel): number => Number((typed[name] ?? "").replace(",", ".")) || 0;
  if (!(number("carbonPercent") > 0)) return null;
  const percents = Object.fromEntries(partNames.map((name) => [name, number(name)]));
  return { ...percents, hydrogenMlPer100G: number("hydrogenMlPer100G") || 10 } as Steel;
}

function SteelFields({
  steel,
  onChange,
}: {
  steel: Partial<Record<keyof Steel, string>>;
  onChange: (steel: Partial<Record<keyof Steel, string>>) => void;
}) {
  const field = (name: keyof Steel, label: string, hint?: string) => (
    <Field key={name} label={label} hint={hint}>
      {(ids) => (
        <input
          {...ids}
          inputMode="decimal"
          autoComplete="off"
          value={steel[name] ?? ""}
          onChange={({ target }) => onChange({ ...steel, [name]: target.value })}
        />
      )}
    </Field>
  );
  return (
    <>
      <p className={page.note}>
        From the steel’s certificate, percent by mass. Left open there is no preheat on the card.
      </p>
      <div className={page.fields}>{partNames.map((name) => field(name, `${parts[name]} (%)`))}</div>
      {field(
        "hydrogenMlPer100G",
        "Hydrogen of the wire (ml/100 g)",
        "5 for H5, 10 for H10; 10 is taken where it is left open.",
      )}
    </>
  );
}
