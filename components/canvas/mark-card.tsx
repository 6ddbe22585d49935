"use client";
import { ChevronDown, Trash2, X } from "lucide-react";
import Link from "next/link";
import { useState } from "react";
import { atlasAddress } from "@/components/atlas";
import { Button } from "@/components/ui";
import { markStyle, type MarkDescription } from "@/lib/marks";
import { imperfections, stretches } from "@/lib/trade";
import { ChoiceRow } from "./choice-row";
import { CountField } from "./count-field";
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
  const { mark, number, onAction, readOnly = false } = props;
  const [isNaming, setNaming] = useState(false);
  const { look, inspectorFirst } = imperfections[mark.imperfection];
  const describe = (about: Partial<MarkDescription>) =>
    onAction({ type: "mark.describe", id: mark.id, about });
  const remove = () => {
    onAction({ type: "mark.remove", id: mark.id });
    props.onClose?.();
  };
  return (
    <section className={styles.card} aria-label={`Mark ${number}`} data-testid="mark-card">
      <CardHead {...props} onRename={() => setNaming(true)} />
      {props.measured && <MarkCardBudget measured={props.measured} units={props.units} />}
      <p>
        {look} <Link href={atlasAddress(mark.imperfection, props.process ?? null)}>In the atlas</Link>
      </p>
      {mark.origin && <p>Suggested by the reader, and made a mark by a person. Look whether it is one.</p>}
      {inspectorFirst && (
        <p className={styles.warn}>Show it to an inspector before anything is changed or repaired.</p>
      )}
      <CountField key={`count-${mark.id}`} {...{ mark, readOnly }} onDescribe={describe} />
      <Whereabouts {...props} onDescribe={describe} />
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
        <Button tone="danger" onClick={remove}>
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
        offer={props.offer}
        process={props.process}
      />
    </section>
  );
}

/** Number, name and size. */
function CardHead({
  mark,
  number,
  size,
  onClose,
  onRename,
  readOnly = false,
}: MarkCardProps & { onRename: () => void }) {
  const { name } = imperfections[mark.imperfection];
  const { stroke } = markStyle(mark);
  const ink = palette.inks[stroke.ink];
  return (
    <header className={styles.head}>
      <span className={styles.badge} style={{ background: ink.line, color: ink.onLine }}>
        {number}
      </span>
      <button
        type="button"
        className={styles.name}
        disabled={readOnly}
        onClick={onRename}
        aria-label={`${name}. Change what it is`}
      >
        {name} {!readOnly && <ChevronDown aria-hidden="true" />}
      </button>
      {size !== undefined && <strong className={styles.size}>{size}</strong>}
      {onClose && (
        <button type="button" className={styles.bin} aria-label="Close the mark" onClick={onClose}>
          <X aria-hidden="true" />
        </button>
      )}
    </header>
  );
}

/** Where it is on the weld, and how it lies. */
function Whereabouts({
  mark,
  joint = null,
  position = null,
  readOnly = false,
  onDescribe,
}: MarkCardProps & { onDescribe: (about: Partial<MarkDescription>) => void }) {
  const places = placeChoices(joint, position, mark.place);
  const { patterns } = mark;
  const toggled = (id: (typeof patterns)[number]) =>
    patterns.includes(id) ? patterns.filter((other) => other !== id) : [...patterns, id];
  return (
    <>
      <ChoiceRow
        name="Where across the weld"
        hint={namesLeftAndRight(places) ? "Left and right as seen from start to crater." : undefined}
        choices={places}
        isOn={(id) => id === mark.place}
        onToggle={(id) => onDescribe({ place: id === mark.place ? null : id })}
        disabled={readOnly}
      />
      <ChoiceRow
        name="Where along it"
        choices={stretches.map((id) => ({ id, name: stretchNames[id] }))}
        isOn={(id) => id === mark.stretch}
        onToggle={(id) => onDescribe({ stretch: id === mark.stretch ? null : id })}
        disabled={readOnly}
      />
      <ChoiceRow
        name="How it lies"
        hint="Tick all that are true."
        choices={patternChoices(imperfections[mark.imperfection].group, patterns).map((id) => ({
          id,
          name: patternNames[id],
        }))}
        isOn={(id) => patterns.includes(id)}
        onToggle={(id) => onDescribe({ patterns: toggled(id) })}
        disabled={readOnly}
      />
    </>
  );
}
