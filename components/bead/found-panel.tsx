import { ArrowLeftRight, Check, X } from "lucide-react";
import { Button } from "@/components/ui";
import type { EditAction, PhotoPoint } from "@/lib/marks";
import { setLooksByItself } from "./looks-by-itself";
import styles from "./trace-panel.module.css";
import type { Found } from "./use-found";

/** Above the scale: what was found on the photo without a press, to be accepted with one. */
export function FoundPanel({
  found,
  onFound,
  onAction,
  onRim,
}: {
  found: Found;
  onFound: (found: Found | null) => void;
  onAction: (action: EditAction) => void;
  /** A disc was accepted: asks how wide it is. */
  onRim: (rim: readonly PhotoPoint[]) => void;
}) {
  const { busy, scale, rim, line, words, said } = found;
  const drop = () => onFound(null);
  const accept = () => {
    if (scale) onAction({ type: "scale.set", scale });
    if (line) onAction({ type: "weldLine.set", points: line });
    if (rim) onRim(rim);
    drop();
  };
  if (scale === null && rim === null && line === null)
    return busy || said || words ? (
      <div className={styles.panel} data-testid="found">
        <p role="status">{said ?? words ?? "Looking for a scale and the weld on this photo …"}</p>
        <OffSwitch onOff={drop} />
      </div>
    ) : null;
  return (
    <div className={styles.panel} data-testid="found">
      <p role="status">{foundWords(found)}</p>
      <div className={styles.buttons}>
        <Button tone="main" onClick={accept} disabled={busy}>
          <Check aria-hidden="true" size={22} /> {busy ? "Still looking …" : acceptWords(found)}
        </Button>
        {line && (
          <Button onClick={() => onFound({ ...found, line: line.toReversed() })}>
            <ArrowLeftRight aria-hidden="true" size={22} /> Start is at the other end
          </Button>
        )}
        <Button onClick={drop}>
          <X aria-hidden="true" size={22} /> Drop
        </Button>
      </div>
      {said && <p>{said}</p>}
      <OffSwitch onOff={drop} />
    </div>
  );
}

function acceptWords({ scale, rim, line }: Found): string {
  const what = scale ? "scale" : rim ? "disc" : null;
  if (what === null) return "Accept the weld line";
  return line ? `Accept ${what} and weld line` : `Accept the ${what}`;
}

function foundWords({ words, line }: Found): string {
  const weld = line
    ? "A weld line is proposed, start at its left or upper end. Look at both ends: one in the wrong place is dragged with the Weld tool."
    : "";
  return `${words ?? ""} ${weld}`.trim();
}

function OffSwitch({ onOff }: { onOff: () => void }) {
  return (
    <label className={styles.off}>
      <input
        type="checkbox"
        defaultChecked
        onChange={({ target }) => {
          setLooksByItself(target.checked);
          if (!target.checked) onOff();
        }}
      />{" "}
      Look at new photos without being asked
    </label>
  );
}
