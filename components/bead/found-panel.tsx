import { ArrowLeftRight, Check, X } from "lucide-react";
import { Button } from "@/components/ui";
import type { EditAction } from "@/lib/marks";
import { setLooksByItself } from "./looks-by-itself";
import styles from "./trace-panel.module.css";
import type { Found } from "./use-found";

/** Above the scale: what was found on the photo without a press, to be accepted with one. */
export function FoundPanel({
  found,
  onFound,
  onAction,
}: {
  found: Found;
  onFound: (found: Found | null) => void;
  onAction: (action: EditAction) => void;
}) {
  const { busy, scale, line, said } = found;
  const drop = () => onFound(null);
  const accept = () => {
    if (scale) onAction({ type: "scale.set", scale });
    if (line) onAction({ type: "weldLine.set", points: line });
    drop();
  };
  if (scale === null && line === null)
    return busy || said ? (
      <div className={styles.panel} data-testid="found">
        <p role="status">{said ?? "Looking for the printed strip and the weld on this photo …"}</p>
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

const acceptWords = ({ scale, line }: Found): string =>
  scale && line ? "Accept scale and weld line" : scale ? "Accept the scale" : "Accept the weld line";

function foundWords({ scale, line }: Found): string {
  const strip = scale ? "The printed strip was found on this photo. " : "";
  const weld = line
    ? "A weld line is proposed, start at its left or upper end. Look at both ends: one in the wrong place is dragged with the Weld tool."
    : "";
  return `${strip}${weld}`.trim();
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
