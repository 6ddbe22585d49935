import { Maximize, Minus, Plus } from "lucide-react";
import styles from "./zoom-buttons.module.css";

/** Zoom without a wheel and without two fingers. */
export function ZoomButtons({ onZoom, onFit }: { onZoom: (factor: number) => void; onFit: () => void }) {
  return (
    <div className={styles.stack} role="group" aria-label="Zoom">
      <button type="button" aria-label="Zoom in" title="Zoom in (+)" onClick={() => onZoom(1.6)}>
        <Plus aria-hidden="true" />
      </button>
      <button type="button" aria-label="Zoom out" title="Zoom out (−)" onClick={() => onZoom(1 / 1.6)}>
        <Minus aria-hidden="true" />
      </button>
      <button type="button" aria-label="Fit the whole photo" title="Fit (0)" onClick={onFit}>
        <Maximize aria-hidden="true" />
      </button>
    </div>
  );
}
