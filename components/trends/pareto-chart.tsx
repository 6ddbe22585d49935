"use client";

import { useRouter } from "next/navigation";
import { Bar, Cell, ComposedChart, Line, ResponsiveContainer, XAxis, YAxis } from "recharts";
import type { ParetoLine } from "./trend-links";
import styles from "./trends.module.css";

/** The temper colours in the order steel shows them, hottest first; the count at the right edge says the same. */
const tones = ["var(--blue)", "var(--purple)", "var(--bronze)", "var(--straw)"];
const BAR_PX = 44;

/** Counts from largest to smallest; a bar leads to its beads. The table beside it holds the same numbers. */
export function ParetoChart({ lines, label }: { lines: readonly ParetoLine[]; label: string }) {
  const router = useRouter();
  const most = Math.max(...lines.map(({ count }) => count));
  return (
    <figure className={styles.chart} aria-label={label}>
      <ResponsiveContainer width="100%" height={lines.length * BAR_PX + 40}>
        <ComposedChart
          data={[...lines]}
          layout="vertical"
          margin={{ left: 0, right: 4, top: 4, bottom: 4 }}
          barCategoryGap={8}
          accessibilityLayer={false}
        >
          <XAxis
            type="number"
            domain={[0, most]}
            allowDecimals={false}
            tickCount={Math.min(6, most + 1)}
            tick={{ fill: "var(--ink)", fontSize: 15 }}
            stroke="var(--ink)"
          />
          <YAxis
            type="category"
            dataKey="name"
            width={132}
            interval={0}
            tick={{ fill: "var(--ink)", fontSize: 15 }}
            stroke="var(--ink)"
          />
          {/* Counts in a column of their own: at the bars' ends the cumulative line runs through them. */}
          <YAxis
            yAxisId="counts"
            orientation="right"
            type="category"
            dataKey="count"
            width={44}
            interval={0}
            allowDuplicatedCategory
            axisLine={false}
            tickLine={false}
            tick={{ fill: "var(--ink)", fontSize: 17, fontWeight: 700 }}
          />
          <Bar
            dataKey="count"
            isAnimationActive={false}
            stroke="var(--ink)"
            strokeWidth={1.5}
            cursor="pointer"
            onClick={(_, i) => {
              const line = lines[i];
              if (line) router.push(line.href);
            }}
          >
            {lines.map(({ key }, i) => (
              <Cell key={key} fill={tones[Math.min(i, tones.length - 1)] ?? "var(--straw)"} />
            ))}
          </Bar>
          <XAxis xAxisId="all" type="number" domain={[0, 1]} hide />
          <Line
            xAxisId="all"
            dataKey="cumulativeShare"
            stroke="var(--ink)"
            strokeWidth={2}
            strokeDasharray="2 3"
            dot={{ r: 4, fill: "var(--ink)", strokeDasharray: "0" }}
            isAnimationActive={false}
            activeDot={false}
          />
        </ComposedChart>
      </ResponsiveContainer>
      <figcaption className={styles.key}>
        <span>bars: beads that have it</span>
        <span>● with those above it, of all found; the right edge is all</span>
      </figcaption>
    </figure>
  );
}
