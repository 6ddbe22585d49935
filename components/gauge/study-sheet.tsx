"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, useTransition, type KeyboardEvent } from "react";
import { Button, Field, form, page, Panel } from "@/components/ui";
import { inWords, type Answer } from "@/lib/base";
import { studyLimits, type CellUnit, type SheetCell } from "@/lib/gauge";
import styles from "./gauge.module.css";
import { useSheet, type Sheet } from "./use-sheet";

type Hand = ReturnType<typeof useSheet>;

interface Props {
  readonly instrumentId: string;
  readonly unit: CellUnit;
  readonly today: string;
  /** What gauges of this kind read. */
  readonly what: string;
  readonly save: (study: unknown) => Promise<Answer<{ readonly id: string }>>;
}

/** Sends the study; when it is kept, this device forgets its sheet and goes on to what came of it. */
function useSending(instrumentId: string, hand: Hand, save: Props["save"]) {
  const router = useRouter();
  const [refusal, setRefusal] = useState<string | null>(null);
  const [isSaving, saving] = useTransition();
  const send = () =>
    saving(async () => {
      const said = await save(hand.study);
      if (!said.ok) return setRefusal(inWords(said));
      hand.forget();
      router.push(`/instruments/${instrumentId}/studies/${said.value.id}`);
    });
  return { refusal, isSaving, send };
}

/**
 * The sheet of a study. Its cells stand in the order of the bench: one person reads all parts, then all of them again,
 * then the next person. Enter and Tab go on in that order; what a spreadsheet copied can be pasted into any cell.
 */
export function StudySheet({ instrumentId, unit, today, what, save }: Props) {
  const start: Sheet = {
    ...{ on: today, what, people: "A, B, C", parts: "10", tries: "3", tolerance: "", cells: {} },
  };
  const hand = useSheet(`toeline-study-${instrumentId}`, start, unit);
  const { refusal, isSaving, send } = useSending(instrumentId, hand, save);
  return (
    <form
      className={form.form}
      aria-label="Study"
      onSubmit={(event) => {
        event.preventDefault();
        send();
      }}
    >
      <Panel title="What is read, by whom" tone="straw">
        <Beginning hand={hand} unit={unit} />
      </Panel>
      <Panel title="Readings" tone="blue">
        <p className={page.note}>
          Nobody sees what was read before, and the parts come in another order each time. From a spreadsheet:
          copy, press a cell, paste; parts may stand across or down.
        </p>
        <Cells hand={hand} />
        {hand.beyond > 0 && <p role="status">{hand.beyond} of what was pasted had no place here.</p>}
        <p role="status">
          {hand.missing === 0
            ? "All readings are there."
            : `${hand.missing} of ${hand.all.length} readings are still to come.`}
        </p>
      </Panel>
      <div className={form.row}>
        <Button
          type="submit"
          tone="main"
          disabled={isSaving || hand.missing > 0 || hand.people.length < studyLimits.people[0]}
        >
          {isSaving ? "Working …" : "Work it out"}
        </Button>
      </div>
      {refusal && (
        <p role="alert" className={`${form.said} ${form.refused}`}>
          {refusal}
        </p>
      )}
    </form>
  );
}

const symbol = (unit: CellUnit): string => (unit === "deg" ? "°" : unit);

function Beginning({ hand: { sheet, keep }, unit }: { hand: Hand; unit: CellUnit }) {
  const field = (name: Exclude<keyof Sheet, "cells">, label: string, type: string, hint?: string) => (
    <Field label={label} hint={hint}>
      {(ids) => (
        <input
          {...ids}
          type={type}
          value={sheet[name]}
          autoComplete="off"
          required={name !== "tolerance"}
          maxLength={80}
          onChange={({ target }) => keep({ ...sheet, [name]: target.value })}
        />
      )}
    </Field>
  );
  return (
    <div className={page.fields}>
      {field("on", "Day", "date")}
      {field("what", "What is read", "text")}
      {field("people", "People", "text", "two to six letters or marks, no names")}
      {field("parts", "Parts", "number", "2 to 30; ten are usual")}
      {field("tries", "Tries each", "number", "2 to 5; three are usual")}
      {field("tolerance", `Tolerance, ${symbol(unit)}`, "text", "upper less lower; may stay empty")}
    </div>
  );
}

function Cells({ hand }: { hand: Hand }) {
  const box = useRef<HTMLDivElement>(null);
  const goOn = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    const inputs = [...(box.current?.querySelectorAll("input") ?? [])];
    inputs[inputs.indexOf(event.currentTarget) + 1]?.focus();
  };
  return (
    <div ref={box}>
      {hand.lines.map(({ person, t }, line) => (
        <fieldset key={`${person} ${t}`} className={`${styles.line} ${t === 0 ? styles.first : ""}`}>
          <legend>
            {person}, try {t + 1}
          </legend>
          <div className={styles.cells}>
            {Array.from({ length: hand.parts }, (_, part) => (
              <Cell key={part} hand={hand} at={{ line, part }} label={`${person} ${t + 1}`} onKey={goOn} />
            ))}
          </div>
        </fieldset>
      ))}
    </div>
  );
}

function Cell({
  hand,
  at,
  label,
  onKey,
}: {
  hand: Hand;
  at: SheetCell;
  label: string;
  onKey: (event: KeyboardEvent<HTMLInputElement>) => void;
}) {
  const text = hand.textAt(at);
  return (
    <label className={styles.cell}>
      <span>Part {at.part + 1}</span>
      <input
        aria-label={`${label}, part ${at.part + 1}`}
        inputMode="text"
        autoComplete="off"
        value={text}
        aria-invalid={text.trim() !== "" && hand.valueAt(at) === null}
        onKeyDown={onKey}
        onChange={({ target }) => hand.put([{ ...at, text: target.value }])}
        onPaste={(event) => {
          const pasted = event.clipboardData.getData("text");
          if (!/[\t\n;]|\S[ \u00a0]+\S/.test(pasted.trim())) return;
          event.preventDefault();
          hand.paste(pasted, at);
        }}
      />
    </label>
  );
}
