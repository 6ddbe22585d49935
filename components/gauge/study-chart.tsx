import { studySize, type CellUnit, type GaugeStudy } from "@/lib/gauge";
import styles from "./gauge.module.css";

const WIDTH = 720;
const HEIGHT = 260;
/** The longest value, also in the larger letters of a phone. */
const LEFT = 118;
const BOTTOM = 34;
const TOP = 12;

const inks = ["var(--blue)", "var(--bronze)", "var(--purple)", "var(--ink)", "var(--ok)", "var(--danger)"];
/** A shape for each person, so that colour alone tells nothing. */
const shapes = [
  (r: number) => `M${-r} 0 A${r} ${r} 0 1 0 ${r} 0 A${r} ${r} 0 1 0 ${-r} 0 Z`,
  (r: number) => `M0 ${-r} L${r} ${r} L${-r} ${r} Z`,
  (r: number) => `M${-r} ${-r} H${r} V${r} H${-r} Z`,
  (r: number) => `M0 ${-r} L${r} 0 L0 ${r} L${-r} 0 Z`,
  (r: number) => `M${-r} ${-r} L${r} ${r} M${r} ${-r} L${-r} ${r}`,
  (r: number) => `M0 ${-r} V${r} M${-r} 0 H${r}`,
];

/** Every reading of a study over its part, a shape for each person; the table of readings is in the CSV. */
export function StudyChart({ study, shown }: { study: GaugeStudy; shown: CellUnit }) {
  const { people, parts, values } = study;
  const all = values.flat(2);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const span = high > low ? high - low : 1;
  const step = (WIDTH - LEFT) / parts.length;
  const x = (part: number, person: number): number =>
    LEFT + step * (part + (person + 1) / (people.length + 1));
  const y = (value: number): number => TOP + ((high - value) / span) * (HEIGHT - TOP - BOTTOM - 8) + 4;
  return (
    <figure className={styles.chart}>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Readings of ${parts.length} parts by ${people.length} people, from ${studySize(low, shown)} to ${studySize(high, shown)}`}
      >
        {parts.map((part, j) => (
          <g key={part}>
            <path d={`M${LEFT + step * j} ${TOP} V${HEIGHT - BOTTOM}`} stroke="var(--line)" />
            {(parts.length <= 15 || j % 2 === 0) && (
              <text x={LEFT + step * (j + 0.5)} y={HEIGHT - 12} textAnchor="middle">
                {part}
              </text>
            )}
          </g>
        ))}
        <path d={`M${LEFT} ${HEIGHT - BOTTOM} H${WIDTH}`} stroke="var(--ink)" strokeWidth="2" />
        {[...new Set([low, high])].map((value) => (
          <text key={value} x={LEFT - 6} y={y(value) + 4} textAnchor="end">
            {studySize(value, shown)}
          </text>
        ))}
        {values.map((own, i) =>
          own.map((tries, j) =>
            tries.map((value, t) => (
              <path
                key={`${i} ${j} ${t}`}
                transform={`translate(${x(j, i).toFixed(1)} ${y(value).toFixed(1)})`}
                d={shapes[i]?.(5) ?? ""}
                fill={i < 4 ? inks[i] : "none"}
                stroke={i < 4 ? "var(--panel)" : inks[i]}
                strokeWidth={i < 4 ? 1 : 2.5}
              />
            )),
          ),
        )}
      </svg>
      <figcaption className={styles.key}>
        {people.map((person, i) => (
          <span key={person}>
            <svg viewBox="-8 -8 16 16" style={{ width: 16, display: "inline" }} aria-hidden="true">
              <path
                d={shapes[i]?.(6) ?? ""}
                fill={i < 4 ? inks[i] : "none"}
                stroke={inks[i]}
                strokeWidth="2"
              />
            </svg>{" "}
            {person}
          </span>
        ))}
      </figcaption>
    </figure>
  );
}
