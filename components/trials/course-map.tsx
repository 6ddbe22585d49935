import type { TrialSheetDocument } from "@/lib/report";
import { contour } from "@/lib/trials";
import styles from "./trials.module.css";

const SIZE = 320;
/** Between the contours at about so many steps. */
const LEVELS = 6;

/** Two knobs: contours of the response, the settings that may be best washed in straw, the beads as points. */
export function CourseMap({
  sheet,
  showValue,
}: {
  sheet: TrialSheetDocument;
  showValue: (value: number) => string;
}) {
  const laid = layOut(sheet);
  if (laid === null) return null;
  const { rows, knobs, responseLabel } = sheet;
  return (
    <figure className={styles.chart} data-testid="course-map">
      <p className={styles.axis}>
        {knobs[1]!.label}: {knobs[1]!.low} below, {knobs[1]!.high} above
      </p>
      <svg
        viewBox={`-14 -14 ${SIZE + 28} ${SIZE + 28}`}
        className={styles.map}
        role="img"
        aria-label={`${responseLabel} over ${knobs[0]!.label} and ${knobs[1]!.label}`}
      >
        <rect
          x={0}
          y={0}
          width={SIZE}
          height={SIZE}
          fill="var(--panel)"
          stroke="var(--ink)"
          strokeWidth={2}
        />
        {laid.best.map(({ key, ...cell }) => (
          <rect key={key} {...cell} fill="var(--straw)" shapeRendering="crispEdges" />
        ))}
        {laid.levels.map((level) => (
          <Contour
            key={level}
            pieces={contour(laid.means, level)}
            px={laid.px}
            py={laid.py}
            text={showValue(level)}
          />
        ))}
        {rows.map(({ place, at, value }) => (
          <circle
            key={place}
            {...laid.bead(at)}
            r={7}
            fill={value === null ? "var(--panel)" : "var(--purple)"}
            stroke="var(--ink)"
            strokeWidth={2}
          />
        ))}
      </svg>
      <p className={styles.axis}>
        {knobs[0]!.label}: {knobs[0]!.low} left, {knobs[0]!.high} right
      </p>
      <figcaption className={styles.key}>
        <span>
          <i className={styles.keyBead} /> beads, hollow while not read
        </span>
        <span>
          <i className={styles.keyBest} /> may be the best
        </span>
        <span>Lines: {responseLabel}</span>
      </figcaption>
    </figure>
  );
}

const ascending = (values: readonly number[]): readonly number[] =>
  [...new Set(values)].toSorted((a, b) => a - b);

/** The course as a grid of columns and rows, and where on the picture each lies; null where one knob has one setting. */
function layOut({ course }: TrialSheetDocument) {
  const xs = ascending(course.map(({ at }) => at[0]!));
  const ys = ascending(course.map(({ at }) => at[1]!));
  if (xs.length < 2 || ys.length < 2) return null;
  const found = new Map(course.map((point) => [point.at.join(), point]));
  const grid = ys.map((y) => xs.map((x) => found.get([x, y].join()) ?? null));
  const values = course.map(({ mean }) => mean);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const [width, height] = [SIZE / (xs.length - 1), SIZE / (ys.length - 1)];
  const px = (column: number): number => width * column;
  const py = (row: number): number => SIZE - height * row;
  const share = (list: readonly number[], value: number): number =>
    (value - list[0]!) / (list[list.length - 1]! - list[0]!);
  return {
    px,
    py,
    means: grid.map((line) => line.map((point) => point?.mean ?? null)),
    levels: Array.from({ length: LEVELS }, (_, i) => least + ((i + 0.5) / LEVELS) * (most - least)),
    best: grid.flatMap((line, row) =>
      line.flatMap((point, column) => {
        if (!point?.mayBeBest) return [];
        const x = Math.max(0, px(column) - width / 2);
        const y = Math.max(0, py(row) - height / 2);
        const right = Math.min(SIZE, px(column) + width / 2);
        const foot = Math.min(SIZE, py(row) + height / 2);
        return [{ key: `${row}-${column}`, x, y, width: right - x, height: foot - y }];
      }),
    ),
    bead: (at: readonly number[]) => ({
      cx: SIZE * share(xs, at[0]!),
      cy: SIZE - SIZE * share(ys, at[1]!),
    }),
  };
}

/** One line of equal response with its value once on it. */
function Contour({
  pieces,
  px,
  py,
  text,
}: {
  pieces: ReturnType<typeof contour>;
  px: (column: number) => number;
  py: (row: number) => number;
  text: string;
}) {
  const label = pieces[Math.floor(pieces.length / 2)];
  if (!label) return null;
  const d = pieces
    .map(
      ([x1, y1, x2, y2]) =>
        `M${px(x1).toFixed(1)} ${py(y1).toFixed(1)}L${px(x2).toFixed(1)} ${py(y2).toFixed(1)}`,
    )
    .join("");
  return (
    <g>
      {/* In the dark look a light line would be lost on straw: it lies on a dark one. */}
      <path d={d} stroke="var(--panel)" strokeWidth={5} fill="none" />
      <path d={d} stroke="var(--ink)" strokeWidth={2} fill="none" />
      <text
        x={Math.min(SIZE - 22, Math.max(22, px(label[0])))}
        y={Math.min(SIZE - 6, Math.max(16, py(label[1])))}
        className={styles.level}
        textAnchor="middle"
      >
        {text}
      </text>
    </g>
  );
}
