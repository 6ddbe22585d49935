"use client";

import {
  Area,
  CartesianGrid,
  ComposedChart,
  Line,
  ReferenceLine,
  ResponsiveContainer,
  Scatter,
  XAxis,
  YAxis,
} from "recharts";
import type { TrialSheetDocument } from "@/lib/report";
import styles from "./trials.module.css";

interface Props {
  sheet: TrialSheetDocument;
  target: number | null;
  /** A setting and a reading as they are shown. */
  showKnob: (value: number) => string;
  showValue: (value: number) => string;
}

/** The response over one knob: its course with the interval, the beads as points, the settings that may be best marked. */
export function CourseChart({ sheet, target, showKnob, showValue }: Props) {
  const { data, beads, x, y } = drawn(sheet, target);
  return (
    <figure
      className={styles.chart}
      aria-label={`${sheet.responseLabel} over ${sheet.knobs[0]!.label}`}
      data-testid="course"
    >
      <p className={styles.axis}>
        {sheet.responseLabel} over {sheet.knobs[0]!.label.toLowerCase()}, {sheet.knobs[0]!.low} to{" "}
        {sheet.knobs[0]!.high}
      </p>
      <ResponsiveContainer width="100%" height={300}>
        <ComposedChart
          data={data}
          margin={{ left: 0, right: 16, top: 12, bottom: 4 }}
          accessibilityLayer={false}
        >
          <CartesianGrid stroke="var(--line)" vertical={false} />
          <XAxis dataKey="x" {...axis} {...x} tickFormatter={showKnob} />
          <YAxis {...axis} {...y} tickFormatter={showValue} width={72} />
          <Area dataKey="band" {...still} stroke="none" fill="var(--line)" fillOpacity={0.7} />
          <Area dataKey="best" {...still} stroke="none" fill="var(--straw)" fillOpacity={0.75} />
          {target !== null && (
            <ReferenceLine y={target} stroke="var(--blue)" strokeDasharray="8 5" strokeWidth={2} />
          )}
          <Line dataKey="mean" {...still} {...course} stroke="var(--panel)" strokeWidth={6} />
          <Line dataKey="mean" {...still} {...course} stroke="var(--ink)" strokeWidth={2} />
          <Scatter
            data={beads}
            dataKey="value"
            fill="var(--purple)"
            stroke="var(--panel)"
            strokeWidth={2}
            isAnimationActive={false}
          />
        </ComposedChart>
      </ResponsiveContainer>
      <Key hasTarget={target !== null} />
    </figure>
  );
}

/** Drawn twice: in the dark look a light line would be lost on straw, so it lies on a dark one. */
const course = { type: "monotone", dot: false } as const;
const still = { isAnimationActive: false, activeDot: false } as const;
const axis = {
  type: "number",
  tick: { fill: "var(--ink)", fontSize: 15 },
  stroke: "var(--ink)",
} as const;

/** The points of the chart, and what its axes span. */
function drawn({ course, rows }: TrialSheetDocument, target: number | null) {
  const data = course.map(({ at, mean, low, high, mayBeBest }) => ({
    x: at[0]!,
    mean,
    band: [low, high] as [number, number],
    best: mayBeBest ? ([low, high] as [number, number]) : null,
  }));
  const beads = rows.flatMap(({ at, value }) => (value === null ? [] : [{ x: at[0]!, value }]));
  const values = [
    ...data.flatMap(({ band }) => band),
    ...beads.map(({ value }) => value),
    ...(target === null ? [] : [target]),
  ];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const pad = 0.06 * (most - least || 1);
  const xs = data.map((point) => point.x);
  return {
    data,
    beads,
    x: spread(Math.min(...xs), Math.max(...xs)),
    y: spread(least - pad, most + pad),
  };
}

/** Five ticks over the whole axis. */
const spread = (low: number, high: number) => ({
  domain: [low, high],
  ticks: [0, 0.25, 0.5, 0.75, 1].map((share) => low + share * (high - low)),
});

/** What the strokes and fields of the chart mean. */
function Key({ hasTarget }: { hasTarget: boolean }) {
  return (
    <figcaption className={styles.key}>
      <span>
        <i className={styles.keyBead} /> beads
      </span>
      <span>
        <i className={styles.keyBand} /> the course, 95 %
      </span>
      <span>
        <i className={styles.keyBest} /> may be the best
      </span>
      {hasTarget && (
        <span>
          <i className={styles.keyTarget} /> wanted
        </span>
      )}
    </figcaption>
  );
}
