import { Button } from "@/components/ui";
import { noQualification, qualificationText, type InspectionDraft, type Qualification } from "@/lib/inspect";
import { lengthText } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import { TextField } from "./fields";
import styles from "./inspect.module.css";

/** What entitles the inspector to sign. It goes on the record; whoever signs vouches for it. */
export function Qualified({
  content,
  change,
}: {
  readonly content: InspectionDraft;
  readonly change: (part: Partial<InspectionDraft>) => void;
}) {
  const held = content.qualification ?? noQualification;
  const set = (part: Partial<Qualification>) => change({ qualification: { ...held, ...part } });
  return (
    <fieldset className={styles.item}>
      <legend>Inspector’s certificate</legend>
      <div className={styles.grid}>
        <TextField
          label="Certificate number"
          value={held.certificate}
          most={80}
          onChange={(certificate) => set({ certificate })}
        />
        <TextField label="Level" value={held.level} most={60} onChange={(level) => set({ level })} />
        <TextField
          label="Valid until"
          hint="a weld stays open where it ended before the inspection"
          type="date"
          value={held.expiresOn ?? ""}
          onChange={(day) => set({ expiresOn: day || null })}
        />
      </div>
    </fieldset>
  );
}

/**
 * Takes over from the inspection before how it was looked and by whom, in sight of what that is. Light and day are read
 * anew each time.
 */
export function AsLastTime({
  before,
  units,
  change,
}: {
  readonly before: { readonly number: number; readonly draft: InspectionDraft } | null;
  readonly units: UnitPreferences;
  readonly change: (part: Partial<InspectionDraft>) => void;
}) {
  if (before === null) return null;
  const { look, remoteAid, distanceMm, angleDeg, surface, examiningBody, instrumentIds, qualification } =
    before.draft;
  const same = { look, remoteAid, distanceMm, angleDeg, surface, examiningBody, instrumentIds };
  const words = [
    look,
    distanceMm === null ? "" : lengthText(distanceMm, units),
    angleDeg === null ? "" : `${angleDeg}°`,
    surface,
    qualificationText(qualification ?? undefined),
    instrumentIds.length === 1 ? "1 instrument" : `${instrumentIds.length} instruments`,
  ].filter(Boolean);
  return (
    <div>
      <Button onClick={() => change({ ...same, qualification: qualification ?? null })}>
        As in inspection {before.number}
      </Button>
      <p>{words.join(", ")}. Light and day are read anew.</p>
    </div>
  );
}
