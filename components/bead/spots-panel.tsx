import { Check, X } from "lucide-react";
import { Button } from "@/components/ui";
import styles from "./trace-panel.module.css";
import type { ShownSpot, Spots } from "./use-spots";

/** The switch, off until somebody presses it, and what is suggested: a list beside the rings on the photo. */
export function SpotsPanel({ spots }: { spots: Spots }) {
  const { on, setOn, busy, said, shown } = spots;
  return (
    <div className={styles.panel} data-testid="spots">
      <label className={styles.off}>
        <input type="checkbox" checked={on} onChange={({ target }) => setOn(target.checked)} /> Suggest holes
        and spatter
      </label>
      {busy && <p role="status">Looking for holes and spatter …</p>}
      {said && <p role="alert">{said}</p>}
      {on && shown && <Suggestions shown={shown} spots={spots} />}
    </div>
  );
}

function Suggestions({ shown, spots }: { shown: readonly ShownSpot[]; spots: Spots }) {
  return (
    <>
      <p role="status">
        {shown.length === 0
          ? "Nothing more is suggested."
          : `${shown.length} suggested: the dashed rings. Tap one, and it is a mark of yours.`}{" "}
        Learned from drawn pictures only and never measured on photographs. What has no ring may be there all
        the same: look yourself. A ring that nobody taps counts for nothing.
      </p>
      {shown.length > 0 && (
        <details>
          <summary>All suggestions, one by one</summary>
          <ul className={styles.spots}>
            {shown.map((spot, i) => (
              <li key={spot.id}>
                <span>
                  {nameOf(spot)} {i + 1}
                </span>
                <Button
                  aria-label={`Mark ${nameOf(spot).toLowerCase()} ${i + 1}`}
                  onClick={() => spots.take(spot.id)}
                >
                  <Check aria-hidden="true" size={20} /> Mark
                </Button>
                <Button
                  aria-label={`Dismiss ${nameOf(spot).toLowerCase()} ${i + 1}`}
                  onClick={() => spots.dismiss([spot.id])}
                >
                  <X aria-hidden="true" size={20} /> Dismiss
                </Button>
              </li>
            ))}
          </ul>
        </details>
      )}
      {shown.length > 0 && (
        <div>
          <Button onClick={() => spots.dismiss(shown.map(({ id }) => id))}>
            <X aria-hidden="true" size={22} /> Dismiss all suggestions
          </Button>
        </div>
      )}
    </>
  );
}

const nameOf = ({ kind }: ShownSpot): string => (kind === "hole" ? "Hole" : "Spatter");
