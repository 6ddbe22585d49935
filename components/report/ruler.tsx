import { VIEW_WIDTH } from "@/lib/assess";
import { rulerTicks } from "@/lib/report";
import type { LengthSystem } from "@/lib/units";
import styles from "./side-by-side.module.css";

const RULER_HEIGHT = 64;

/** 0 at the weld's start. Decoration for those who see it: the sizes stand in the tables. */
export function Ruler({ rulerMm, system }: { rulerMm: { from: number; to: number }; system: LengthSystem }) {
  const { from, to } = rulerMm;
  const x = (mm: number): number => ((mm - from) / (to - from)) * VIEW_WIDTH;
  const isInside = (mm: number): boolean => x(mm) > 24 && x(mm) < VIEW_WIDTH - 24;
  return (
    <svg className={styles.ruler} viewBox={`0 0 ${VIEW_WIDTH} ${RULER_HEIGHT}`} aria-hidden="true">
      {rulerTicks(from, to, system).map(({ mm, label }) => (
        <g key={mm} transform={`translate(${x(mm).toFixed(2)} 0)`}>
          <line y2={label === null ? 12 : 24} stroke="currentColor" strokeWidth={label === null ? 1.5 : 3} />
          {label !== null && isInside(mm) && (
            <text y={52} fontSize={28} fontWeight={600} textAnchor="middle" fill="currentColor">
              {label}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}
