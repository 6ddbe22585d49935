import { page, Panel } from "@/components/ui";
import type { EyeBead, EyeMark, ScoredBead } from "@/lib/eye";
import { lengthText } from "@/lib/report";
import { imperfections, type ImperfectionId } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import { Spot } from "./eye-looking";
import styles from "./eye.module.css";

const names = (kinds: readonly ImperfectionId[]) => kinds.map((kind) => imperfections[kind].name).join(", ");

/** One bead after the round: what is on it drawn over it, the marks, and what came of them. */
export function EyeResult({
  number,
  bead,
  marks,
  scored,
  levelName,
  units,
}: {
  number: number;
  /** null: its picture is gone; the words stay. */
  bead: EyeBead | null;
  marks: readonly EyeMark[];
  scored: ScoredBead;
  levelName: string;
  units: UnitPreferences;
}) {
  return (
    <Panel
      title={`Bead ${number}`}
      tone={scored.missed.length + scored.falseCalls.length === 0 ? "ok" : "bronze"}
    >
      {bead && (
        <div className={styles.picture} style={{ aspectRatio: `${bead.widthPx} / ${bead.heightPx}` }}>
          <img
            src={`/eye/picture/${bead.id}`}
            alt={`Bead ${number} with what is on it drawn over it`}
            loading="lazy"
          />
          <svg viewBox={`0 0 ${bead.widthPx} ${bead.heightPx}`} aria-hidden="true">
            {bead.faults.map(({ outlinePx }, i) => (
              <polygon
                key={`${i} ${outlinePx[0]?.join(" ")}`}
                className={styles.there}
                strokeWidth={bead.widthPx / 400}
                points={outlinePx.map((spot) => spot.join(",")).join(" ")}
              />
            ))}
            {marks.map(({ at }, i) => (
              <Spot key={`${at.x} ${at.y} ${i}`} at={at} number={i + 1} unit={bead.widthPx / 400} />
            ))}
          </svg>
        </div>
      )}
      <EyeWords scored={scored} levelName={levelName} units={units} />
    </Panel>
  );
}

/** What came of one bead, in words. */
function EyeWords({
  scored,
  levelName,
  units,
}: {
  scored: ScoredBead;
  levelName: string;
  units: UnitPreferences;
}) {
  const { found, missed, misnamed, falseCalls, missized, fails, saidFails } = scored;
  const nothing = found.length + missed.length + misnamed.length + falseCalls.length === 0;
  return (
    <ul>
      {nothing && <li className={page.good}>Nothing is on it, and you marked nothing.</li>}
      {found.length > 0 && <li className={page.good}>Found: {names(found)}</li>}
      {missed.length > 0 && <li className={page.bad}>Missed: {names(missed)}</li>}
      {misnamed.map(({ is, called }) => (
        <li key={`${is} ${called}`} className={page.bad}>
          Called {imperfections[called].name}: it is {imperfections[is].name}
        </li>
      ))}
      {falseCalls.length > 0 && <li className={page.bad}>Seen where nothing is: {names(falseCalls)}</li>}
      {missized.map(({ kind, isMm, saidMm }) => (
        <li key={`${kind} ${saidMm}`} className={page.wait}>
          {imperfections[kind].name}: {lengthText(saidMm, units)} said, {lengthText(isMm, units)} it is
        </li>
      ))}
      <li
        className={
          fails === null || saidFails === null ? page.note : fails === saidFails ? page.good : page.bad
        }
      >
        {fails === null
          ? `Whether it fails ${levelName} cannot be said from what is drawn.`
          : `${fails ? `It fails ${levelName}` : `Nothing on it fails ${levelName}`}; you said ${saidFails === fails ? "so" : "otherwise"}.`}
      </li>
    </ul>
  );
}
