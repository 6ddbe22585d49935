import { CloseUp } from "@/components/atlas";
import { smallPicture } from "@/lib/atlas";
import { imperfections, isoNumberText, type ImperfectionId } from "@/lib/trade";
import styles from "./imperfection-picker.module.css";

/** One kind: its picture, its names, how it looks; and beside it the way to how it is told from others. */
export function PickerRow({
  id,
  place,
  isCurrent,
  onBead,
  showNumber,
  onPick,
  onDoubt,
}: {
  id: ImperfectionId;
  /** The group it stands in: the same kind may stand in two. */
  place: string;
  isCurrent: boolean;
  onBead: boolean;
  showNumber: boolean;
  onPick: (id: ImperfectionId) => void;
  onDoubt: (id: ImperfectionId) => void;
}) {
  const { name, alsoCalled, look, inspectorFirst } = imperfections[id];
  const number = showNumber ? isoNumberText(id, null) : null;
  const key = `kind-${place}-${id}`;
  return (
    <li className={styles.row}>
      <button
        type="button"
        className={styles.kind}
        aria-current={isCurrent || undefined}
        aria-labelledby={`${key}-name`}
        aria-describedby={`${key}-look`}
        onClick={() => onPick(id)}
      >
        <CloseUp picture={{ ...smallPicture(id), alt: "" }} eager={place === "likely"} />
        <span className={styles.words}>
          <span className={styles.name} id={`${key}-name`}>
            {name}
            {alsoCalled.length > 0 && <span className={styles.also}> {alsoCalled.join(", ")}</span>}
          </span>
          <span className={styles.look} id={`${key}-look`}>
            {look}
          </span>
          {onBead && <span className={styles.onBead}>Marked on this bead already</span>}
          {inspectorFirst && <span className={styles.warn}>Inspector before any repair</span>}
          {number !== null && <span className={styles.number}>ISO 6520-1: {number}</span>}
        </span>
      </button>
      <button
        type="button"
        className={styles.tell}
        onClick={() => onDoubt(id)}
        aria-label={`How to tell: ${name}`}
      >
        How to tell
      </button>
    </li>
  );
}
