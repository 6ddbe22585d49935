"use client";

import { Easel, useEasel } from "@/components/canvas-kit";
import styles from "./layer-canvas.module.css";
import type { LayerWork } from "./layer-work";
import { useLayerDraft } from "./use-layer-draft";
import { useLayerHands } from "./use-layer-hands";
import { useLayerKeys } from "./use-layer-keys";
import { useLayerPicture } from "./use-layer-picture";

/** The student's photo under the instructor's hand: one finger draws, two pinch, every step can be undone. */
export default function LayerCanvas(work: LayerWork) {
  const easel = useEasel(work.photo);
  const draft = useLayerDraft(work, easel.unitPx);
  const keys = useLayerKeys(work, easel, draft);
  const { loupe, listeners } = useLayerHands(easel, work, draft, keys.hideCross);
  const { marks, drafted } = useLayerPicture(easel, work, draft, keys.cross);
  const { placed, commit, cancel } = draft;
  return (
    <div className={styles.board}>
      <Easel
        {...{ easel, marks, loupe, listeners }}
        draft={drafted}
        words={easelWords(work)}
        onKeyDown={keys.onKeyDown}
      >
        {placed.length > 0 && work.tool !== "arrow" && (
          <div className={styles.ending}>
            <button type="button" onClick={() => commit(placed)}>
              End here
            </button>
            <button type="button" onClick={cancel}>
              Give up
            </button>
          </div>
        )}
      </Easel>
    </div>
  );
}

const easelWords = ({ tool, history }: LayerWork) => ({
  testId: "layer-canvas",
  name: "The student’s photo",
  kind: "drawing board",
  keyHelp:
    "Arrow keys move a cross, Enter sets a point, E ends a path, Escape gives up. M, A, T, F and O choose the tool. N picks the next thing drawn, Delete removes it, Ctrl and Z undoes.",
  failed: "The photo did not load. Check the connection, then reload the page; what you drew is kept.",
  data: { "data-tool": tool, "data-items": history.present.length },
});
