"use client";
import { ChevronDown, Trash2, X } from "lucide-react";
import { useState } from "react";
import { Button } from "@/components/ui";
import { markStyle, type MarkDescription } from "@/lib/marks";
import { imperfections, stretches } from "@/lib/trade";
import { ChoiceRow } from "./choice-row";
import { GaugeEditor } from "./gauge-editor";
import { ImperfectionPicker } from "./imperfection-picker";
import { MarkCardBudget } from "./mark-card-budget";
import styles from "./mark-card.module.css";
import { namesLeftAndRight, patternChoices, patternNames, placeChoices, stretchNames } from "./mark-words";
import { NoteField } from "./note-field";
import { palette } from "@/components/picture";
import type { MarkCardProps } from "./types";

/** Everything said about one mark. Each choice is one change; nothing waits for a save button. */
export function MarkCard(props: MarkCardProps) {
  const { mark, number, onAction, joint = null, position = null, readOnly = false } = props;
  const [isNaming, setNaming] = useState(false);
  const { name, look, group, inspectorFirst } = imperfections[mark.imperfection];
  const { letter, stroke } = markStyle(mark);
  const ink = palette.inks[stroke.ink];
  const describe = (about: Partial<MarkDescription>) =>
    onAction({ type: "mark.describe", id: mark.id, about });
  const places = placeChoices(joint, position, mark.place);

  return (
    <section className={styles.card} aria-label={`Mark ${number}`} data-testid="mark-card">
      <header className={styles.head}>
        <span className={styles.badge} style={{ background: ink.line, color: ink.onLine }}>
          {number}
          {letter}
        </span>
        <button
          type="button"
          className={styles.name}
          disabled={readOnly}
          onClick={() => setNaming(true)}
          aria-label={`${name}. Change what it is`}
        >
          {name} {!readOnly && <ChevronDown aria-hidden="true" />}
        </button>
        {props.size !== undefined && <strong className={styles.size}>{props.size}</strong>}
        {props.onClose && (
          <button type="button" className={styles.bin} aria-label="Close the mark" onClick={props.onClose}>
            <X aria-hidden="true" />
          </button>
        )}
      </header>
      {props.measured && <MarkCardBudget measured={props.measured} units={props.units} />}
      <p>{look}</p>
      {inspectorFirst && (
        <p className={styles.warn}>Show it to an inspector before anything is changed or repaired.</p>
      )}
      <ChoiceRow
        name="Where across the weld"
        hint={namesLeftAndRight(places) ? "Left and right as seen from start to crater." : undefined}
        choices={places}
        isOn={(id) => id === mark.place}
        onToggle={(id) => describe({ place: id === mark.place ? null : id })}
        disabled={readOnly}
      />
      <ChoiceRow
        name="Where along it"
        choices={stretches.map((id) => ({ id, name: stretchNames[id] }))}
        isOn={(id) => id === mark.stretch}
        onToggle={(id) => describe({ stretch: id === mark.stretch ? null : id })}
        disabled={readOnly}
      />
      <ChoiceRow
        name="How it lies"
        hint="Tick all that are true."
        choices={patternChoices(group, mark.patterns).map((id) => ({ id, name: patternNames[id] }))}
        isOn={(id) => mark.patterns.includes(id)}
        onToggle={(id) =>
          describe({
            patterns: mark.patterns.includes(id)
              ? mark.patterns.filter((other) => other !== id)
              : [...mark.patterns, id],
          })
        }
        disabled={readOnly}
      />
      <GaugeEditor
        key={`gauge-${mark.id}`}
        readings={mark.gauge}
        onReadings={(gauge) => describe({ gauge })}
        units={props.units}
        readOnly={readOnly}
      />
      <NoteField
        key={`note-${mark.id}`}
        note={mark.note}
        onNote={(note) => describe({ note })}
        readOnly={readOnly}
      />
      {!readOnly && (
        <Button
          tone="danger"
          onClick={() => {
            onAction({ type: "mark.remove", id: mark.id });
            props.onClose?.();
          }}
        >
          <Trash2 aria-hidden="true" size={20} /> Delete mark {number}
        </Button>
      )}
      <ImperfectionPicker
        open={isNaming}
        onOpenChange={setNaming}
        current={mark.imperfection}
        onPick={(imperfection) => {
          onAction({ type: "mark.setImperfection", id: mark.id, imperfection });
          setNaming(false);
        }}
        shape={mark.shape.kind}
        {...(props.suggested ? { suggested: props.suggested } : {})}
      />
    </section>
  );
}
