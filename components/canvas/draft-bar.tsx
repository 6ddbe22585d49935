import { Check, Undo2, X } from "lucide-react";
import type { Drawing } from "@/lib/marks";
import { imperfections } from "@/lib/trade";
import styles from "./draft-bar.module.css";
import { finish, takeBackPoint } from "./draft";
import type { Marking } from "./use-marking";
import { hintFor } from "./words";

const markingTools: ReadonlySet<string> = new Set(["point", "line", "outline"]);

/** What to do next, the size so far, and large buttons to finish, go back a point or give up. */
export function DraftBar({
  marking,
  drawing,
  size,
  touching,
}: {
  marking: Marking;
  drawing: Drawing;
  size: string;
  /** A finger is on the photo: the bar lets go of the space under it. */
  touching: boolean;
}) {
  const { tool, draft, repeat } = marking;
  const isPath = draft?.kind === "path" && draft.points.length > 0;
  return (
    <div className={styles.bar} data-touching={touching}>
      <p className={styles.hint}>
        {size !== "" && <strong className={styles.size}>{size}</strong>}{" "}
        {hintFor(tool, draft, drawing, marking.scaleKind)}
      </p>
      {repeat !== null && markingTools.has(tool) && (
        <button type="button" className={styles.plain} onClick={() => marking.setRepeat(null)}>
          Naming each: {imperfections[repeat].name} <X aria-label="Ask each time" className={styles.icon} />
        </button>
      )}
      {isPath && (
        <div className={styles.buttons}>
          <button
            type="button"
            className={styles.main}
            onClick={marking.done}
            disabled={finish(draft) === null}
          >
            <Check aria-hidden="true" className={styles.icon} /> Done
          </button>
          <button
            type="button"
            className={styles.plain}
            onClick={() => marking.settle({ draft: takeBackPoint(draft), finished: null })}
          >
            <Undo2 aria-hidden="true" className={styles.icon} /> Last point
          </button>
          <button type="button" className={styles.plain} onClick={marking.cancel}>
            <X aria-hidden="true" className={styles.icon} /> Cancel
          </button>
        </div>
      )}
    </div>
  );
}
