"use client";
import { Search, X } from "lucide-react";
import { Dialog } from "radix-ui";
import { useRef, useState } from "react";
import { groupStyles } from "@/lib/marks";
import { isoNumberText, type Imperfection, type ImperfectionId } from "@/lib/trade";
import styles from "./imperfection-picker.module.css";
import { palette } from "@/components/picture";
import { pickerGroups, pickerHint } from "./picker-list";
import type { ImperfectionPickerProps } from "./types";

function Row({
  imperfection,
  isCurrent,
  onPick,
}: {
  imperfection: Imperfection;
  isCurrent: boolean;
  onPick: (id: ImperfectionId) => void;
}) {
  const { id, name, alsoCalled, look, group, inspectorFirst } = imperfection;
  const { name: groupName, stroke } = groupStyles[group];
  const ink = palette.inks[stroke.ink];
  const iso6520 = isoNumberText(id, null);
  return (
    <li>
      <button
        type="button"
        className={styles.row}
        aria-current={isCurrent || undefined}
        onClick={() => onPick(id)}
      >
        <span
          className={styles.letter}
          style={{ background: ink.line, color: ink.onLine }}
          aria-hidden="true"
        >
          {groupName.charAt(0)}
        </span>
        <span className={styles.words}>
          <span className={styles.name}>
            {name}
            {alsoCalled.length > 0 && <span className={styles.also}> {alsoCalled.join(", ")}</span>}
          </span>
          <span className={styles.look}>{look}</span>
          {inspectorFirst && <span className={styles.warn}>Show it to an inspector before any repair.</span>}
        </span>
        {iso6520 !== null && (
          <span className={styles.number} title="ISO 6520-1 number">
            {iso6520}
          </span>
        )}
      </button>
    </li>
  );
}

/** The vocabulary of what can be seen on a chipped bead, in groups, each with how to tell it from its neighbours. */
export function ImperfectionPicker(props: ImperfectionPickerProps) {
  const { open, onOpenChange, onPick, onRepeat, current, title = "What is it?" } = props;
  const sheet = useRef<HTMLDivElement>(null);
  return (
    <Dialog.Root open={open} onOpenChange={onOpenChange}>
      <Dialog.Portal>
        <Dialog.Overlay className={styles.shade} />
        <Dialog.Content
          ref={sheet}
          className={styles.sheet}
          aria-describedby={undefined}
          onOpenAutoFocus={(event) => {
            event.preventDefault();
            // A finger wants the list; only hands on a keyboard want the search, without a screen keyboard over it.
            const typing = window.matchMedia("(hover: hover)").matches;
            (typing ? sheet.current?.querySelector("input") : sheet.current)?.focus();
          }}
          onCloseAutoFocus={(event) => {
            if (!props.onClosed) return;
            event.preventDefault();
            props.onClosed();
          }}
        >
          <header className={styles.head}>
            <Dialog.Title className={styles.title}>{title}</Dialog.Title>
            <Dialog.Close className={styles.close} aria-label="Close without naming">
              <X aria-hidden="true" />
            </Dialog.Close>
          </header>
          <PickerBody
            current={current}
            onPick={onPick}
            onRepeat={onRepeat}
            shape={props.shape}
            suggested={props.suggested ?? []}
          />
        </Dialog.Content>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

/** Mounted with the dialog, so that every opening starts with an empty search. */
function PickerBody({
  current,
  onPick,
  onRepeat,
  shape,
  suggested,
}: Pick<ImperfectionPickerProps, "current" | "onPick"> & {
  onRepeat: ImperfectionPickerProps["onRepeat"] | undefined;
  shape: ImperfectionPickerProps["shape"] | undefined;
  suggested: readonly ImperfectionId[];
}) {
  const [typed, setTyped] = useState("");
  const [isRepeated, setRepeated] = useState(false);
  const groups = pickerGroups(typed, shape, suggested);
  const pick = (id: ImperfectionId) => {
    if (isRepeated) onRepeat?.(id);
    onPick(id);
  };
  return (
    <>
      <label className={styles.search}>
        <Search aria-hidden="true" className={styles.icon} />
        <span className="visually-hidden">Search by name or look</span>
        <input
          type="search"
          value={typed}
          placeholder="Name or look"
          onChange={(event) => setTyped(event.target.value)}
          onKeyDown={(event) => {
            const only = groups.flatMap((group) => group.rows)[0];
            if (event.key === "Enter" && typed !== "" && only) pick(only.id);
          }}
        />
      </label>
      <div className={styles.list}>
        {groups.map((group) => (
          <section key={group.key} aria-label={group.name}>
            <h3 className={styles.group}>{group.name}</h3>
            <ul>
              {group.rows.map((row) => (
                <Row key={row.id} imperfection={row} isCurrent={row.id === current} onPick={pick} />
              ))}
            </ul>
          </section>
        ))}
        {groups.length === 0 && <p className={styles.none}>{pickerHint(typed)}</p>}
      </div>
      {onRepeat && (
        <label className={styles.repeat}>
          <input type="checkbox" checked={isRepeated} onChange={(e) => setRepeated(e.target.checked)} />
          Name the next ones the same without asking
        </label>
      )}
    </>
  );
}
