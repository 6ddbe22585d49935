"use client";

import { useRouter } from "next/navigation";
import {
  CartesianGrid,
  ComposedChart,
  ErrorBar,
  Line,
  ReferenceLine,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from "recharts";
import type { RejectPoint } from "./trend-links";
import styles from "./trends.module.css";

const percent = (value: number): string => `${Math.round(value * 100)} %`;

/**
 * Reject rate over time with centre line and control limits. Whiskers are the 95 % intervals, so that a point of
 * three beads looks like one. A point beyond its limit is a triangle, one with rough limits is hollow.
 */
export function RejectChart({ points, centre }: { points: readonly RejectPoint[]; centre: number }) {
  const router = useRouter();
  const data = points.map((point) => ({
    ...point,
    interval: [point.value - point.low, point.high - point.value] as [number, number],
  }));
  return (
    <figure className={styles.chart} aria-label="Reject rate over time with control limits">
      <ResponsiveContainer width="100%" height={340}>
        <ComposedChart
          data={data}
          margin={{ left: 0, right: 24, top: 12, bottom: 4 }}
          accessibilityLayer={false}
        >
          <CartesianGrid stroke="var(--line)" vertical={false} />
          <XAxis
            dataKey="label"
            tick={{ fill: "var(--ink)", fontSize: 15 }}
            stroke="var(--ink)"
            padding={{ left: 24, right: 24 }}
          />
          <YAxis
            domain={[0, 1]}
            ticks={[0, 0.25, 0.5, 0.75, 1]}
            tickFormatter={percent}
            width={58}
            tick={{ fill: "var(--ink)", fontSize: 15 }}
            stroke="var(--ink)"
          />
          <ReferenceLine y={centre} stroke="var(--blue)" strokeWidth={2} />
          {limitLine("upperLimit")}
          {limitLine("lowerLimit")}
          <Line
            dataKey="value"
            type="linear"
            stroke="var(--ink)"
            strokeWidth={2}
            isAnimationActive={false}
            activeDot={false}
            dot={({ key, cx, cy, payload }) => {
              const point = payload as RejectPoint;
              return (
                <Dot key={key} x={cx ?? 0} y={cy ?? 0} point={point} onOpen={() => router.push(point.href)} />
              );
            }}
          >
            <ErrorBar
              dataKey="interval"
              width={10}
              strokeWidth={1.5}
              stroke="var(--ink-soft)"
              direction="y"
            />
          </Line>
          <Tooltip isAnimationActive={false} content={Tip} />
        </ComposedChart>
      </ResponsiveContainer>
      <Key />
    </figure>
  );
}

const limitLine = (dataKey: "upperLimit" | "lowerLimit") => (
  <Line
    dataKey={dataKey}
    type="step"
    stroke="var(--purple)"
    strokeDasharray="8 5"
    strokeWidth={2}
    isAnimationActive={false}
    dot={false}
    activeDot={false}
  />
);

function Tip({ active, payload }: { active: boolean; payload: readonly { readonly payload?: unknown }[] }) {
  const point = payload[0]?.payload as RejectPoint | undefined;
  if (!active || !point) return null;
  return (
    <p className={styles.tip}>
      <strong>{point.label}</strong>: {point.text}
    </p>
  );
}

/** What the strokes and shapes of the chart mean. */
function Key() {
  return (
    <figcaption className={styles.key}>
      <span>
        <i className={styles.keyCentre} /> all together
      </span>
      <span>
        <i className={styles.keyLimit} /> control limits
      </span>
      <span>⌶ 95 % interval</span>
      <span>▲ beyond a limit</span>
      <span>○ too few beads for firm limits</span>
    </figcaption>
  );
}

function Dot({ x, y, point, onOpen }: { x: number; y: number; point: RejectPoint; onOpen: () => void }) {
  const fill = point.beyond ? "var(--danger)" : point.rough ? "var(--panel)" : "var(--ink)";
  return (
    <g onClick={onOpen} style={{ cursor: "pointer" }}>
      {/* A finger needs more than the mark itself. */}
      <circle cx={x} cy={y} r={22} fill="transparent" />
      {point.beyond ? (
        <path d={`M${x} ${y - 10} L${x + 9} ${y + 7} L${x - 9} ${y + 7} Z`} fill={fill} stroke="var(--ink)" />
      ) : (
        <circle cx={x} cy={y} r={6} fill={fill} stroke="var(--ink)" strokeWidth={2} />
      )}
    </g>
  );
}
