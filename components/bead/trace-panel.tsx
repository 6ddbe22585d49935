"use client";

import { Spline } from "lucide-react";
import { useEffect, useRef, useState } from "react";
import { newMarkId } from "@/components/canvas";
import { Button } from "@/components/ui";
import { newMark, type Drawing, type EditAction, type Mark, type Toes } from "@/lib/marks";
import type { Calibrated } from "@/lib/measure";
import { isUneven, WIDTH_NOTE, widthRows } from "@/lib/report";
import type { RunSetup } from "@/lib/setup";
import { drawnProfile, isGuess, stationsOf, traceSentence, type BeadProfile } from "@/lib/trace";
import type { UnitPreferences } from "@/lib/units";
import { ProfileChart } from "./profile-chart";
import { readToes } from "./read-toes";
import { SpotsPanel } from "./spots-panel";
import styles from "./trace-panel.module.css";
import type { Spots } from "./use-spots";
import type { WorkPhoto } from "./work-state";

interface TraceProps {
  readonly photo: WorkPhoto;
  /** Its largest picture. */
  readonly url: string;
  readonly calibration: Calibrated | null;
  readonly units: UnitPreferences;
  readonly setup: RunSetup;
  /** Read off the photo and not yet accepted. */
  readonly proposed: Toes | null;
  readonly onProposed: (toes: Toes | null) => void;
  readonly onAction: (action: EditAction) => void;
  readonly spots: Spots;
}

/** Under the photo: the bead reads itself along its weld line, and nothing of it counts before it is accepted. */
export function TracePanel(props: TraceProps) {
  const { photo, calibration, units, setup, proposed, onAction } = props;
  const { weldLine, toes } = photo.history.present;
  const { busy, said, read } = useReading(props);
  const shown = proposed ?? toes ?? null;
  const profile =
    shown && calibration?.ok ? drawnProfile(calibration.value, shown, photo.history.present.marks) : null;
  if (weldLine === null)
    return <p>Draw the weld line from start to crater, and the bead’s toes are read along it.</p>;
  return (
    <div className={styles.panel} data-testid="trace">
      {proposed ? (
        <p>
          These toes were read off the photo. Solid is sure, dashed is a guess. Look along both, then accept
          them on the photo; a point in the wrong place is dragged with the Weld tool.
        </p>
      ) : (
        <div className={styles.buttons}>
          <Button onClick={() => void read(weldLine)} disabled={busy}>
            <Spline aria-hidden="true" size={22} />{" "}
            {busy ? "Reading the toes …" : toes ? "Read the toes again" : "Read the toes"}
          </Button>
          {toes && <Button onClick={() => onAction({ type: "toes.clear" })}>Remove the toes</Button>}
        </div>
      )}
      {said && (
        <p className={styles.problem} role="alert">
          {said}
        </p>
      )}
      {shown && !profile && <p>{whyNone(shown, calibration)}</p>}
      {profile && <Profile {...{ profile, units, setup }} accepted={proposed === null} />}
      {profile && proposed === null && isUneven(profile) && (
        <div>
          <Button onClick={() => onAction({ type: "mark.add", mark: unevenMark(shown!, profile) })}>
            Mark those 25 mm as uneven width
          </Button>
        </div>
      )}
      {toes && proposed === null && <SpotsPanel spots={props.spots} />}
    </div>
  );
}

const whyNone = (toes: Toes, calibration: Calibrated | null): string =>
  !calibration?.ok
    ? "With a scale on this photo the width is shown along the bead."
    : isGuess(stationsOf(toes))
      ? "As a whole these toes are a guess, so no width is stated: the photo is hard to read here, or beads lie against both sides and this may be the plate between them. Drag them where they belong, or take the photo again from straight above."
      : "Too little of the bead is left to state a width of it.";

/** The stretch in which the width differs most, as a mark of the person's who pressed for it; as any other from then on. */
function unevenMark(toes: Toes, { stations, worst25 }: BeadProfile): Mark {
  const inside = stationsOf(toes).filter((_, i) => {
    const { alongMm } = stations[i]!;
    return worst25 !== null && alongMm >= worst25.fromMm && alongMm <= worst25.toMm;
  });
  const step = Math.max(1, Math.floor(inside.length / 6));
  const points = inside
    .filter((_, i) => i % step === 0 || i === inside.length - 1)
    .map(({ upper: { at: a }, lower: { at: b } }) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }));
  return newMark(newMarkId(), "uneven-width", { kind: "line", points });
}

/** Reads when a weld line was drawn or moved in this visit, and when asked. */
function useReading({ photo, url, onProposed }: TraceProps) {
  const { weldLine } = photo.history.present;
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const before = useRef({ id: photo.id, weldLine });
  const latest = useRef(0);
  const read = async (line: NonNullable<Drawing["weldLine"]>) => {
    const turn = ++latest.current;
    setBusy(true);
    setSaid(null);
    try {
      const found = await readToes({ url, widthPx: photo.widthPx }, line);
      if (turn !== latest.current) return;
      onProposed(found.ok ? found.value : null);
      if (!found.ok) setSaid(found.issues.map(traceSentence).join(" "));
    } catch {
      if (turn === latest.current)
        setSaid("The toes could not be read just now. Try again, or draw them by hand.");
    } finally {
      if (turn === latest.current) setBusy(false);
    }
  };
  useEffect(() => {
    const was = before.current;
    before.current = { id: photo.id, weldLine };
    if (was.id === photo.id && weldLine !== null && was.weldLine !== weldLine) void read(weldLine);
    // `read` is made anew each time and reads what is current.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [photo.id, weldLine]);
  return { busy, said, read };
}

function Profile({
  profile,
  units,
  setup,
  accepted,
}: {
  profile: BeadProfile;
  units: UnitPreferences;
  setup: RunSetup;
  accepted: boolean;
}) {
  return (
    <>
      <ProfileChart profile={profile} units={units} />
      <dl className={styles.figures}>
        {widthRows(profile, units, setup).map(({ label, value }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {profile.worst25 && !isUneven(profile) && (
        <p>That is no more than the reading scatters: nothing here says that the width is uneven.</p>
      )}
      <p>
        {accepted
          ? WIDTH_NOTE
          : "A proposal: it counts for nothing until accepted. Dark slag or soot along a toe can pull it outwards."}
      </p>
    </>
  );
}
