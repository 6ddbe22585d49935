"use client";

import { CircleHelp, Search } from "lucide-react";
import { useState } from "react";
import type { ImperfectionId } from "@/lib/trade";
import styles from "./imperfection-picker.module.css";
import { nothingOffered, pickerGroups, pickerHint, type Doubt, type PickerGroup } from "./picker-groups";
import { PickerRow } from "./picker-row";
import { PickerUnsure } from "./picker-unsure";
import type { ImperfectionPickerProps } from "./types";

/** Mounted with the dialog, so that every opening starts with an empty search. */
export function PickerBody(props: ImperfectionPickerProps) {
  const { onPick, onRepeat, process = null } = props;
  const [doubt, setDoubt] = useState<Doubt | null>(null);
  const [isRepeated, setRepeated] = useState(false);
  const pick = (id: ImperfectionId) => {
    if (isRepeated) onRepeat?.(id);
    onPick(id);
  };
  return (
    <>
      {doubt === null ? (
        <PickerSearch {...props} onPick={pick} onDoubt={setDoubt} />
      ) : (
        <PickerUnsure {...{ doubt, process }} onDoubt={setDoubt} onPick={pick} />
      )}
      {onRepeat && (
        <label className={styles.repeat}>
          <input type="checkbox" checked={isRepeated} onChange={(e) => setRepeated(e.target.checked)} />
          Name the next ones the same without asking
        </label>
      )}
    </>
  );
}

/** The search, the answer "not sure", and the list. */
function PickerSearch({
  onPick,
  onDoubt,
  current,
  shape,
  offer = nothingOffered,
}: ImperfectionPickerProps & { onDoubt: (doubt: Doubt) => void }) {
  const [typed, setTyped] = useState("");
  const groups = pickerGroups(typed, shape, offer);
  const hint = pickerHint(typed);
  return (
    <>
      <div className={styles.ask}>
        <label className={styles.search}>
          <Search aria-hidden="true" className={styles.icon} />
          <span className="visually-hidden">Search by name, shop word or look</span>
          <input
            type="search"
            value={typed}
            placeholder="Name or shop word"
            onChange={(event) => setTyped(event.target.value)}
            onKeyDown={(event) => {
              const first = groups.flatMap((group) => group.rows)[0];
              if (event.key === "Enter" && typed !== "" && first) onPick(first);
            }}
          />
        </label>
        <button type="button" className={styles.unsure} onClick={() => onDoubt("unsure")}>
          <CircleHelp aria-hidden="true" size={20} /> Not sure
        </button>
      </div>
      <div className={styles.list}>
        {hint !== "" && <p className={styles.none}>{hint}</p>}
        {groups.map((group) => (
          <Group
            key={group.key}
            group={group}
            marked={offer.onBead}
            {...{ current, typed, onPick, onDoubt }}
          />
        ))}
      </div>
    </>
  );
}

function Group({
  group,
  marked,
  current,
  typed,
  ...acts
}: {
  group: PickerGroup;
  marked: readonly ImperfectionId[];
  current: ImperfectionId | null;
  typed: string;
  onPick: (id: ImperfectionId) => void;
  onDoubt: (doubt: Doubt) => void;
}) {
  return (
    <section aria-label={group.name}>
      <h3 className={styles.group}>{group.name}</h3>
      <ul>
        {group.rows.map((id) => (
          <PickerRow
            key={id}
            id={id}
            place={group.key}
            isCurrent={id === current}
            onBead={group.key === "likely" && marked.includes(id)}
            // Who types digits asks for the number of the standard; nobody else is shown one.
            showNumber={/^\d/.test(typed.trim())}
            {...acts}
          />
        ))}
      </ul>
    </section>
  );
}
