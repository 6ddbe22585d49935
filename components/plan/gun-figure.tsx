import type { GunDrawing } from "@/lib/report";
import styles from "./run-sheet.module.css";

/** An angle of the gun, drawn. */
export function GunFigure({ drawing: { title, angle, strokes, labels = [] } }: { drawing: GunDrawing }) {
  return (
    <figure className={styles.figure}>
      <svg viewBox="0 0 100 100" role="img" aria-label={`${title} ${angle}`}>
        {strokes.map(({ kind, points }, i) => {
          const at = points.map((point) => point.join(",")).join(" ");
          return kind === "plate" ? (
            <polygon key={i} points={at} className={styles.plate} />
          ) : (
            <polyline key={i} points={at} className={styles[kind]} />
          );
        })}
        {labels.map(({ at: [x, y], text }) => (
          <text key={text} transform={`translate(${x} ${y}) scale(0.55)`} className={styles.number}>
            {text}
          </text>
        ))}
      </svg>
      <figcaption>
        {title} <strong>{angle}</strong>
      </figcaption>
    </figure>
  );
}
