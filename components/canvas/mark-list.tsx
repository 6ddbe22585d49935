"use client";
import { ListChecks, Trash2 } from "lucide-react";
import { useState } from "react";
import { Button } from "@/components/ui";
import { markStyle, type EditAction, type Mark } from "@/lib/marks";
import { imperfections } from "@/lib/trade";
import { ImperfectionPicker } from "./imperfection-picker";
import styles from "./mark-list.module.css";
import { palette } from "@/components/picture";

interface MarkListProps {
  readonly marks: readonly Mark[];
  /** The mark's size in words; empty when there is none. */
  readonly sizeOf: (mark: Mark) => string;
  readonly selectedId: string | null;
  readonly onSelect: (id: string | null) => void;
  /** Left out: several cannot be chosen. */
  readonly onAction?: (action: EditAction) => void;
}

/**
 * The marks as buttons, for a screen reader and for a thumb that cannot hit a line: the same numbers as on the photo.
 * The one picked is pressed; pressed again, it is let go. Several can be chosen for one act.
 */
export function MarkList(props: MarkListProps) {
  const { marks, sizeOf, selectedId, onSelect, onAction } = props;
  /** Chosen together; null: one at a time. */
  const [several, setSeveral] = useState<ReadonlySet<string> | null>(null);
  if (marks.length === 0) return null;
  const toggle = (id: string) => {
    if (several === null) return onSelect(id === selectedId ? null : id);
    const next = new Set(several);
    if (!next.delete(id)) next.add(id);
    setSeveral(next);
  };
  return (
    <div className={styles.block}>
      <ul className={styles.list} aria-label="Marks on this photo">
        {marks.map((mark, index) => (
          <li key={mark.id}>
            <MarkButton
              {...{ mark, index }}
              size={sizeOf(mark)}
              isPicked={several === null ? mark.id === selectedId : several.has(mark.id)}
              onPress={() => toggle(mark.id)}
            />
          </li>
        ))}
      </ul>
      {onAction && marks.length > 1 && (
        <Several
          {...{ marks, several, onAction }}
          onSeveral={(next) => {
            if (next !== null) onSelect(null);
            setSeveral(next);
          }}
        />
      )}
    </div>
  );
}

function MarkButton({
  mark,
  index,
  size,
  isPicked,
  onPress,
}: {
  mark: Mark;
  index: number;
  size: string;
  isPicked: boolean;
  onPress: () => void;
}) {
  const ink = palette.inks[markStyle(mark).stroke.ink];
  return (
    <button type="button" className={styles.mark} aria-pressed={isPicked} onClick={onPress}>
      <span className={styles.badge} style={{ background: ink.line, color: ink.onLine }}>
        {index + 1}
      </span>
      {imperfections[mark.imperfection].name}
      {size !== "" && <strong>{size}</strong>}
    </button>
  );
}

/** Choosing several marks, and what can be done to them in one step. */
function Several({
  marks,
  several,
  onSeveral,
  onAction,
}: {
  marks: readonly Mark[];
  several: ReadonlySet<string> | null;
  onSeveral: (several: ReadonlySet<string> | null) => void;
  onAction: (action: EditAction) => void;
}) {
  const [isNaming, setNaming] = useState(false);
  if (several === null)
    return (
      <Button onClick={() => onSeveral(new Set())}>
        <ListChecks aria-hidden="true" size={20} /> Choose several
      </Button>
    );
  // A mark may have gone since, by an undo.
  const ids = marks.map(({ id }) => id).filter((id) => several.has(id));
  const act = (action: EditAction) => {
    onAction(action);
    onSeveral(null);
  };
  return (
    <div className={styles.several} role="group" aria-label="Marks chosen together">
      <strong role="status">{ids.length} chosen</strong>
      <Button onClick={() => onSeveral(new Set(marks.map(({ id }) => id)))}>All {marks.length}</Button>
      <Button disabled={ids.length === 0} onClick={() => setNaming(true)}>
        Name them the same
      </Button>
      <Button tone="danger" disabled={ids.length === 0} onClick={() => act({ type: "marks.remove", ids })}>
        <Trash2 aria-hidden="true" size={20} /> Delete {ids.length}
      </Button>
      <Button onClick={() => onSeveral(null)}>Done</Button>
      <ImperfectionPicker
        open={isNaming}
        onOpenChange={setNaming}
        title={`What are these ${ids.length}?`}
        current={null}
        onPick={(imperfection) => {
          setNaming(false);
          act({ type: "marks.setImperfection", ids, imperfection });
        }}
      />
    </div>
  );
}
