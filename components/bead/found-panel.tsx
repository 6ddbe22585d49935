import { setLooksByItself } from "./looks-by-itself";
import styles from "./trace-panel.module.css";
import type { Found } from "./found";

/** Above the scale: what was found on the photo without a press, in words. It is accepted on the photo itself. */
export function FoundPanel({ found, onFound }: { found: Found; onFound: (found: Found | null) => void }) {
  const { busy, scale, rim, line, words, said } = found;
  const isOffered = scale !== null || rim !== null || line !== null;
  if (!isOffered && !busy && !said && !words) return null;
  return (
    <div className={styles.panel} data-testid="found">
      <p role="status">
        {isOffered
          ? foundWords(found)
          : (said ?? words ?? "Looking for a scale and the weld on this photo …")}
      </p>
      {isOffered && said && <p>{said}</p>}
      <OffSwitch onOff={() => onFound(null)} />
    </div>
  );
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
