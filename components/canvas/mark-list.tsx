"use client";
import { markStyle, type Mark } from "@/lib/marks";
import { imperfections } from "@/lib/trade";
import styles from "./mark-list.module.css";
import { palette } from "@/components/picture";

/**
 * The marks as buttons, for a screen reader and for a thumb that cannot hit a line: the same numbers as on the photo.
 * The one picked is pressed; pressed again, it is let go.
 */
export function MarkList({
  marks,
  sizeOf,
  selectedId,
  onSelect,
}: {
  marks: readonly Mark[];
  /** The mark's size in words; empty when there is none. */
  sizeOf: (mark: Mark) => string;
  selectedId: string | null;
  onSelect: (id: string | null) => void;
}) {
  if (marks.length === 0) return null;
  return (
    <ul className={styles.list} aria-label="Marks on this photo">
      {marks.map((mark, index) => {
        const { stroke } = markStyle(mark);
        const ink = palette.inks[stroke.ink];
        const isPicked = mark.id === selectedId;
        const size = sizeOf(mark);
        return (
          <li key={mark.id}>
            <button
              type="button"
              className={styles.mark}
              aria-pressed={isPicked}
              onClick={() => onSelect(isPicked ? null : mark.id)}
            >
              <span className={styles.badge} style={{ background: ink.line, color: ink.onLine }}>
                {index + 1}
              </span>
              {imperfections[mark.imperfection].name}
              {size !== "" && <strong>{size}</strong>}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
