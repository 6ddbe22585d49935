import { lengthText } from "@/lib/report";
import type { BeadProfile, ProfileStation } from "@/lib/trace";
import type { UnitPreferences } from "@/lib/units";
import styles from "./trace-panel.module.css";

const WIDE = 640;
const HIGH = 220;
const LEFT = 8;
const TOP = 36;
const FOOT = 34;

/** Width over the length of the bead: the line with its band, the mean, and the 25 mm in which it differs most. */
export function ProfileChart({ profile, units }: { profile: BeadProfile; units: UnitPreferences }) {
  const { stations, mean, worst25 } = profile;
  const long = stations[stations.length - 1]!.alongMm;
  const most = 1.15 * Math.max(...stations.map(({ width }) => width.value + width.expandedUncertainty));
  const x = (alongMm: number): number => LEFT + (alongMm / long) * (WIDE - 2 * LEFT);
  const y = (widthMm: number): number => TOP + (1 - widthMm / most) * (HIGH - TOP - FOOT);
  const path = (of: (station: ProfileStation) => number, list = stations): string =>
    list.map((station) => `${x(station.alongMm).toFixed(1)},${y(of(station)).toFixed(1)}`).join(" ");
  const upper = path(({ width }) => width.value + width.expandedUncertainty);
  const lower = path(
    ({ width }) => Math.max(0, width.value - width.expandedUncertainty),
    stations.toReversed(),
  );
  return (
    <svg
      className={styles.chart}
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={`Width over the length of the bead, ${lengthText(mean.value, units)} on average`}
    >
      {worst25 && (
        <rect
          x={x(worst25.fromMm)}
          width={x(worst25.toMm) - x(worst25.fromMm)}
          y={TOP}
          height={HIGH - TOP - FOOT}
          fill="var(--straw-wash)"
        />
      )}
      <polygon points={`${upper} ${lower}`} fill="var(--blue-wash)" opacity="0.8" />
      {runs(stations).map(({ sure, list }, i) => (
        <polyline
          key={i}
          points={path(({ width }) => width.value, list)}
          fill="none"
          stroke="var(--ink)"
          strokeWidth="2.5"
          strokeDasharray={sure ? undefined : "5 6"}
        />
      ))}
      <line
        x1={LEFT}
        x2={WIDE - LEFT}
        y1={y(mean.value)}
        y2={y(mean.value)}
        stroke="var(--ink)"
        strokeDasharray="2 5"
      />
      <line x1={LEFT} x2={WIDE - LEFT} y1={y(0)} y2={y(0)} stroke="var(--ink)" />
      <ChartWords {...{ profile, units, x, y }} />
    </svg>
  );
}

function ChartWords({
  profile: { mean, worst25 },
  units,
  x,
  y,
}: {
  profile: BeadProfile;
  units: UnitPreferences;
  x: (mm: number) => number;
  y: (mm: number) => number;
}) {
  const text = { fontSize: 22, fill: "var(--ink)" } as const;
  return (
    <>
      <text x={LEFT} y={HIGH - 8} {...text}>
        start
      </text>
      <text x={WIDE - LEFT} y={HIGH - 8} textAnchor="end" {...text}>
        crater
      </text>
      <text x={LEFT + 4} y={y(mean.value) + 30} {...text}>
        mean {lengthText(mean.value, units)}
      </text>
      {worst25 && (
        <text x={(x(worst25.fromMm) + x(worst25.toMm)) / 2} y={24} textAnchor="middle" {...text}>
          differs most here
        </text>
      )}
    </>
  );
}

/** Neighbouring stations between the ends that are alike in being sure. */
function runs(stations: readonly ProfileStation[]): readonly { sure: boolean; list: ProfileStation[] }[] {
  const out: { sure: boolean; list: ProfileStation[] }[] = [];
  for (const station of stations) {
    const sure = station.sure && !station.end;
    const last = out[out.length - 1];
    if (last?.sure === sure) last.list.push(station);
    else out.push({ sure, list: last ? [last.list[last.list.length - 1]!, station] : [station] });
  }
  return out;
}
